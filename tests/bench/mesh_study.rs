//! How exact the changes that metal makes are: the meshes of `physics::plate` beside much finer ones, as tables in Markdown.
//!
//!     cargo run --profile bench --example mesh_study            a minute or two
//!     cargo run --profile bench --example mesh_study -- quick   a few cases of each group
//!
//! Run it before and after a change of the physics: the cases and what they are held against stay the same. The reference is
//! `fine_sheet`; the last table holds both against closed forms and figures of the tests.
#![allow(clippy::expect_used, reason = "a measurement that cannot go on has failed")]

mod fine_sheet;

use fine_sheet::{FineSheet, Panel, Reference};
use loopwright::physics::conductor::awg_diameter;
use loopwright::physics::filament::{Filament, Point3};
use loopwright::physics::plate::{Plate, PlatePanel, PrimaryLoop, Wall, endless_sheet};
use loopwright::physics::winding::{Strand, Winding, WindingShape};
use loopwright::practice::vehicles::{VehicleBody, VehicleClass};
use loopwright::vocabulary::Vocabulary;
use std::f64::consts::FRAC_PI_2;
use uom::si::length::meter;

const FOOT: f64 = 0.3048;
const MICRO: f64 = 1e-6;
/// From the pavement to the middle of the top wire, of the standard test loop.
const DEPTH: f64 = 1.125 / 12.0 * FOOT;
/// Sides across and along in metres: a forklift, a car, a truck, a bus, a square and the largest that a request may send, nearly.
const PLATES: [[f64; 2]; 6] = [[1.1, 2.3], [1.75, 4.5], [2.4, 7.0], [2.5, 12.0], [2.0, 2.0], [4.0, 16.0]];
const HEIGHTS: [f64; 6] = [0.2, 0.3, 0.4, 0.5, 0.8, 1.2];
/// Sides across and upright, in feet.
const LEAVES: [[f64; 2]; 4] = [[12.0, 4.0], [24.0, 6.0], [60.0, 6.0], [12.0, 12.0]];
/// How the sides of a loop lie to a leaf.
const TURNED: [(&str, f64); 4] =
    [("ahead", 0.0), ("on the side", FRAC_PI_2), ("askew by 0.4 rad", 0.4), ("askew by 1.0 rad", 1.0)];
/// Below this share of the greatest change over the same loop, an error is told as a share of that only.
const SMALL: f64 = 0.02;
/// How the names of groups begin, in the order of the table.
const KINDS: [&str; 7] = ["**", "plate of", "plates, over", "plates,", "vehicle:", "wall of", "walls,"];

struct Coil {
    name: &'static str,
    winding: Winding,
}

/// Legs along and across in feet, corner cuts in inches.
fn coils() -> Vec<Coil> {
    use WindingShape::{Quadrupole, Rectangle};
    let coil = |name, shape, [along, across]: [f64; 2], cut: f64, turns| Coil {
        name,
        winding: Winding {
            shape,
            along: along * FOOT,
            across: across * FOOT,
            corner_cut: cut / 12.0 * FOOT,
            turns,
            pitch: 0.150 / 12.0 * FOOT,
            wire_radius: 0.5 * awg_diameter(14),
        },
    };
    vec![
        coil("6 × 6 ft", Rectangle, [6.0, 6.0], 0.0, 3),
        coil("6 × 6 ft, corners cut 12 in", Rectangle, [6.0, 6.0], 12.0, 3),
        coil("6 × 20 ft", Rectangle, [6.0, 20.0], 0.0, 2),
        coil("6.5 × 40 ft, corners cut 6 in", Rectangle, [6.5, 40.0], 6.0, 2),
        coil("2 × 6 ft", Rectangle, [2.0, 6.0], 0.0, 4),
        coil("6 × 6 ft quadrupole", Quadrupole, [6.0, 6.0], 0.0, 3),
        coil("20 × 6 ft quadrupole, cut 6 in", Quadrupole, [20.0, 6.0], 6.0, 2),
    ]
}

/// One place of metal over or beside a loop.
struct Case {
    groups: Vec<String>,
    place: String,
    found: f64,
    reference: Reference,
    /// The greatest change of the same metal over the same loop.
    peak: f64,
}

