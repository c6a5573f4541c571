//! How many turns of which wire a loop has: Bayes' rule over turn counts, wires, sizes and steel.
//!
//! Inductance goes with the square of the turns, resistance with the turns and the wire; a size that is off moves both alike, so together
//! they tell more than each alone. Steel lowers the inductance only.

use uom::si::area::square_meter;
use uom::si::f64::Length;
use uom::si::frequency::hertz;
use uom::si::length::meter;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::request::{ResolvedExistingLoop, SteelBelow};
use crate::calculation::fault_finding::{MeterKind, MeterReading, Prediction, ReadingBand, inductance_ladder};
use crate::calculation::input::{ResolvedLoop, ResolvedWire, Shape};
use crate::physics::conductor;
use crate::physics::winding::Winding;
use crate::practice::detectors::AS_BUILT_SPREAD;
use crate::practice::existing_loops::{MAX_EXISTING_TURNS, STEEL_SHARE, turns_share, wire_share};
use crate::practice::layout::MESH_BELOW_LOOP;
use crate::practice::meter_readings::ReadingPlace;
use crate::practice::wires::{USUAL_COVER, WireGauge, usual_over_insulation};
use crate::quantity::{dimension, parse};
use crate::vocabulary::Vocabulary;

/// Sizes that are tried, from the smallest that the uncertainty allows to the largest; the outermost lie a little beyond it.
const SIZES: usize = 9;
/// How much of the inductance steel leaves, in so many steps from what a mirror at its depth leaves to nearly all.
const STEEL_STEPS: usize = 6;
/// Standard deviation of an installed loop and of the hand meter on it, as a share: three fifths of the as-built band, and 2.5 % for a meter
/// of 5 %. A choice made here.
const METER_DEVIATION: f64 = 0.025;
/// Stranded wire has 2 to 5 % more resistance than solid wire of its gauge (NEC tables, from memory): the middle, and how far it strays.
const STRANDED: (f64, f64) = (1.025, 0.012);

/// A turn count that the loop may have.
#[derive(Clone, Debug)]
pub struct TurnCandidate {
    /// The turns.
    pub turns: u32,
    /// How likely it has as many.
    pub likelihood: f64,
    /// How likely steel lies below, if it has as many.
    pub steel: f64,
    /// The likeliest wire with as many, and how likely it is then.
    pub wire: (WireGauge, f64),
    /// What meters show at the place of the readings, least and most: µH.
    pub inductance: (f64, f64),
    /// The same, ohm.
    pub resistance: (f64, f64),
    /// Whether its readings are those that were taken.
    pub fits: bool,
}

/// The likely turn counts, the likeliest first.
pub struct TurnCandidates {
    /// All of them.
    pub ranked: Vec<TurnCandidate>,
}

/// What loops of a wire measure.
struct WireLadder {
    wire: WireGauge,
    /// Inductance by turns, µH, at the size that was paced out.
    inductance: Vec<f64>,
    /// Of one turn, ohm.
    turn_ohm: f64,
}

/// The loop as its outline shows it, wound with so many turns of a wire.
pub fn wound(resolved: &ResolvedExistingLoop, wire: WireGauge, turns: u32) -> ResolvedLoop {
    let area = wire.area();
    let cover = parse::<dimension::Length>(USUAL_COVER).map_or_else(|_| Length::default(), |cover| cover.si);
    ResolvedLoop {
        shape: Shape::Rectangle,
        along_travel: resolved.along_travel,
        across_lane: resolved.across_lane,
        turns,
        corner_cut: Length::default(),
        cover,
        wire: ResolvedWire {
            gauge: wire.code().to_owned(),
            area,
            over_insulation: usual_over_insulation(area, resolved.system),
            over_jacket: None,
        },
        system: resolved.system,
    }
}

/// The model of a loop of which only the outline is known.
struct OutlineModel<'a> {
    resolved: &'a ResolvedExistingLoop,
    wires: Vec<WireLadder>,
    /// How inductance grows with the size: the exponent for each turn count.
    growth: Vec<f64>,
    /// Sizes as multiples of the one that was paced out, each with its share.
    sizes: [(f64, f64); SIZES],
    /// What steel leaves of the inductance, each with its share; the first is no steel.
    steels: Vec<(f64, f64)>,
    /// Of the lead-in as far as it is measured, µH and ohm.
    lead_in: (f64, f64),
}

