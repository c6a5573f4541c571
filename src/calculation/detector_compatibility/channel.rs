//! What comes to one input of a detector unit: a loop, or several in series or parallel.

use std::cell::RefCell;
use std::collections::BTreeMap;

use uom::si::electrical_resistance::ohm;
use uom::si::f64::{ElectricalResistance, Frequency, Inductance, Length, Ratio, Time};
use uom::si::frequency::hertz;
use uom::si::inductance::henry;
use uom::si::ratio::ratio;

use crate::calculation::input::{ResolvedLeadIn, ResolvedLoop};
use crate::calculation::loop_characteristics::{ElectricalFigures, MeasurementConditions, measure};
use crate::calculation::vehicle_response::{LoopField, VehicleModel};
use crate::physics::circuit;
use crate::practice::detectors::{FailureBehaviour, OutputMode, Wiring};
use crate::practice::roles::Role;
use crate::practice::vehicles::VehicleClass;

/// A loop of the request in typed quantities.
#[derive(Clone)]
pub struct ChannelLoop {
    /// The caller's name for it.
    pub label: String,
    /// What it is for.
    pub role: Role,
    /// The loop.
    pub coil: ResolvedLoop,
    /// The pair to the unit.
    pub lead_in: ResolvedLeadIn,
    /// Where its middle lies, along and across, when given.
    pub position: Option<(Length, Length)>,
    /// What its output was asked to do, when said.
    pub output: Option<OutputMode>,
    /// After how long its output was asked to let go, when said.
    pub presence_time: Option<Time>,
    /// What its output was asked to do on failure, when said.
    pub on_loop_failure: Option<FailureBehaviour>,
}

/// One input of the unit.
pub struct DetectorChannel {
    /// The loops on it.
    pub loops: Vec<ChannelLoop>,
    /// How they are joined.
    pub wiring: Wiring,
    /// What each loop measures at the end of its own lead-in.
    pub figures: Vec<ElectricalFigures>,
    /// At the terminals.
    pub inductance: Inductance,
    /// Lower end of the as-built band at the terminals.
    pub low: Inductance,
    /// Upper end of the as-built band at the terminals.
    pub high: Inductance,
    /// To direct current.
    pub dc_resistance: ElectricalResistance,
    /// Upper bound of the quality factor.
    pub quality_factor: f64,
    /// The same with the resistance to direct current, as one agency tests it.
    pub dc_quality_factor: f64,
    /// What the lead-in leaves of a change at the loop, for the loop that it leaves least.
    pub share: Ratio,
    /// The changes that were computed already: checks, settings and remedies ask for the same ones.
    known_changes: RefCell<BTreeMap<VehicleClass, Vec<Ratio>>>,
}

impl DetectorChannel {
    /// Joins loops; each comes to the unit on its own lead-in, and coupling between them is left out.
    pub fn new(loops: Vec<ChannelLoop>, wiring: Wiring) -> Self {
        let conditions = MeasurementConditions::usual();
        let figures: Vec<_> = loops.iter().map(|one| measure(&one.coil, &one.lead_in, &conditions)).collect();
        let join = |of: fn(&ElectricalFigures) -> f64| {
            let values: Vec<_> = figures.iter().map(of).collect();
            match wiring {
                Wiring::Parallel => circuit::parallel(&values),
                Wiring::Separate | Wiring::Series => circuit::series(&values),
            }
        };
        let inductance = join(|figures| figures.terminal_inductance.get::<henry>());
        let dc_resistance = join(|figures| figures.dc_resistance.get::<ohm>());
        // Resistances are small against reactances, so alike branches share the current alike and join as inductances do.
        let ac_resistance = join(|figures| figures.ac_resistance.get::<ohm>());
        let frequency = conditions.frequency.get::<hertz>();
        Self {
            inductance: Inductance::new::<henry>(inductance),
            low: Inductance::new::<henry>(join(|figures| figures.as_built_low.get::<henry>())),
            high: Inductance::new::<henry>(join(|figures| figures.as_built_high.get::<henry>())),
            dc_resistance: ElectricalResistance::new::<ohm>(dc_resistance),
            quality_factor: circuit::quality_factor(inductance, frequency, ac_resistance),
            dc_quality_factor: circuit::quality_factor(inductance, frequency, dc_resistance),
            share: figures.iter().map(|figures| figures.loop_share).fold(Ratio::new::<ratio>(1.0), Ratio::min),
            loops,
            wiring,
            figures,
            known_changes: RefCell::default(),
        }
    }

    /// The label of its loop, or of all.
    pub fn label(&self) -> String {
        self.loops.iter().map(|one| one.label.as_str()).collect::<Vec<_>>().join(" + ")
    }

    /// Whether any of its loops keeps a barrier from closing.
    pub fn holds_the_gate(&self) -> bool {
        self.loops.iter().any(|one| one.role.holds_the_gate())
    }

    /// The frequency that a unit of this tank capacitance runs at.
    pub fn frequency(inductance: Inductance, capacitance: uom::si::f64::Capacitance) -> Frequency {
        use uom::si::capacitance::farad;
        Frequency::new::<hertz>(circuit::resonance(inductance.get::<henry>(), capacitance.get::<farad>()))
    }

    /// The change at the terminals for a vehicle whose middle is over that of each loop in turn (a two-wheeler on its riding line).
    pub fn changes(&self, class: VehicleClass) -> Vec<Ratio> {
        if let Some(known) = self.known_changes.borrow().get(&class) {
            return known.clone();
        }
        let changes = self.compute_changes(class);
        self.known_changes.borrow_mut().insert(class, changes.clone());
        changes
    }

    fn compute_changes(&self, class: VehicleClass) -> Vec<Ratio> {
        let metal = VehicleModel::of_class(class);
        let inductances: Vec<_> =
            self.figures.iter().map(|figures| figures.terminal_inductance.get::<henry>()).collect();
        let weights = match self.wiring {
            Wiring::Parallel => circuit::parallel_weights(&inductances),
            Wiring::Separate | Wiring::Series => circuit::series_weights(&inductances),
        };
        self.loops
            .iter()
            .zip(&self.figures)
            .zip(weights)
            .map(|((one, electrical), weight)| {
                let field = LoopField::new(&one.coil, electrical);
                let offset = if class.is_two_wheeler() { field.riding_line } else { Length::default() };
                weight * field.change(metal, field.centred(metal), offset)
            })
            .collect()
    }

    /// The loops on which a unit that switches at `threshold` lets go under a vehicle, as a gap between its parts passes.
    pub fn loops_letting_go(&self, class: VehicleClass, threshold: Ratio) -> Vec<&ChannelLoop> {
        let metal = VehicleModel::of_class(class);
        let joined = self.changes(class);
        let lets_go = |((one, electrical), joined): ((&ChannelLoop, &ElectricalFigures), Ratio)| {
            let field = LoopField::new(&one.coil, electrical);
            let alone = field.change(metal, field.centred(metal), Length::default());
            // On one channel with others the change is diluted by the same factor as over the loop's middle.
            let dilution = joined / alone;
            !metal.gaps.is_empty() && field.weakest_in_gaps(metal, Length::default()) * dilution < threshold
        };
        self.loops
            .iter()
            .zip(&self.figures)
            .zip(joined)
            .filter(|item| lets_go(*item))
            .map(|((one, _), _)| one)
            .collect()
    }
}