impl Case {
    fn is_small(&self) -> bool {
        self.reference.change.abs() < SMALL * self.peak
    }

    fn error(&self) -> f64 {
        self.found - self.reference.change
    }

    /// Percent of the change.
    fn relative(&self) -> f64 {
        100.0 * self.error() / self.reference.change
    }

    fn of_peak(&self) -> f64 {
        100.0 * self.error() / self.peak
    }
}

/// The cases of one body over one loop, whose peak is known once all are there.
fn add(cases: &mut Vec<Case>, mut more: Vec<Case>) {
    let peak = more.iter().map(|case| case.reference.change).fold(0.0, f64::max);
    for case in &mut more {
        case.peak = peak;
    }
    cases.append(&mut more);
}

fn level(width: f64, length: f64, along: f64, rise: f64) -> Panel {
    Panel { sides: [width, length], middle: [0.0, along, rise], is_upright: false }
}

/// The metal at each offset and place along travel, at one height.
fn places(
    (plate, fine): (&Plate, &FineSheet),
    coil: &Coil,
    (offsets, along): (&[f64], &[f64]),
    height: f64,
    groups: &[String],
) -> Vec<Case> {
    let (primary, strands) = (PrimaryLoop::new(&coil.winding), coil.winding.outline());
    let places = offsets.iter().flat_map(|x| along.iter().map(move |y| [*x, *y, height]));
    let case = |position: Point3| Case {
        groups: groups.to_vec(),
        place: format!(
            "{}, over {}, {height:.2} m up, {:.1} m aside, {:.2} m along",
            groups[1], coil.name, position[0], position[1]
        ),
        found: plate.change(&primary, position),
        reference: fine.change(&strands, position),
        peak: 0.0,
    };
    places.map(case).collect()
}

/// The height from which a plate was stated to be good when this study was made. Fixed, so that its groups stay what they are.
fn least_height(width: f64, length: f64) -> f64 {
    let area = width * length;
    0.6 * (area / (area / 0.4).clamp(40.0, 64.0)).sqrt()
}

fn plates(is_quick: bool) -> Vec<Case> {
    let mut cases = Vec::new();
    for [width, length] in PLATES.into_iter().take(if is_quick { 2 } else { PLATES.len() }) {
        let plate = Plate::new(width, length).expect("a sound plate");
        let fine = FineSheet::new(&[level(width, length, 0.0, 0.0)]);
        for coil in &coils()[..if is_quick { 2 } else { 7 }] {
            let (half, leg) = (0.5 * length, 0.5 * coil.winding.along);
            // Over the middle, between, its end over the loop's middle, over its edge, and beyond.
            let along = [0.0, 0.5 * half, half, half + leg, half + leg + 0.5];
            for height in HEIGHTS {
                let resolved = height >= least_height(width, length);
                let lower = if resolved { "" } else { ", low" };
                let mut groups =
                    vec![format!("**plates, all**{lower}"), format!("plate of {width} × {length} m{lower}")];
                if resolved {
                    groups.push(format!("plates, over a loop of {}", coil.name));
                    groups.push(format!("plates, {height} m over the wire"));
                }
                add(&mut cases, places((&plate, &fine), coil, (&[0.0, 0.6, 1.5], &along), height, &groups));
            }
        }
    }
    cases
}

