//! What vehicles make over a loop, or a row of loops: in the middle, and where they are hardest to see.

use uom::si::f64::{Length, Ratio};
use uom::si::length::millimeter;

use crate::calculation::vehicle_response::{LoopField, UnseenStrips, VehicleModel, WeakestChange, find_unseen_strips};
use crate::practice::detectors::MIN_TIMES_THRESHOLD;
use crate::practice::layout::LEAF_MARGIN;
use crate::practice::roles::Role;
use crate::practice::vehicles::VehicleClass;
use crate::quantity::UnitSystem;

/// The lane that a loop, or a row of loops, lies across.
#[derive(Clone, Debug, PartialEq)]
pub struct Lane {
    /// Its clear width.
    pub width: Length,
    /// The middles of the loops, left to right, as offsets from the middle of the lane; one for a single loop.
    pub centres: Vec<Length>,
    /// How near to the left and to the right edge a vehicle can come, where it must be seen there too; `None` where the middle is enough.
    pub edge_margins: Option<[Length; 2]>,
}

impl Lane {
    /// From the middle of the first loop of a row to that of its last; nothing for a single loop.
    pub fn row_width(&self) -> Length {
        let ends = self.centres.first().zip(self.centres.last());
        ends.map_or_else(Length::default, |(first, last)| (*last - *first).abs())
    }

    /// The lane of loops of a role. A vehicle that holds a gate may stand hard against either edge; beside an open swing leaf it keeps
    /// off it.
    pub fn of(role: Role, width: Length, centres: Vec<Length>, system: UnitSystem) -> Self {
        let margin = if role.lies_beside_open_leaf() { LEAF_MARGIN.in_system(system) } else { Length::default() };
        Self { width, centres, edge_margins: role.holds_the_gate().then_some([margin; 2]) }
    }

    /// The same lane where a single leaf stands open at its left edge only.
    #[must_use]
    pub fn beside_one_leaf(self) -> Self {
        Self { edge_margins: self.edge_margins.map(|[left, _]| [left, Length::default()]), ..self }
    }

    /// From the outermost wire of loops with this leg across to the nearer edge of the lane.
    pub fn edge_setback(&self, leg_across: Length) -> Length {
        self.width / 2.0 - leg_across / 2.0 - self.rightmost().max(-self.leftmost())
    }

    /// The middle of the row.
    pub fn middle(&self) -> Length {
        (self.leftmost() + self.rightmost()) / 2.0
    }

    fn leftmost(&self) -> Length {
        self.centres.first().copied().unwrap_or_default()
    }

    fn rightmost(&self) -> Length {
        self.centres.last().copied().unwrap_or_default()
    }

    /// Whether right and left of its middle are alike.
    pub fn is_symmetric(&self) -> bool {
        self.middle().abs() < Length::new::<millimeter>(0.01)
    }
}

/// One vehicle over the loops of one role.
#[derive(Clone, Debug)]
pub struct ClassSighting {
    /// The vehicle.
    pub class: VehicleClass,
    /// The peak change over the middle of a loop; of a two-wheeler, on its riding line.
    pub change: Ratio,
    /// The peak change at the hardest place: over the gaps of a row, and hard against either edge where the loop holds a gate. The same
    /// as `change` for two-wheelers.
    pub least: Ratio,
    /// What is left until the vehicle's tail reaches the loop, at each place where it may stand; nothing for two-wheelers, and for a vehicle
    /// that lies wholly over the loop by then.
    pub weakest: Vec<WeakestChange>,
}

impl ClassSighting {
    /// Whether a unit that switches at `step` lets go somewhere before the vehicle's tail has reached the loop. Where its first part is not
    /// seen it does not drop out: it is not seen, which is graver.
    pub fn drops_out(&self, step: Ratio) -> bool {
        self.weakest.iter().any(|weakest| weakest.drops_out(step))
    }

    /// Whether the change serves a design: twice the step over the middle of a loop, and the step at the hardest place. A loop does not
    /// grow for the margin at the edge, which is said as a thin one: a choice made here, for longer loops see the next lane too.
    pub fn serves(&self, step: Ratio) -> bool {
        self.change >= MIN_TIMES_THRESHOLD * step && self.least >= step
    }

    /// The same vehicle where only a share of each change reaches the unit.
    #[must_use]
    pub fn diluted(&self, share: Ratio) -> Self {
        Self {
            class: self.class,
            change: share * self.change,
            least: share * self.least,
            weakest: self.weakest.iter().map(|weakest| weakest.diluted(share)).collect(),
        }
    }
}

