//! Loops on different channels: how they couple, and what to do about it.

use uom::si::f64::{Inductance, Length};
use uom::si::frequency::kilohertz;
use uom::si::inductance::microhenry;
use uom::si::length::meter;

use super::report::{NeighbourAction, Neighbours};
use crate::calculation::input::{ResolvedDetector, ResolvedLoop};
use crate::calculation::layout::{ChannelLoop, DetectorChannel, PlacedCoil, coupling};
use crate::calculation::loop_characteristics::{ElectricalFigures, MeasurementConditions, measure};
use crate::calculation::report::{Decimals, Diagnostics, FieldPath, Finding, Statement};
use crate::practice::detectors::{HARMLESS_COUPLING, SEPARATE_FREQUENCIES};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::quantity::output::round;

/// How many steps the search for a harmless distance takes at most.
const MAX_STEPS: u32 = 120;
/// The step of that search, metres.
const STEP_M: f64 = 0.1;

/// A loop, and what it measures.
#[derive(Clone, Copy)]
struct MeasuredLoop<'a> {
    own: &'a ChannelLoop,
    figures: &'a ElectricalFigures,
}

impl<'a> MeasuredLoop<'a> {
    /// Where it lies, when that is known.
    fn placed(self) -> Option<PlacedCoil<'a>> {
        let position = self.own.position?;
        Some(PlacedCoil { coil: &self.own.coil, inductance: self.figures.loop_inductance, position })
    }
}

/// All pairs of single loops whose positions are known; loops on one channel do not disturb each other.
pub fn pairs(
    channels: &[DetectorChannel],
    detector: &ResolvedDetector,
    diagnostics: &mut Diagnostics,
) -> Vec<Neighbours> {
    let loops: Vec<_> = channels
        .iter()
        .enumerate()
        .flat_map(|(index, channel)| {
            let measured = channel.loops.iter().zip(&channel.figures);
            measured.map(move |(own, figures)| (index, MeasuredLoop { own, figures }))
        })
        .collect();
    let mut pairs = Vec::new();
    let mut is_position_missing = false;
    for (second, (theirs, other)) in loops.iter().enumerate() {
        for (ours, one) in &loops[..second] {
            if ours == theirs {
                continue;
            }
            match one.placed().zip(other.placed()) {
                Some(placed) => pairs.push(pair((*one, *other), placed, detector, diagnostics)),
                None => is_position_missing = true,
            }
        }
    }
    if is_position_missing {
        diagnostics.add_finding(Finding::new(
            FindingCode::PositionUnknown,
            Level::Note,
            &FieldPath::BODY.field("loops"),
            Statement::new("compatibility-position-unknown"),
        ));
    }
    pairs
}

fn pair(
    (one, other): (MeasuredLoop<'_>, MeasuredLoop<'_>),
    placed: (PlacedCoil<'_>, PlacedCoil<'_>),
    detector: &ResolvedDetector,
    diagnostics: &mut Diagnostics,
) -> Neighbours {
    let (first, second) = (one.figures.terminal_inductance, other.figures.terminal_inductance);
    let (one, other) = (one.own, other.own);
    let coupling = coupling(&placed.0, &placed.1).value;
    // f goes with 1/√L, so the ratio needs no capacitance.
    let ratio = (first.max(second) / first.min(second)).value.sqrt();
    let separation = ratio - 1.0;
    let frequencies = detector.tuning_capacitance.map_or_else(Vec::new, |capacitance| {
        [first, second]
            .map(|inductance| DetectorChannel::frequency(inductance, capacitance).get::<kilohertz>())
            .to_vec()
    });
    let disturbs = coupling >= HARMLESS_COUPLING && separation < SEPARATE_FREQUENCIES;
    let percents = (100.0 * coupling, 100.0 * separation);
    let outcome = if disturbs {
        "disturbs"
    } else if coupling < HARMLESS_COUPLING {
        "harmless"
    } else {
        "far_apart"
    };
    let message = Statement::new("compatibility-coupling")
        .percent("coupling", percents.0, 2)
        .percent("frequency_separation", percents.1, 1)
        .code("outcome", outcome);
    if disturbs {
        let message = Statement::new("compatibility-crosstalk")
            .text("loop", one.label.clone())
            .text("other_loop", other.label.clone())
            .phrase("sentence", message.clone());
        diagnostics.add_finding(
            Finding::new(FindingCode::Crosstalk, Level::Warning, &FieldPath::BODY.field("loops"), message)
                .figure("coupling", percents.0, "percent")
                .figure("frequency_separation", percents.1, "percent"),
        );
    }
    Neighbours {
        between: vec![one.label.clone(), other.label.clone()],
        marks: [one.mark, other.mark].into_iter().flatten().collect(),
        coupling_percent: round(percents.0, 3),
        frequencies_khz: frequencies.into_iter().map(|frequency| round(frequency, 3)).collect(),
        frequency_separation_percent: round(percents.1, 3),
        actions: if disturbs { actions((one, other), placed, first) } else { Vec::new() },
        message: message.into(),
    }
}

