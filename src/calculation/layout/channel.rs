//! What comes to one input of a detector unit: a loop, or several in series or parallel.

use std::cell::{OnceCell, RefCell};
use std::collections::BTreeMap;
use std::rc::Rc;

use uom::si::electrical_resistance::ohm;
use uom::si::f64::{ElectricalResistance, Frequency, Inductance, Length, Ratio, Time};
use uom::si::frequency::hertz;
use uom::si::inductance::henry;
use uom::si::ratio::ratio;

use super::coupling::PlacedCoil;
use super::marks::LoopMark;
use super::sightings::{ClassSighting, Lane, LoopRow};
use super::step::choose_step;
use crate::calculation::budget::WorkBudget;
use crate::calculation::input::{ResolvedDetector, ResolvedLeadIn, ResolvedLoop};
use crate::calculation::loop_characteristics::{ElectricalFigures, MeasurementConditions, measure};
use crate::calculation::vehicle_response::{LoopField, WeakestChange};
use crate::physics::circuit;
use crate::practice::detectors::{FailureBehaviour, OutputMode, Wiring};
use crate::practice::roles::Role;
use crate::practice::vehicles::VehicleClass;

/// A loop of a request or of a layout, in typed quantities.
#[derive(Clone)]
pub struct ChannelLoop {
    /// The caller's name for it.
    pub label: String,
    /// Its mark, where it belongs to a layout.
    pub mark: Option<LoopMark>,
    /// What it is for.
    pub role: Role,
    /// The loop.
    pub coil: ResolvedLoop,
    /// The pair to the unit.
    pub lead_in: ResolvedLeadIn,
    /// Where its middle lies, along and across, when given.
    pub position: Option<(Length, Length)>,
    /// The lane that it lies across, alone or in a row.
    pub lane: Lane,
    /// From its lowest turn down to steel, if any.
    pub steel_below: Option<Length>,
    /// The unit that it comes to, by the caller's name; loops of one unit are scanned in turn. Without a name it has a unit of its own.
    pub unit: Option<String>,
    /// The step that the layout has decided for its channel.
    pub step: Option<Ratio>,
    /// What its output was asked to do, when said.
    pub output: Option<OutputMode>,
    /// After how long its output was asked to let go, when said.
    pub presence_time: Option<Time>,
    /// What its output was asked to do on failure, when said.
    pub on_loop_failure: Option<FailureBehaviour>,
    /// What vehicles make over it on a channel of its own, where a layout has computed that.
    pub sightings: Vec<ClassSighting>,
}

impl ChannelLoop {
    /// A loop that belongs to no layout, its place not known, with the settings that its role asks for.
    pub fn new(label: String, role: Role, coil: ResolvedLoop, lead_in: ResolvedLeadIn, lane: Lane) -> Self {
        Self {
            label,
            mark: None,
            role,
            coil,
            lead_in,
            position: None,
            lane,
            steel_below: None,
            unit: None,
            step: None,
            output: None,
            presence_time: None,
            on_loop_failure: None,
            sightings: Vec::new(),
        }
    }

    /// What it measures in an agency's acceptance test, over its steel.
    fn measure(&self, budget: &WorkBudget) -> ElectricalFigures {
        budget.count(self.coil.measure_steps());
        let conditions = MeasurementConditions { steel_below: self.steel_below, ..MeasurementConditions::usual() };
        measure(&self.coil, &self.lead_in, &conditions)
    }

    /// Whether one unit scans this loop and another in turn.
    pub fn shares_unit(&self, other: &Self) -> bool {
        self.unit.is_some() && self.unit == other.unit
    }
}

/// A loop, and what it measures at the end of its own lead-in.
#[derive(Clone)]
pub struct MeasuredLoop {
    /// The loop.
    pub own: Rc<ChannelLoop>,
    /// What it measures.
    pub figures: ElectricalFigures,
    /// What vehicles make over it alone.
    known: Rc<KnownSightings>,
}

/// The sightings of a loop that were computed already: checks, settings and remedies ask for the same ones.
struct KnownSightings {
    /// What the loop measured when they were computed.
    figures: ElectricalFigures,
    whole: RefCell<BTreeMap<VehicleClass, ClassSighting>>,
    /// What is left of each vehicle until its tail; many trials end before they ask for it.
    weakest: RefCell<BTreeMap<VehicleClass, Vec<WeakestChange>>>,
    field: OnceCell<LoopField>,
    budget: WorkBudget,
}