/// Loops in a row across the lane, alike and each on its own channel: the unit's outputs are paralleled, so the best counts.
pub struct LoopRow<'a> {
    /// The field of each.
    pub field: &'a LoopField,
    /// The lane, and where they lie across it.
    pub lane: &'a Lane,
}

impl LoopRow<'_> {
    /// What a vehicle makes, all of it.
    pub fn sight(&self, class: VehicleClass) -> ClassSighting {
        ClassSighting { weakest: self.weakest(class), ..self.sight_whole(class) }
    }

    /// What a vehicle makes where it is seen best, without the weakest: a search needs no more of most candidates, and gaps take long.
    pub fn sight_whole(&self, class: VehicleClass) -> ClassSighting {
        let model = VehicleModel::of_class(class);
        let (change, least) = if class.is_two_wheeler() {
            let change = self.best(model, self.lane.rightmost() + self.field.riding_line);
            (change, change)
        } else {
            let change = self.best(model, self.middlemost());
            let elsewhere = self.critical_offsets(model).map(|offset| self.best(model, offset));
            (change, elsewhere.fold(change, Ratio::min))
        };
        ClassSighting { class, change, least, weakest: Vec::new() }
    }

    /// What is left until the vehicle's tail reaches the loops, as [`ClassSighting::weakest`] has it.
    pub fn weakest(&self, class: VehicleClass) -> Vec<WeakestChange> {
        let model = VehicleModel::of_class(class);
        let offsets = self.critical_offsets(model).chain([self.middlemost()]);
        offsets.filter_map(|offset| self.field.weakest_until_tail(model, self.offset_to_nearest(offset))).collect()
    }

    /// Where across the lane a two-wheeler is not seen by units that switch at `step`.
    pub fn unseen(&self, class: VehicleClass, step: Ratio) -> Option<UnseenStrips> {
        let model = VehicleModel::of_class(class);
        class.is_two_wheeler().then(|| find_unseen_strips(self.field, &self.lane.centres, model, self.lane.width, step))
    }

    /// The best of the row for a vehicle whose middle is `offset` from the lane's, standing over the middle of the loops.
    fn best(&self, model: &VehicleModel, offset: Length) -> Ratio {
        self.change_at(model, self.field.centred(model), offset)
    }

    /// The best of the row for a vehicle whose front is `front` past the leading edge and whose middle is `offset` from the lane's.
    pub(super) fn change_at(&self, model: &VehicleModel, front: Length, offset: Length) -> Ratio {
        self.field.change(model, front, self.offset_to_nearest(offset))
    }

    /// The offset from the middle of the nearest loop, which is the one that sees most.
    fn offset_to_nearest(&self, offset: Length) -> Length {
        let apart = self.lane.centres.iter().map(|centre| offset - *centre);
        apart.min_by(|a, b| a.abs().value.total_cmp(&b.abs().value)).unwrap_or(offset)
    }

    /// Where a vehicle is hardest to see: over each gap of the row, and as near to the edge as it comes for a loop that holds a gate. Of
    /// a row in the middle of the lane one side is enough.
    fn critical_offsets<'a>(&'a self, model: &VehicleModel) -> impl Iterator<Item = Length> + 'a {
        let to_edge = |margin: Length| ((self.lane.width - model.width) / 2.0 - margin).max(Length::default());
        let edge = to_edge(Length::default());
        let gaps = self.lane.centres.windows(2).map(|pair| (pair[0] + pair[1]) / 2.0);
        let of_sides = |[left, right]: [Length; 2]| {
            let is_alike = self.lane.is_symmetric() && left == right;
            [Some(to_edge(right)), (!is_alike).then(|| -to_edge(left))]
        };
        let edges = self.lane.edge_margins.map(of_sides).into_iter().flatten();
        gaps.filter(move |gap| gap.abs() < edge).chain(edges.flatten())
    }

    /// Where across the lane a vehicle that must be seen may stand: in the middle and at its hardest places; a two-wheeler on its line.
    pub(super) fn standing_offsets(&self, class: VehicleClass, model: &VehicleModel) -> Vec<Length> {
        if class.is_two_wheeler() {
            return vec![self.lane.rightmost() + self.field.riding_line];
        }
        self.critical_offsets(model).chain([self.middlemost()]).collect()
    }

    /// The middle of the loop nearest to the lane's, on the right where two are.
    fn middlemost(&self) -> Length {
        self.lane.centres.get(self.lane.centres.len() / 2).copied().unwrap_or_default()
    }
}
