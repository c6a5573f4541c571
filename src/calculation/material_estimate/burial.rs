//! How a buried loop lies: depth, bed, cover and ties.

use serde::Serialize;
use uom::si::f64::Length;
use uom::si::length::{inch, millimeter};
use utoipa::ToSchema;

use crate::calculation::input::ResolvedLoop;
use crate::calculation::report::{Message, Statement, has_messages};
use crate::practice::burial::{Burial, LoopBed};
use crate::practice::site::{Construction, Surface};
use crate::quantity::UnitSystem;
use crate::quantity::output::{DetailLength, PlanLength};

/// How a buried loop lies.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct LoopBurial {
    /// From the finished surface down to the loop.
    pub cover: DetailLength,
    /// What it lies on: `sand_in_trench`, `bedding_course`, `course_below` or `tied_in_form`.
    pub bed: &'static str,
    /// How thick the bed under it is; 0 where it lies on what is there.
    pub bed_under: DetailLength,
    /// How thick the same lies over it, within its cover.
    pub bed_over: DetailLength,
    /// How deep to dig from the finished surface: cover, loop and bed, rounded up to 1/2 in or 10 mm. Absent where nothing is dug.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub trench_depth: Option<DetailLength>,
    /// How wide to dig. Absent where nothing is dug.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub trench_width: Option<DetailLength>,
    /// From tie to tie. Absent where nothing is tied.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tie_spacing: Option<PlanLength>,
    /// How to lay it, in a sentence or two.
    #[schema(value_type = String)]
    pub message: Message,
}

has_messages! {
    LoopBurial: message;
}

/// How deep to dig for what must lie so deep: rounded up to what a spade does, 1/2 in or 10 mm. A choice made here.
fn trench_depth(needed: Length, system: UnitSystem) -> Length {
    let step = match system {
        UnitSystem::UsCustomary => Length::new::<inch>(0.5),
        UnitSystem::Metric => Length::new::<millimeter>(10.0),
    };
    let steps: f64 = (needed / step).into();
    (steps - 1e-6).ceil() * step
}

/// Such a depth as a tape shows it: `8-1/2 in`, `220 mm`.
fn format_spade_depth(depth: Length, system: UnitSystem) -> String {
    if system == UnitSystem::Metric {
        return format!("{} mm", depth.get::<millimeter>().round());
    }
    let halves = (2.0 * depth.get::<inch>()).round() as u64;
    let (whole, half) = (halves / 2, if halves % 2 == 1 { "-1/2" } else { "" });
    format!("{whole}{half} in")
}

/// How a loop under this cover is laid, in a sentence or two; `height` is that of its jacket.
pub fn describe_burial(surface: Surface, cover: Length, height: Length, system: UnitSystem) -> Statement {
    let burial = Burial::in_surface(surface);
    let under = burial.under.in_system(system);
    let statement = match burial.bed {
        LoopBed::SandInTrench => Statement::new("materials-burial-sand"),
        LoopBed::BeddingCourse => Statement::new("materials-burial-blocks"),
        LoopBed::CourseBelow => Statement::new("materials-burial-asphalt"),
        LoopBed::TiedInForm => Statement::new("materials-burial-concrete"),
    };
    let ties = burial.tie_spacing.map_or_else(Length::default, |spacing| spacing.in_system(system));
    statement
        .detail_length("cover", cover, system)
        .detail_length("bed_under", under, system)
        .detail_length("bed_over", burial.over.in_system(system), system)
        .text("trench_depth", format_spade_depth(trench_depth(cover + height + under, system), system))
        .length("tie_spacing", ties, system)
}

impl LoopBurial {
    /// How a loop lies under a cover; `None` where it lies in a slot.
    pub fn of(coil: &ResolvedLoop, construction: Construction, cover: Length, surface: Surface) -> Option<Self> {
        if construction.is_sawn() {
            return None;
        }
        let (burial, system) = (Burial::in_surface(surface), coil.system);
        let (under, height) = (burial.under.in_system(system), coil.height_in_slot(construction));
        Some(Self {
            cover: cover.into(),
            bed: burial.bed.code(),
            bed_under: under.into(),
            bed_over: burial.over.in_system(system).into(),
            trench_depth: burial.trench_width.map(|_| trench_depth(cover + height + under, system).into()),
            trench_width: burial.trench_width.map(|width| width.in_system(system).into()),
            tie_spacing: burial.tie_spacing.map(|spacing| spacing.in_system(system).into()),
            message: describe_burial(surface, cover, height, system).into(),
        })
    }
}