impl KnownSightings {
    fn of(sightings: &[ClassSighting], figures: ElectricalFigures, budget: &WorkBudget) -> Rc<Self> {
        let whole = sightings.iter().map(|sighting| (sighting.class, sighting.clone())).collect();
        let weakest = sightings.iter().map(|sighting| (sighting.class, sighting.weakest.clone())).collect();
        Rc::new(Self {
            figures,
            whole: RefCell::new(whole),
            weakest: RefCell::new(weakest),
            field: OnceCell::new(),
            budget: budget.clone(),
        })
    }
}

impl MeasuredLoop {
    /// Measures a loop as an agency's acceptance test does, over its steel. What is computed of it is counted.
    pub fn new(own: ChannelLoop, budget: &WorkBudget) -> Self {
        let figures = own.measure(budget);
        let known = KnownSightings::of(&own.sightings, figures, budget);
        Self { own: Rc::new(own), figures, known }
    }

    /// Measures loops, each as [`Self::new`]. What vehicles make is computed once for loops that are alike.
    pub fn measure_all(loops: &[ChannelLoop], budget: &WorkBudget) -> Vec<Self> {
        let mut measured: Vec<Self> = Vec::with_capacity(loops.len());
        for own in loops {
            let mut one = Self::new(own.clone(), budget);
            if let Some(alike) = measured.iter().find(|other| one.is_seen_alike(other)) {
                one.known = alike.known.clone();
            }
            measured.push(one);
        }
        measured
    }

    /// Whether vehicles make the same over it and another.
    fn is_seen_alike(&self, other: &Self) -> bool {
        let (ours, theirs) = (&self.own, &other.own);
        ours.coil.winding() == theirs.coil.winding()
            && ours.coil.cover == theirs.coil.cover
            && ours.lane == theirs.lane
            && self.figures.terminal_inductance == other.figures.terminal_inductance
            && self.known.figures.terminal_inductance == other.known.figures.terminal_inductance
    }

    /// What may still be computed of it.
    pub fn budget(&self) -> &WorkBudget {
        &self.known.budget
    }

    /// The same loop in another lane.
    #[must_use]
    pub fn in_lane(&self, lane: &Lane) -> Self {
        let own = Rc::new(ChannelLoop { lane: lane.clone(), ..(*self.own).clone() });
        Self { own, figures: self.figures, known: KnownSightings::of(&[], self.figures, self.budget()) }
    }

    /// The same loop on another lead-in.
    #[must_use]
    pub fn on_lead_in(&self, lead_in: &ResolvedLeadIn) -> Self {
        let own = ChannelLoop { lead_in: lead_in.clone(), ..(*self.own).clone() };
        Self { figures: own.measure(self.budget()), own: Rc::new(own), known: self.known.clone() }
    }

    /// Where it lies, when that is known.
    pub fn placed(&self) -> Option<PlacedCoil<'_>> {
        let position = self.own.position?;
        Some(PlacedCoil { coil: &self.own.coil, inductance: self.figures.loop_inductance, position })
    }

    /// What a vehicle makes at the end of its own lead-in.
    pub fn sight(&self, class: VehicleClass) -> ClassSighting {
        let mut weakest = self.known.weakest.borrow_mut();
        let weakest = weakest.entry(class).or_insert_with(|| self.row().weakest(class));
        let shared = weakest.iter().map(|weakest| weakest.diluted(self.share())).collect();
        ClassSighting { weakest: shared, ..self.sight_whole(class) }
    }

    /// The same where it is seen best, without the weakest, which takes long.
    pub fn sight_whole(&self, class: VehicleClass) -> ClassSighting {
        let mut whole = self.known.whole.borrow_mut();
        let sighting = whole.entry(class).or_insert_with(|| self.row().sight_whole(class));
        sighting.diluted(self.share())
    }

    /// Another lead-in changes only the inductance that a change is a share of.
    fn share(&self) -> Ratio {
        self.known.figures.terminal_inductance / self.figures.terminal_inductance
    }

    fn row(&self) -> LoopRow<'_> {
        let KnownSightings { figures, field, budget, .. } = &*self.known;
        let field = field.get_or_init(|| LoopField::new(&self.own.coil, figures, budget));
        LoopRow { field, lane: &self.own.lane }
    }
}

/// One input of the unit.
pub struct DetectorChannel {
    /// The loops on it.
    pub loops: Vec<MeasuredLoop>,
    /// How they are joined.
    pub wiring: Wiring,
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
}