fn actions(
    (one, other): (&ChannelLoop, &ChannelLoop),
    placed: (PlacedCoil<'_>, PlacedCoil<'_>),
    inductance: Inductance,
) -> Vec<NeighbourAction> {
    let mut actions = vec![
        NeighbourAction {
            action: "frequency_setting",
            message: Statement::new("compatibility-set-another-frequency")
                .text("loop", one.label.clone())
                .text("other_loop", other.label.clone())
                .into(),
        },
        NeighbourAction { action: "scanning_unit", message: Statement::new("compatibility-take-scanning-unit").into() },
    ];
    let more = ResolvedLoop { turns: other.coil.turns + 1, ..other.coil.clone() };
    let changed = measure(&more, &other.lead_in, &MeasurementConditions::usual()).terminal_inductance;
    let shift = 100.0 * ((changed / inductance).value.sqrt() - 1.0).abs();
    actions.push(NeighbourAction {
        action: "turn_count",
        message: Statement::new("compatibility-wind-more-turns")
            .text("loop", other.label.clone())
            .count("turns", more.turns.into())
            .quantity("terminal_inductance", changed.get::<microhenry>(), 0, "uH")
            .percent("frequency_separation", shift, 0)
            .into(),
    });
    actions.extend(harmless_distance(&placed.0, &placed.1).map(|distance| {
        NeighbourAction {
            action: "distance",
            message: Statement::new("compatibility-move-apart")
                .length("distance", distance, one.coil.system)
                .percent("harmless_coupling", 100.0 * HARMLESS_COUPLING, Decimals::All)
                .into(),
        }
    }));
    actions
}

/// The distance of the middles, along the line that joins them, from which on the coupling is harmless.
fn harmless_distance(one: &PlacedCoil<'_>, other: &PlacedCoil<'_>) -> Option<Length> {
    let (from, to) = (one.position, other.position);
    let (along, across) = (to.0 - from.0, to.1 - from.1);
    let distance = along.get::<meter>().hypot(across.get::<meter>());
    if distance <= 0.0 {
        return None;
    }
    let farther = |step: u32| distance + STEP_M * f64::from(step);
    let moved = |step: u32| {
        let stretch = farther(step) / distance;
        other.moved_to((from.0 + stretch * along, from.1 + stretch * across))
    };
    let disturbs = |step: u32| coupling(one, &moved(step)).value >= HARMLESS_COUPLING;
    // Of loops that overlap the coupling changes its sign on the way out. Once they do not, it falls with distance, and halving the
    // steps finds the first that is far enough.
    let (mut near, mut far) = ((0..MAX_STEPS).find(|step| !one.overlaps(&moved(*step)))?, MAX_STEPS);
    while far - near > 1 {
        let middle = near.midpoint(far);
        if disturbs(middle) { near = middle } else { far = middle }
    }
    (!disturbs(far)).then(|| Length::new::<meter>(farther(far)))
}
