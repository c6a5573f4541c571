//! The loops of a plan: where each lies.

use crate::calculation::loop_sizing::SizedLoop;
use crate::practice::roles::Side;
use crate::quantity::output::PlanLength;

/// The loop, or row of loops, of a role.
pub struct PlacedLoop<'a> {
    /// What the report says of it.
    pub sized: &'a SizedLoop,
    /// The side of the line that it lies on.
    pub side: Side,
    /// From the line to the nearest wire.
    pub distance: PlanLength,
    /// Its end towards the outside, metres along.
    pub from: f64,
    /// Its end towards the inside.
    pub to: f64,
    /// The middle of each loop of the row, metres across, left to right.
    pub centres: Vec<f64>,
}

impl<'a> PlacedLoop<'a> {
    /// The loops of a report, which are in order from the inside outwards, down the canvas.
    pub fn all(loops: &'a [SizedLoop]) -> Vec<Self> {
        loops.iter().map(Self::new).collect()
    }

    fn new(sized: &'a SizedLoop) -> Self {
        let side = sized.side;
        let distance = distance(sized);
        let leg = sized.along_travel.m();
        let (from, to) = match side {
            Side::Outside => (-distance.m() - leg, -distance.m()),
            Side::Inside => (distance.m(), distance.m() + leg),
            Side::OnTheLine => (-leg / 2.0, leg / 2.0),
        };
        let row = sized.side_by_side.as_ref();
        let centres = row.map_or(vec![0.0], |row| row.centres.iter().map(|centre| centre.m()).collect());
        Self { sized, side, distance, from, to, centres }
    }

    /// The left and right edge of each loop, metres across.
    pub fn edges(&self) -> impl Iterator<Item = (f64, f64)> {
        let half = self.sized.across_lane.m() / 2.0;
        self.centres.iter().map(move |centre| (centre - half, centre + half))
    }
}

/// The distance from the barrier or the reference, whichever the report states.
fn distance(sized: &SizedLoop) -> PlanLength {
    sized.distance_from_barrier.or(sized.distance_from_reference).unwrap_or(PlanLength::zero())
}

/// Where a loop lies in relation to the line that its distance counts from. `beside` formats the distance of a loop that lies on
/// one side of the line; it takes the distance, the side and the name of the line.
pub fn format_position(sized: &SizedLoop, beside: impl FnOnce(PlanLength, Side, &str) -> String) -> String {
    let line = if sized.distance_from_reference.is_some() { "the reference line" } else { "the barrier" };
    match sized.side {
        Side::OnTheLine => format!("across {line}"),
        side @ (Side::Outside | Side::Inside) => beside(distance(sized), side, line),
    }
}