impl DetectorChannel {
    /// Joins loops; each comes to the unit on its own lead-in, and coupling between them is left out.
    pub fn new(loops: Vec<MeasuredLoop>, wiring: Wiring) -> Self {
        let join = |of: fn(&ElectricalFigures) -> f64| {
            let values: Vec<_> = loops.iter().map(|one| of(&one.figures)).collect();
            match wiring {
                Wiring::Parallel => circuit::parallel(&values),
                Wiring::Separate | Wiring::Series => circuit::series(&values),
            }
        };
        let inductance = join(|figures| figures.terminal_inductance.get::<henry>());
        let dc_resistance = join(|figures| figures.dc_resistance.get::<ohm>());
        // Resistances are small against reactances, so alike branches share the current alike and join as inductances do.
        let ac_resistance = join(|figures| figures.ac_resistance.get::<ohm>());
        let frequency = MeasurementConditions::usual().frequency.get::<hertz>();
        Self {
            inductance: Inductance::new::<henry>(inductance),
            low: Inductance::new::<henry>(join(|figures| figures.as_built_low.get::<henry>())),
            high: Inductance::new::<henry>(join(|figures| figures.as_built_high.get::<henry>())),
            dc_resistance: ElectricalResistance::new::<ohm>(dc_resistance),
            quality_factor: circuit::quality_factor(inductance, frequency, ac_resistance),
            dc_quality_factor: circuit::quality_factor(inductance, frequency, dc_resistance),
            share: loops.iter().map(|one| one.figures.loop_share).fold(Ratio::new::<ratio>(1.0), Ratio::min),
            loops,
            wiring,
        }
    }

    /// The label of its loop, or of all.
    pub fn label(&self) -> String {
        self.loops.iter().map(|one| one.own.label.as_str()).collect::<Vec<_>>().join(" + ")
    }

    /// Whether any of its loops keeps a barrier from closing.
    pub fn holds_the_gate(&self) -> bool {
        self.loops.iter().any(|one| one.own.role.holds_the_gate())
    }

    /// The frequency that a unit of this tank capacitance runs at.
    pub fn frequency(inductance: Inductance, capacitance: uom::si::f64::Capacitance) -> Frequency {
        use uom::si::capacitance::farad;
        Frequency::new::<hertz>(circuit::resonance(inductance.get::<henry>(), capacitance.get::<farad>()))
    }

    /// What a vehicle makes at the terminals, over each loop in turn.
    pub fn sightings(&self, class: VehicleClass) -> Vec<ClassSighting> {
        self.weighted(|one| one.sight(class))
    }

    fn weighted(&self, sight: impl Fn(&MeasuredLoop) -> ClassSighting) -> Vec<ClassSighting> {
        let figures: Vec<_> = self.loops.iter().map(|one| one.figures).collect();
        let weights = channel_weights(&figures, self.wiring);
        self.loops.iter().zip(weights).map(|(one, weight)| sight(one).diluted(weight)).collect()
    }

    /// The change that a vehicle makes at its hardest place, over the loop where that is least.
    pub fn least_change(&self, class: VehicleClass) -> Ratio {
        self.weighted(|one| one.sight_whole(class))
            .iter()
            .map(|sighting| sighting.least)
            .reduce(Ratio::min)
            .unwrap_or_default()
    }

    /// The step to set: the one that the layout has decided, or the one that serves these vehicles.
    pub fn step(&self, detector: &ResolvedDetector, vehicles: &[VehicleClass]) -> Ratio {
        let decided = self.loops.iter().find_map(|one| one.own.step);
        decided.unwrap_or_else(|| self.serving_step(detector, vehicles))
    }

    /// The step that serves these vehicles.
    pub fn serving_step(&self, detector: &ResolvedDetector, vehicles: &[VehicleClass]) -> Ratio {
        let sightings: Vec<_> = vehicles.iter().flat_map(|class| self.sightings(*class)).collect();
        choose_step(&sightings, detector)
    }
}

/// What a channel leaves of a change at each of its loops, which measure so.
pub fn channel_weights(figures: &[ElectricalFigures], wiring: Wiring) -> Vec<Ratio> {
    let inductances: Vec<_> = figures.iter().map(|figures| figures.terminal_inductance.get::<henry>()).collect();
    let weights = match wiring {
        Wiring::Parallel => circuit::parallel_weights(&inductances),
        Wiring::Separate | Wiring::Series => circuit::series_weights(&inductances),
    };
    weights.into_iter().map(Ratio::new::<ratio>).collect()
}

/// One channel for each loop, or one for all.
pub fn join_channels(loops: Vec<MeasuredLoop>, wiring: Wiring) -> Vec<DetectorChannel> {
    match wiring {
        Wiring::Separate => loops.into_iter().map(|one| DetectorChannel::new(vec![one], wiring)).collect(),
        Wiring::Series | Wiring::Parallel if loops.is_empty() => Vec::new(),
        Wiring::Series | Wiring::Parallel => vec![DetectorChannel::new(loops, wiring)],
    }
}
