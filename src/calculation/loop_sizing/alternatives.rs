//! Other sizes and shapes for the same role, and what each costs and gains.

use uom::si::f64::Length;
use uom::si::inductance::microhenry;
use uom::si::length::meter;
use uom::si::ratio::percent;

use super::design::{Design, Grade, saw_cut};
use super::job::Job;
use super::report::{Alternative, VehicleSighting};
use super::search::{Brief, Choice};
use crate::calculation::input::Shape;
use crate::calculation::report::{Diagnostics, FieldPath, Finding};
use crate::calculation::vehicle_response::Metal;
use crate::practice::findings::{FindingCode, Level};
use crate::practice::roles::{ALTERNATIVE_STEP, MAX_LEG, Role, SHORT_LEG, USUAL_LEG, WINDOW_LEG};
use crate::practice::site::Barrier;
use crate::quantity::format::format_length;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// A choice that was not taken, and what it is called.
pub type Other = (&'static str, Choice);

/// The next smaller, the next larger, the narrow loop at a drive-through window, and a quadrupole where two-wheelers come.
pub fn others(brief: &Brief<'_>, chosen: &Choice) -> Vec<Other> {
    let job = brief.job;
    let system = job.system();
    let step = ALTERNATIVE_STEP.in_system(system);
    let (leg, across) = (chosen.design.coil.along_travel, chosen.design.coil.across_lane);
    let least = if brief.holds_the_gate { SHORT_LEG } else { WINDOW_LEG }.in_system(system);
    let window = WINDOW_LEG.in_system(system);
    let at_window = !brief.holds_the_gate && job.opening.barrier == Barrier::None && job.only_low_vehicles();
    let fit = |along, across, shape| brief.fit(along, across, shape, chosen.centres.len());

    let mut others = Vec::new();
    if leg - step >= 0.999 * least {
        others.push(("shorter", fit(leg - step, across, Shape::Rectangle)));
    }
    if leg + step <= 1.001 * MAX_LEG.in_system(system) {
        others.push(("longer", fit(leg + step, across, Shape::Rectangle)));
    }
    if at_window && leg > window {
        others.push(("window", fit(window, across.min(USUAL_LEG.in_system(system)), Shape::Rectangle)));
    }
    if job.vehicles.iter().any(|vehicle| vehicle.is_two_wheeler()) {
        others.push(("quadrupole", fit(leg, across, Shape::Quadrupole)));
    }
    others
}

/// What an alternative costs and gains against the chosen loop.
pub fn describe((name, other): &Other, chosen: &Choice, job: &Job) -> Alternative {
    let cut = |design: &Design| saw_cut(&design.coil, job);
    let saw_cut_change = cut(&other.design).zip(cut(&chosen.design)).map(|(a, b)| a - b);
    let wire_change = other.design.electrical.wire_length - chosen.design.electrical.wire_length;
    let height_change = other.seen_height - chosen.seen_height;
    let signed = |length: Length, more: &str, less: &str| {
        format!(
            "{} {}",
            format_length(length.abs(), job.system()),
            if length < Length::default() { less } else { more }
        )
    };
    let cost = saw_cut_change.map_or_else(
        || signed(wire_change, "more wire", "less wire"),
        |change| signed(change, "more saw cut", "less saw cut"),
    );
    let tuning =
        if other.design.grade >= Grade::TooDeep { " No turn count of it suits this unit and slot." } else { "" };
    let turns = other.design.coil.turns;
    let message = format!(
        "{turns} {}, {cost} for each loop, metal is seen {}.{tuning}",
        if turns == 1 { "turn" } else { "turns" },
        if height_change.abs() < Length::new::<meter>(0.02) {
            "equally high".to_owned()
        } else {
            signed(height_change, "higher", "lower")
        },
    );
    Alternative {
        alternative: name,
        shape: other.design.coil.shape.code(),
        along_travel: other.design.coil.along_travel.into(),
        across_lane: other.design.coil.across_lane.into(),
        turns,
        terminal_inductance_uh: round(other.design.electrical.terminal_inductance.get::<microhenry>(), 2),
        saw_cut_change: saw_cut_change.map(Into::into),
        wire_change: wire_change.into(),
        seen_height_change: height_change.into(),
        vehicles: other.sightings.iter().map(|sighting| VehicleSighting::of(sighting, job)).collect(),
        message,
    }
}

/// States what a quadrupole gives two-wheelers, and what it takes from high beds.
pub fn judge_quadrupole(role: Role, (_, other): &Other, chosen: &Choice, job: &Job, diagnostics: &mut Diagnostics) {
    let Some(class) = job.vehicles.iter().find(|class| class.is_two_wheeler()) else { return };
    let metal = Metal::of_class(*class);
    let at_centre =
        |choice: &Choice| choice.field.change(metal, choice.field.centred(metal), Length::default()).get::<percent>();
    let (gained, had, system) = (at_centre(other), at_centre(chosen), job.system());
    let message = format!(
        "A quadrupole of the same size changes by {gained:.3} % under a {} at its centre, where the rectangle changes by {had:.3} %. \
         It costs height: flat metal is seen up to {} instead of {}.",
        class.label().to_lowercase(),
        format_length(other.seen_height, system),
        format_length(chosen.seen_height, system),
    );
    diagnostics.add_finding(
        Finding::new(FindingCode::QuadrupoleOffered, Level::Note, &FieldPath::BODY.field("vehicles"), message)
            .on(Some(role.code()))
            .figure("change_at_centre", gained, "percent")
            .figure("change_at_centre_of_rectangle", had, "percent")
            .length("seen_height", other.seen_height, system)
            .length("seen_height_of_rectangle", chosen.seen_height, system),
    );
}