/// The undersides that the service knows, at their heights.
fn vehicles(is_quick: bool) -> Vec<Case> {
    let mut cases = Vec::new();
    for class in &VehicleClass::ALL[..if is_quick { 4 } else { VehicleClass::ALL.len() }] {
        let VehicleBody::Underside(panels) = class.body() else { continue };
        let lowest = panels.iter().map(|panel| panel.height.get::<meter>()).fold(f64::INFINITY, f64::min);
        let end = panels.iter().map(|panel| (panel.behind + panel.length).get::<meter>()).fold(0.0, f64::max);
        let parts = panels.iter().map(|panel| PlatePanel {
            width: panel.width.get::<meter>(),
            length: panel.length.get::<meter>(),
            along: -(panel.behind + panel.length / 2.0).get::<meter>(),
            rise: panel.height.get::<meter>() - lowest,
        });
        let parts: Vec<_> = parts.collect();
        let plate = Plate::assembled(&parts).expect("sound panels");
        let fine: Vec<_> = parts.iter().map(|part| level(part.width, part.length, part.along, part.rise)).collect();
        let fine = FineSheet::new(&fine);
        let what = if parts.len() > 1 { "**vehicles of several parts**" } else { "**vehicles of one part**" };
        let groups = [what.to_owned(), format!("vehicle: {}", class.code())];
        for coil in &coils()[..if is_quick { 2 } else { 7 }] {
            let leg = 0.5 * coil.winding.along;
            let along: Vec<_> = (0..=12).map(|step| -leg + (end + 2.0 * leg) * f64::from(step) / 12.0).collect();
            add(&mut cases, places((&plate, &fine), coil, (&[0.0, 0.6], &along), lowest + DEPTH, &groups));
        }
    }
    cases
}

/// Leaves beside loops, from three to eight feet off the nearest wire.
fn walls(is_quick: bool) -> Vec<Case> {
    let mut cases = Vec::new();
    for [length, height] in LEAVES.into_iter().take(if is_quick { 2 } else { LEAVES.len() }) {
        let (length, height) = (length * FOOT, height * FOOT);
        let wall = Wall::new(length, height).expect("a sound wall");
        let standing = Panel { sides: [length, height], middle: [0.0, 0.0, 0.5 * height], is_upright: true };
        let fine = FineSheet::new(&[standing]);
        for (coil, (lies, angle)) in
            coils()[..if is_quick { 2 } else { 7 }].iter().flat_map(|coil| TURNED.map(|turned| (coil, turned)))
        {
            let strands = turned(&coil.winding.outline(), angle);
            let edge = strands.iter().flat_map(|strand| [strand.segment.from[1], strand.segment.to[1]]);
            let edge = edge.fold(0.0, f64::max);
            let groups =
                ["**walls, all**".to_owned(), format!("walls, {lies}"), format!("wall of {length:.1} × {height:.1} m")];
            let feet =
                [3.0, 4.0, 6.0, 8.0].iter().flat_map(|gap| [0.0, 1.5].map(|x| [x, edge + gap * FOOT, FOOT / 3.0]));
            let case = |foot: Point3| {
                let primary = match angle {
                    0.0 => PrimaryLoop::new(&coil.winding),
                    FRAC_PI_2 => PrimaryLoop::turned(&coil.winding),
                    _ => PrimaryLoop::rotated(&coil.winding, angle, |point| wall.distance(foot, point)),
                };
                Case {
                    groups: groups.to_vec(),
                    place: format!(
                        "{}, {lies} of {}, {:.1} m off, {} m aside",
                        groups[2],
                        coil.name,
                        foot[1] - edge,
                        foot[0]
                    ),
                    found: wall.change(&primary, foot),
                    reference: fine.change(&strands, foot),
                    peak: 0.0,
                }
            };
            add(&mut cases, feet.map(case).collect());
        }
    }
    cases
}

/// The wires turned anticlockwise, seen from above.
fn turned(strands: &[Strand], angle: f64) -> Vec<Strand> {
    // A right angle is turned exactly, for then the sides stay parallel to the metal's.
    let (sine, cosine) = if angle == FRAC_PI_2 { (1.0, 0.0) } else { angle.sin_cos() };
    let place = |[x, y, z]: Point3| [cosine * x - sine * y, sine * x + cosine * y, z];
    let turn = |strand: &Strand| Strand {
        segment: Filament { from: place(strand.segment.from), to: place(strand.segment.to) },
        wires: strand.wires,
    };
    strands.iter().map(turn).collect()
}

