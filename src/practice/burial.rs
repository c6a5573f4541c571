//! How a direct-burial loop lies: on what, under what, and what holds it there. Depths are those of [`Surface::burial_cover`].

use uom::si::f64::Length;

use super::layout::NominalLength;
use super::site::Surface;
use crate::quantity::{UnitSystem, dimension, parse};

/// From the highest steel up to the top of a loop that lies over it: the loop and 1/2 in of concrete. A choice made here.
const LOOP_OVER_STEEL: NominalLength = NominalLength::new(1.0 / 12.0, 0.025);
/// The least concrete over a loop. A choice made here.
const LEAST_CONCRETE: NominalLength = NominalLength::new(0.75 / 12.0, 0.02);

/// How deep a loop lies where nobody says it: as the surface has it, and in concrete over the steel, where its depth is known.
pub fn usual_cover(surface: Surface, steel: Option<Length>, system: UnitSystem) -> Length {
    let usual = parse::<dimension::Length>(surface.burial_cover()).map_or_else(|_| Length::default(), |usual| usual.si);
    let over_steel = steel.filter(|_| Burial::in_surface(surface).bed == LoopBed::TiedInForm);
    let over_steel = over_steel.map(|steel| steel - LOOP_OVER_STEEL.in_system(system));
    over_steel.map_or(usual, |most| usual.min(most).max(LEAST_CONCRETE.in_system(system)))
}

/// What a loop lies on before it is covered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LoopBed {
    /// Sand in a trench.
    SandInTrench,
    /// The bedding course of the blocks.
    BeddingCourse,
    /// The compacted course below the final lift.
    CourseBelow,
    /// Steel or chairs in the form.
    TiedInForm,
}

impl LoopBed {
    /// The value in reports.
    pub fn code(self) -> &'static str {
        match self {
            Self::SandInTrench => "sand_in_trench",
            Self::BeddingCourse => "bedding_course",
            Self::CourseBelow => "course_below",
            Self::TiedInForm => "tied_in_form",
        }
    }
}

/// The bed of a surface. Common practice; its figures are choices made here.
#[derive(Clone, Copy, Debug)]
pub struct Burial {
    /// What the loop lies on.
    pub bed: LoopBed,
    /// How thick the bed under it is.
    pub under: NominalLength,
    /// How thick the same lies over it.
    pub over: NominalLength,
    /// The width of the trench; `None` where there is none.
    pub trench_width: Option<NominalLength>,
    /// From tie to tie; `None` where nothing is tied.
    pub tie_spacing: Option<NominalLength>,
}

impl Burial {
    /// The bed in a surface: 2 in / 50 mm of sand under and over in a trench of 6 in / 150 mm; 1 in / 25 mm of the bedding course under blocks;
    /// fixed every 2 ft / 0.6 m on the course below asphalt, and tied as often in the form of concrete.
    pub fn in_surface(surface: Surface) -> Self {
        const NONE: NominalLength = NominalLength::new(0.0, 0.0);
        const TIES: NominalLength = NominalLength::new(2.0, 0.6);
        match surface {
            Surface::Gravel | Surface::Soil => Self {
                bed: LoopBed::SandInTrench,
                under: NominalLength::new(2.0 / 12.0, 0.05),
                over: NominalLength::new(2.0 / 12.0, 0.05),
                trench_width: Some(NominalLength::new(0.5, 0.15)),
                tie_spacing: None,
            },
            Surface::Pavers => Self {
                bed: LoopBed::BeddingCourse,
                under: NominalLength::new(1.0 / 12.0, 0.025),
                over: NONE,
                trench_width: None,
                tie_spacing: None,
            },
            Surface::ExistingAsphalt | Surface::NewAsphalt => {
                Self { bed: LoopBed::CourseBelow, under: NONE, over: NONE, trench_width: None, tie_spacing: Some(TIES) }
            }
            Surface::ExistingConcrete | Surface::NewConcrete => {
                Self { bed: LoopBed::TiedInForm, under: NONE, over: NONE, trench_width: None, tie_spacing: Some(TIES) }
            }
        }
    }
}