impl<'a> OutlineModel<'a> {
    fn new(resolved: &'a ResolvedExistingLoop) -> Self {
        let conditions = &resolved.readings.conditions;
        let (frequency, celsius) =
            (conditions.frequency.get::<hertz>(), conditions.temperature.get::<degree_celsius>());
        let ladder = |winding: &Winding| {
            let internal = conductor::skin_effect(winding.wire_radius, frequency, celsius).internal_factor;
            let henries = inductance_ladder(winding, internal, MAX_EXISTING_TURNS);
            henries.into_iter().map(|rung| rung * 1e6).collect::<Vec<_>>()
        };
        let wires: Vec<_> = WireGauge::ALL
            .iter()
            .filter(|wire| wire_share(**wire) > 0.0)
            .map(|wire| {
                let winding = wound(resolved, *wire, 1).winding();
                let per_metre = conductor::dc_resistance_per_metre(wire.area().get::<square_meter>(), celsius);
                let turn_ohm = STRANDED.0 * winding.turn_length() * per_metre;
                WireLadder { wire: *wire, inductance: ladder(&winding), turn_ohm }
            })
            .collect();
        let usual = wound(resolved, WireGauge::Awg14, 1).winding();
        let larger = ladder(&Winding { along: 1.1 * usual.along, across: 1.1 * usual.across, ..usual });
        let here = ladder(&usual);
        let growth = here.iter().zip(&larger).map(|(here, larger)| (larger / here.max(1e-9)).ln() / 1.1_f64.ln());
        let lead_in = match conditions.place {
            ReadingPlace::DetectorEnd => (resolved.lead_in.henries() * 1e6, resolved.lead_in_ohms()),
            ReadingPlace::LoopEnd => (0.0, 0.0),
        };
        Self {
            resolved,
            growth: growth.collect(),
            wires,
            sizes: sizes(resolved.size_uncertainty.get::<ratio>()),
            steels: steels(resolved),
            lead_in,
        }
    }

    /// Inductance of the whole, µH.
    fn inductance(&self, wire: &WireLadder, turns: usize, size: f64, steel: f64) -> f64 {
        wire.inductance[turns] * size.powf(self.growth[turns]) * steel + self.lead_in.0
    }

    /// Resistance of the whole, ohm.
    fn resistance(&self, wire: &WireLadder, turns: usize, size: f64) -> f64 {
        turns as f64 * wire.turn_ohm * size + self.lead_in.1
    }

    /// How likely the readings are with each wire and steel, summed over sizes, before any share of theirs.
    fn likelihoods(&self, turns: usize, readings: (Option<f64>, Option<f64>)) -> Vec<(usize, usize, f64)> {
        let (inductance, resistance) = readings;
        let mut found = Vec::with_capacity(self.wires.len() * self.steels.len());
        for (index, wire) in self.wires.iter().enumerate() {
            let by_resistance = self.sizes.map(|(size, _)| {
                likelihood(MeterKind::Resistance, resistance, resistance_band(self.resistance(wire, turns, size)))
            });
            for (steel, (left, _)) in self.steels.iter().enumerate() {
                let of_size = |((size, share), by_resistance): (&(f64, f64), f64)| {
                    let band = inductance_band(self.inductance(wire, turns, *size, *left));
                    share * by_resistance * likelihood(MeterKind::Inductance, inductance, band)
                };
                let sum = self.sizes.iter().zip(by_resistance).map(of_size).sum();
                found.push((index, steel, sum));
            }
        }
        found
    }

    /// A turn count with its weight.
    fn candidate(&self, turns: u32, readings: (Option<f64>, Option<f64>)) -> TurnCandidate {
        let count = turns as usize;
        let (mut by_wire, mut of_steel, mut sum) = (vec![0.0; self.wires.len()], 0.0, 0.0);
        for (wire, steel, likelihood) in self.likelihoods(count, readings) {
            let weight = likelihood * wire_share(self.wires[wire].wire) * self.steels[steel].1;
            by_wire[wire] += weight;
            sum += weight;
            of_steel += if self.steels[steel].0 < 1.0 { weight } else { 0.0 };
        }
        let best = (0..by_wire.len()).max_by(|a, b| by_wire[*a].total_cmp(&by_wire[*b])).unwrap_or_default();
        let share = |part: f64| part / sum.max(f64::MIN_POSITIVE);
        let wire = &self.wires[best];
        let uncertainty = self.resolved.size_uncertainty.get::<ratio>();
        let (small, large) = (1.0 - uncertainty, 1.0 + uncertainty);
        let least_left = self.steels.iter().map(|(left, _)| *left).fold(1.0, f64::min);
        let lowest = if share(of_steel) >= 0.5 { least_left } else { 1.0 };
        let of_kind =
            |kind, low: ReadingBand, high: ReadingBand| (low.expected_range(kind).0, high.expected_range(kind).1);
        let inductance = of_kind(
            MeterKind::Inductance,
            inductance_band(self.inductance(wire, count, small, lowest)),
            inductance_band(self.inductance(wire, count, large, 1.0)),
        );
        let resistance = of_kind(
            MeterKind::Resistance,
            resistance_band(self.resistance(wire, count, small)),
            resistance_band(self.resistance(wire, count, large)),
        );
        let lies_in =
            |reading: Option<f64>, range: (f64, f64)| reading.is_none_or(|at| (range.0..=range.1).contains(&at));
        TurnCandidate {
            turns,
            likelihood: sum * turns_share(turns),
            steel: share(of_steel),
            wire: (wire.wire, share(by_wire[best])),
            inductance,
            resistance,
            fits: lies_in(readings.0, inductance) && lies_in(readings.1, resistance),
        }
    }
}

