//! The loops of a plan: where each lies.

use crate::calculation::loop_sizing::SizedLoop;
use crate::calculation::report::Statement;
use crate::practice::roles::Side;
use crate::quantity::output::PlanLength;
use crate::wording::Reader;

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
        let (leg, middle) = (sized.along_travel.m(), sized.position.along.m());
        let (from, to) = (middle - leg / 2.0, middle + leg / 2.0);
        let row = sized.side_by_side.as_ref();
        let centres =
            row.map_or(vec![sized.position.across.m()], |row| row.centres.iter().map(|centre| centre.m()).collect());
        Self { sized, side, distance, from, to, centres }
    }

    /// Whether it has a lead-in.
    pub fn has_pair(&self) -> bool {
        self.sized.lead_in.length.m() > 0.0
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

/// Where a loop lies in relation to the line that its distance counts from. `format` writes a length; a loop at the line itself is right
/// beside it where `names_zero`, else 0 from it.
pub fn format_position(
    sized: &SizedLoop,
    format: impl Fn(PlanLength) -> String,
    names_zero: bool,
    reader: Reader,
) -> String {
    let (line, is_lane) = match sized.distance_from_reference {
        Some(_) => ("reference", true),
        None => ("barrier", false),
    };
    let (along, across) = (sized.position.along.0, sized.position.across.0);
    let distance = distance(sized);
    let side = match sized.side {
        Side::OnTheLine if along.value == 0.0 => "across",
        Side::OnTheLine => "across_moved",
        Side::Outside if is_lane => "before",
        Side::Inside if is_lane => "past",
        Side::Outside => "outside",
        Side::Inside => "inside",
    };
    let gap = if names_zero && distance.m() == 0.0 { "none" } else { "some" };
    let offset_side = match across.value {
        0.0 => "none",
        value if value > 0.0 => "right",
        _ => "left",
    };
    let position = Statement::new("drawings-plan-position")
        .code("line", line)
        .code("side", side)
        .code("gap", gap)
        .text("distance", format(distance))
        .text("moved", format(along.abs().into()))
        .code("offset_side", offset_side)
        .text("offset", format(across.abs().into()));
    reader.say(&position).into_owned()
}