/// A line for each group in the order of their first cases.
fn tell(cases: &[Case]) {
    let mut names: Vec<&String> = Vec::new();
    for group in cases.iter().flat_map(|case| &case.groups) {
        if !names.contains(&group) {
            names.push(group);
        }
    }
    names.sort_by_key(|name| KINDS.iter().position(|kind| name.starts_with(kind)));
    println!(
        "| what | places | error, % of the change: median, 95 of 100, greatest | of the peak: greatest | doubt of the reference, % | where it is greatest |"
    );
    println!("|---|---|---|---|---|---|");
    for name in names {
        let of_group = || cases.iter().filter(|case| case.groups.contains(name));
        let mut told: Vec<_> = of_group().filter(|case| !case.is_small()).collect();
        told.sort_by(|a, b| a.relative().abs().total_cmp(&b.relative().abs()));
        let Some(worst) = told.last() else { continue };
        let of_peak = of_group().map(|case| case.of_peak().abs()).fold(0.0, f64::max);
        let doubt = told.iter().map(|case| 100.0 * case.reference.doubt / case.reference.change).fold(0.0, f64::max);
        println!(
            "| {name} | {} | {:.3}, {:.2}, {:+.2} | {of_peak:.2} | {doubt:.3} | {} |",
            of_group().count(),
            told[told.len() / 2].relative().abs(),
            told[told.len() * 95 / 100].relative().abs(),
            worst.relative(),
            worst.place,
        );
    }
}

/// What is known otherwise: an endless sheet by its image, and figures that the tests hold, computed with other programs.
fn known() {
    let coils = coils();
    let (plain, cut) = (&coils[0].winding, &coils[1].winding);
    println!("\n| known otherwise | µH | found, error in % | reference, error in % |\n|---|---|---|---|");
    let row = |what: &str, known: f64, found: f64, reference: f64| {
        let percent = |value: f64| 100.0 * (value / known - 1.0);
        println!("| {what} | {:.4} | {:+.2} | {:+.2} |", known / MICRO, percent(found), percent(reference));
    };
    let over = |what: &str, size: f64, winding: &Winding, position: Point3, known: f64| {
        let [width, length] = if size > 0.0 { [size; 2] } else { [1.75, 4.5] };
        let found = Plate::new(width, length).expect("a sound plate").change(&PrimaryLoop::new(winding), position);
        let fine = FineSheet::new(&[level(width, length, 0.0, 0.0)]).change(&winding.outline(), position);
        row(what, known, found, fine.change);
    };
    let what = "image in an endless sheet, for a plate of 8 × 8 m, 0.6 m over 6 × 6 ft";
    over(what, 8.0, plain, [0.0, 0.0, 0.6], endless_sheet(plain, 0.6));
    for (what, winding, x, y, known) in [
        ("a car's plate over the middle of 6 × 6 ft", plain, 0.0, 0.0, 3.3241),
        ("the same 0.6 m aside, 1 m along", plain, 0.6, 1.0, 1.9993),
        ("the same with its end over the middle", plain, 0.0, 2.25, 1.0463),
        ("a car's plate over cut corners", cut, 0.0, 0.0, 3.2403),
        ("the same 0.6 m aside, 1 m along", cut, 0.6, 1.0, 1.9209),
        ("the same with its end over the middle", cut, 0.0, 2.25, 1.0093),
    ] {
        over(what, 0.0, winding, [x, y, 0.5], known * MICRO);
    }
    let (long, [length, height]) = (&coils[2].winding, [24.0 * FOOT, 6.0 * FOOT]);
    let standing = Panel { sides: [length, height], middle: [0.0, 0.0, 0.5 * height], is_upright: true };
    let (wall, fine) = (Wall::new(length, height).expect("a sound wall"), FineSheet::new(&[standing]));
    for (gap, known) in [(3.0, 0.20092), (4.0, 0.09588), (6.0, 0.02578)] {
        let foot = [0.0, (3.0 + gap) * FOOT, FOOT / 3.0];
        let found = wall.change(&PrimaryLoop::new(long), foot);
        let what = format!("a leaf of 24 × 6 ft, {gap} ft ahead of 6 × 20 ft");
        row(&what, known * MICRO, found, fine.change(&long.outline(), foot).change);
    }
}

fn main() {
    let is_quick = std::env::args().nth(1).is_some_and(|word| word == "quick");
    let cases: Vec<_> = [plates, vehicles, walls].iter().flat_map(|study| study(is_quick)).collect();
    tell(&cases);
    known();
}