/// Every size that the uncertainty allows alike, and a quarter beyond with less.
fn sizes(uncertainty: f64) -> [(f64, f64); SIZES] {
    let middle = (SIZES - 1) as f64 / 2.0;
    std::array::from_fn(|index| {
        let off = 1.25 * (index as f64 - middle) / middle;
        (1.0 + uncertainty * off, if off.abs() > 1.0 { 0.3 } else { 1.0 })
    })
}

/// What steel leaves of the inductance, with the share of each: a mirror at its depth is the most that it takes.
fn steels(resolved: &ResolvedExistingLoop) -> Vec<(f64, f64)> {
    let usual_depth = MESH_BELOW_LOOP.in_system(resolved.system);
    let (share, depth) = match resolved.steel {
        SteelBelow::Absent => return vec![(1.0, 1.0)],
        SteelBelow::Unknown => (STEEL_SHARE, usual_depth),
        SteelBelow::Present(depth) => (1.0, depth.unwrap_or(usual_depth)),
    };
    let winding = wound(resolved, WireGauge::Awg14, 3).winding();
    let inductance = winding.inductance(0.25);
    let least = 1.0 - winding.mirror_mutual(depth.get::<meter>()) / inductance;
    let steps = STEEL_STEPS as f64;
    let steel = (0..STEEL_STEPS).map(|step| {
        let left = least + (0.97 - least).max(0.0) * step as f64 / (steps - 1.0);
        (left.min(0.97), share / steps)
    });
    std::iter::once((1.0, 1.0 - share)).filter(|(_, share)| *share > 0.0).chain(steel).collect()
}

fn inductance_band(value: f64) -> ReadingBand {
    let relative = (0.6 * AS_BUILT_SPREAD).hypot(METER_DEVIATION);
    ReadingBand { low: value, high: value, relative, absolute: 0.3 }
}

fn resistance_band(value: f64) -> ReadingBand {
    ReadingBand { low: value, high: value, relative: STRANDED.1.hypot(METER_DEVIATION), absolute: 0.03 }
}

fn likelihood(kind: MeterKind, reading: Option<f64>, band: ReadingBand) -> f64 {
    reading.map_or(1.0, |number| Prediction::of_number(band).likelihood(kind, MeterReading::Number(number)))
}

impl TurnCandidates {
    /// The turn counts that the readings speak for. An open circuit leaves nothing to read, and then only how usual each is counts.
    pub fn find(resolved: &ResolvedExistingLoop) -> Self {
        let model = OutlineModel::new(resolved);
        let readings = &resolved.readings;
        let is_open = readings.of(MeterKind::Resistance).is_some_and(MeterReading::is_open);
        let taken = if is_open {
            (None, None)
        } else {
            (readings.number(MeterKind::Inductance), readings.number(MeterKind::Resistance))
        };
        let mut ranked: Vec<_> = (1..=MAX_EXISTING_TURNS).map(|turns| model.candidate(turns, taken)).collect();
        let sum: f64 = ranked.iter().map(|one| one.likelihood).sum::<f64>().max(f64::MIN_POSITIVE);
        for one in &mut ranked {
            one.likelihood /= sum;
        }
        ranked.sort_by(|a, b| b.likelihood.total_cmp(&a.likelihood));
        Self { ranked }
    }

    /// How likely steel lies below, over all counts.
    pub fn steel(&self) -> f64 {
        self.ranked.iter().map(|one| one.likelihood * one.steel).sum()
    }

    /// Where the inductance at the place of the readings lies, over all counts that are likely at all, µH.
    pub fn inductance_range(&self) -> (f64, f64) {
        let likely = self.ranked.iter().enumerate().filter(|(index, one)| *index == 0 || one.likelihood >= 0.05);
        likely
            .fold((f64::INFINITY, 0.0), |(low, high), (_, one)| (low.min(one.inductance.0), high.max(one.inductance.1)))
    }
}

/// The terminals' inductance from one at the place of the readings, µH.
pub fn at_terminals(resolved: &ResolvedExistingLoop, inductance: f64) -> f64 {
    match resolved.readings.conditions.place {
        ReadingPlace::DetectorEnd => inductance,
        ReadingPlace::LoopEnd => inductance + resolved.lead_in.henries() * 1e6,
    }
}
