//! Loops on different channels: how they couple, and what to do about it.

use uom::si::f64::{Inductance, Length};
use uom::si::frequency::kilohertz;
use uom::si::inductance::{henry, microhenry};
use uom::si::length::meter;

use super::report::{NeighbourAction, Neighbours};
use crate::calculation::input::{ResolvedDetector, ResolvedLoop};
use crate::calculation::layout::{ChannelLoop, DetectorChannel};
use crate::calculation::loop_characteristics::{MeasurementConditions, measure};
use crate::calculation::report::{Decimals, Diagnostics, FieldPath, Finding, Statement};
use crate::physics::filament::mutual;
use crate::physics::winding::Strand;
use crate::practice::detectors::{HARMLESS_COUPLING, SEPARATE_FREQUENCIES};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::quantity::output::round;

/// How many steps the search for a harmless distance takes at most.
const MAX_STEPS: u32 = 120;
/// The step of that search, metres.
const STEP_M: f64 = 0.1;

/// All pairs of single loops whose positions are known; loops on one channel do not disturb each other.
pub fn pairs(
    channels: &[DetectorChannel],
    detector: &ResolvedDetector,
    diagnostics: &mut Diagnostics,
) -> Vec<Neighbours> {
    let loops: Vec<_> = channels
        .iter()
        .enumerate()
        .flat_map(|(index, channel)| channel.loops.iter().map(move |one| (index, one)))
        .collect();
    let mut pairs = Vec::new();
    let mut is_position_missing = false;
    for (second, (theirs, other)) in loops.iter().enumerate() {
        for (ours, one) in &loops[..second] {
            if ours == theirs {
                continue;
            }
            if one.position.is_some() && other.position.is_some() {
                pairs.push(pair(one, other, detector, diagnostics));
            } else {
                is_position_missing = true;
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
    one: &ChannelLoop,
    other: &ChannelLoop,
    detector: &ResolvedDetector,
    diagnostics: &mut Diagnostics,
) -> Neighbours {
    let own = mean_inductance(one, other);
    let coupling = coupling(one, other, own, 1.0);
    let (first, second) = (terminal_inductance(one), terminal_inductance(other));
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
        actions: if disturbs { actions(one, other, own) } else { Vec::new() },
        message: message.into(),
    }
}

fn actions(one: &ChannelLoop, other: &ChannelLoop, own: f64) -> Vec<NeighbourAction> {
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
    let shift = 100.0 * ((changed / terminal_inductance(one)).value.sqrt() - 1.0).abs();
    actions.push(NeighbourAction {
        action: "turn_count",
        message: Statement::new("compatibility-wind-more-turns")
            .text("loop", other.label.clone())
            .count("turns", more.turns.into())
            .quantity("terminal_inductance", changed.get::<microhenry>(), 0, "uH")
            .percent("frequency_separation", shift, 0)
            .into(),
    });
    actions.extend(harmless_distance(one, other, own).map(|distance| {
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

fn terminal_inductance(one: &ChannelLoop) -> Inductance {
    measure(&one.coil, &one.lead_in, &MeasurementConditions::usual()).terminal_inductance
}

/// The coupling coefficient with the distance of the middles stretched by a factor; `own` is the mean of the self-inductances.
///
/// The wires of a slot count as one bundle at their mean depth, which is right for neighbours and quick for any number of turns.
fn coupling(one: &ChannelLoop, other: &ChannelLoop, own: f64, stretch: f64) -> f64 {
    let (Some(from), Some(to)) = (one.position, other.position) else { return 0.0 };
    let (ours, theirs) = (one.coil.winding(), other.coil.winding());
    // Wires that would lie on one another lie above one another instead: the loop farther along on top, whichever is named first.
    let sense = if (from.0, from.1) <= (to.0, to.1) { 1.0 } else { -1.0 };
    let offset = [
        stretch * (to.1 - from.1).get::<meter>(),
        stretch * (to.0 - from.0).get::<meter>(),
        sense * ours.pitch * f64::from(ours.turns.max(theirs.turns)),
    ];
    let theirs: Vec<_> =
        theirs.outline().into_iter().map(|strand| (strand.segment.shifted(offset), strand.wires)).collect();
    let flux = |strand: &Strand| {
        theirs.iter().map(|(segment, wires)| strand.wires * wires * mutual(&strand.segment, segment)).sum::<f64>()
    };
    let mutual: f64 = ours.outline().iter().map(flux).sum();
    // No coupling exceeds 1, though bundles that nearly touch would.
    (mutual / own).abs().min(1.0)
}

/// The geometric mean of the self-inductances of two loops, henry.
fn mean_inductance(one: &ChannelLoop, other: &ChannelLoop) -> f64 {
    let of = |one: &ChannelLoop| {
        measure(&one.coil, &one.lead_in, &MeasurementConditions::usual()).loop_inductance.get::<henry>()
    };
    (of(one) * of(other)).sqrt()
}

/// The distance of the middles, along the line that joins them, from which on the coupling is harmless.
fn harmless_distance(one: &ChannelLoop, other: &ChannelLoop, own: f64) -> Option<Length> {
    let (from, to) = one.position.zip(other.position)?;
    let (along, across) = ((to.0 - from.0).get::<meter>(), (to.1 - from.1).get::<meter>());
    let distance = along.hypot(across);
    if distance <= 0.0 {
        return None;
    }
    let farther = |step: u32| distance + STEP_M * f64::from(step);
    let disturbs = |step: u32| coupling(one, other, own, farther(step) / distance) >= HARMLESS_COUPLING;
    // Of loops that overlap the coupling changes its sign on the way out. Once they do not, it falls with distance, and halving the
    // steps finds the first that is far enough.
    let legs = |of: fn(&ResolvedLoop) -> Length| ((of(&one.coil) + of(&other.coil)) / 2.0).get::<meter>();
    let (long, wide) = (legs(|coil| coil.along_travel), legs(|coil| coil.across_lane));
    let overlaps = |step: u32| {
        let stretch = farther(step) / distance;
        stretch * along.abs() < long && stretch * across.abs() < wide
    };
    let (mut near, mut far) = ((0..MAX_STEPS).find(|step| !overlaps(*step))?, MAX_STEPS);
    while far - near > 1 {
        let middle = near.midpoint(far);
        if disturbs(middle) { near = middle } else { far = middle }
    }
    (!disturbs(far)).then(|| Length::new::<meter>(farther(far)))
}
