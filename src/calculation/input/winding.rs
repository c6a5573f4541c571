//! The loop and its wire.

use serde::{Deserialize, Serialize, Serializer};
use uom::si::area::square_meter;
use uom::si::f64::{Area, Length};
use uom::si::length::meter;
use utoipa::ToSchema;
use validator::Validate;

use super::{ConductorSize, CornerLeg, Cover, LoopLeg, OverInsulation, OverJacket, PourTemperature};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::physics::winding::{self, Winding};
use crate::practice::layout::two_wheeler_inset;
use crate::practice::site::Construction;
use crate::practice::sources::{Source, sourced_vocabulary};
use crate::practice::wires::{self, bare_diameter};
use crate::quantity::format::format_detail_length_input;
use crate::quantity::output::{DetailLength, PlanLength};
use crate::quantity::{QuantityField, UnitSystem};
use crate::vocabulary::Vocabulary;

sourced_vocabulary! {
    /// The shape of a loop.
    Shape {
        Rectangle "rectangle" "Rectangle" "One cell with four sides." [CommonPractice];
        Quadrupole "quadrupole" "Quadrupole" "Two cells side by side whose currents add in the centre slot: it sees two-wheelers at the centre and loses height." [CommonPractice];
    }
}

impl Shape {
    /// How many cells lie side by side; neighbours share a slot.
    pub fn cells(self) -> u32 {
        match self {
            Self::Rectangle => 1,
            Self::Quadrupole => 2,
        }
    }
}

/// The wire of a loop.
#[derive(Clone, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Wire {
    /// The conductor. Default 14 AWG.
    pub gauge: Option<ConductorSize>,
    /// The diameter over insulation, which is the pitch of stacked turns. Default 0.130 in for 14 AWG and 1.5 mm2, the same insulation on other sizes.
    pub over_insulation: Option<OverInsulation>,
    /// The diameter over the jacket that holds all turns of a preformed loop. Default: the turns lie one on the other, as single wires do.
    pub over_jacket: Option<OverJacket>,
    /// The highest temperature that insulation and jacket stand, for hot-applied sealant.
    pub insulation_rating: Option<PourTemperature>,
}

/// A loop as it is to be wound.
#[derive(Clone, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Loop {
    /// The shape. Default `rectangle`.
    pub shape: Option<Shape>,
    /// The leg in the direction of driving.
    pub along_travel: LoopLeg,
    /// The leg across the lane.
    pub across_lane: LoopLeg,
    /// How many times the wire goes round (round each cell of a quadrupole).
    #[validate(range(min = 1, max = 20))]
    #[schema(minimum = 1, maximum = 20)]
    pub turns: u32,
    /// The leg that a diagonal cut takes off each corner. Default 0: square corners.
    pub corner_cut: Option<CornerLeg>,
    /// The sealant over the top wire. Default 1 in.
    pub cover: Option<Cover>,
    /// The wire.
    #[validate(nested)]
    pub wire: Option<Wire>,
}

/// A wire as it was understood.
#[derive(Clone, Debug, Serialize, ToSchema)]
#[schema(as = WireEcho)]
pub struct ResolvedWire {
    /// The size as it was written.
    pub gauge: String,
    /// Diameter of the bare conductor (of a solid one with the same area).
    // Computed with its area, and reported by its diameter.
    #[serde(rename = "conductor_diameter", serialize_with = "write_diameter")]
    #[schema(value_type = DetailLength)]
    pub area: Area,
    /// Diameter over insulation.
    #[serde(serialize_with = "DetailLength::write")]
    #[schema(value_type = DetailLength)]
    pub over_insulation: Length,
    /// Diameter over the jacket of a preformed loop, when given.
    #[serde(skip)]
    pub over_jacket: Option<Length>,
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde hands over the field")]
fn write_diameter<S: Serializer>(area: &Area, serializer: S) -> Result<S::Ok, S::Error> {
    DetailLength(bare_diameter(*area)).serialize(serializer)
}

/// A loop as it was understood.
#[derive(Clone, Debug, Serialize, ToSchema)]
#[schema(as = LoopEcho)]
pub struct ResolvedLoop {
    /// The shape.
    #[schema(value_type = String)]
    pub shape: Shape,
    /// Leg in the direction of driving.
    #[serde(serialize_with = "PlanLength::write")]
    #[schema(value_type = PlanLength)]
    pub along_travel: Length,
    /// Leg across the lane.
    #[serde(serialize_with = "PlanLength::write")]
    #[schema(value_type = PlanLength)]
    pub across_lane: Length,
    /// Turns.
    pub turns: u32,
    /// Leg of the corner cuts.
    #[serde(serialize_with = "DetailLength::write")]
    #[schema(value_type = DetailLength)]
    pub corner_cut: Length,
    /// Sealant over the top wire.
    #[serde(serialize_with = "DetailLength::write")]
    #[schema(value_type = DetailLength)]
    pub cover: Length,
    /// The wire.
    pub wire: ResolvedWire,
    /// The system that the loop was written in.
    #[serde(skip)]
    pub system: UnitSystem,
}

/// The size of a conductor as text, its area and the system it is written in; the usual size where none was sent, for `reason`.
pub(super) fn resolve_gauge(
    sent: Option<&ConductorSize>,
    at: &FieldPath<'_>,
    reason: Statement,
    diagnostics: &mut Diagnostics,
) -> Option<(String, Area, UnitSystem)> {
    let at = at.field("gauge");
    if let Some(text) = sent {
        return diagnostics.parse(&at, text).map(|written| (written.text.to_owned(), written.si, written.system));
    }
    let area =
        diagnostics.parse_or_default::<ConductorSize>(&at, None, wires::USUAL_GAUGE, reason, Source::CommonPractice)?;
    Some((wires::USUAL_GAUGE.to_owned(), area, UnitSystem::UsCustomary))
}

impl Wire {
    /// Reads the wire, or takes the usual one. Jacket and rating are listed as unused; a calculation that uses them takes that back
    /// with [`Diagnostics::mark_used`].
    pub fn resolve(wire: Option<&Self>, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<ResolvedWire> {
        let gauge_sent = wire.and_then(|wire| wire.gauge.as_ref());
        let over_sent = wire.and_then(|wire| wire.over_insulation.as_ref());
        let over = over_sent.and_then(|over| over.read().ok()).map(|written| written.si);
        let usual = bare_diameter(wires::WireGauge::Awg14.area());
        let gauge = match over.filter(|over| gauge_sent.is_none() && *over <= usual) {
            Some(over) => gauge_within(over, at, diagnostics),
            None => resolve_gauge(gauge_sent, at, Statement::new("input-usual-loop-wire"), diagnostics),
        };
        let over_insulation = match over_sent {
            Some(over) => diagnostics.parse_optional(&at.field("over_insulation"), Some(over)),
            None => gauge.as_ref().map(|(_, area, system)| usual_over_insulation(*area, *system, at, diagnostics)),
        };
        let over_jacket =
            diagnostics.parse_optional(&at.field("over_jacket"), wire.and_then(|wire| wire.over_jacket.as_ref()));
        diagnostics
            .parse_optional(&at.field("insulation_rating"), wire.and_then(|wire| wire.insulation_rating.as_ref()));
        if let Some(wire) = wire {
            wire.mark_jacket_and_rating(at, diagnostics);
        }
        let (gauge, area, _) = gauge?;
        let wire = ResolvedWire { gauge, area, over_insulation: over_insulation?, over_jacket };
        if wire.over_insulation <= wire.diameter() {
            diagnostics.add_error(
                &at.field("over_insulation"),
                FieldErrorCode::Contradiction,
                Statement::new("errors-thin-insulation").text("gauge", wire.gauge.clone()),
                Statement::new("errors-thin-insulation-hint"),
            );
        }
        Some(wire)
    }

    /// Lists jacket and rating as unused where they were sent.
    pub fn mark_jacket_and_rating(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) {
        let sent =
            [("over_jacket", self.over_jacket.is_some()), ("insulation_rating", self.insulation_rating.is_some())];
        diagnostics.mark_unneeded(at, &sent);
    }
}

/// The gauge that a default gives way to where no more than this diameter was sent.
fn gauge_within(over: Length, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<(String, Area, UnitSystem)> {
    let (gauge, reason) = (wires::gauge_within(over), Statement::new("input-gauge-gives-way"));
    let at = at.field("gauge");
    let area = diagnostics.parse_or_default::<ConductorSize>(&at, None, gauge, reason, Source::OwnChoice)?;
    Some((gauge.to_owned(), area, UnitSystem::UsCustomary))
}

/// The usual diameter over insulation of a conductor, and says so.
fn usual_over_insulation(area: Area, system: UnitSystem, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Length {
    let at = at.field("over_insulation");
    let over = wires::usual_over_insulation(area, system);
    if over == wires::usual_over_insulation(wires::WireGauge::Awg14.area(), system) {
        let reason = Statement::new("input-usual-over-insulation");
        diagnostics.add_assumption(&at, wires::USUAL_OVER_INSULATION, reason, &[Source::CommonPractice]);
    } else {
        let (value, reason) = (format_detail_length_input(over, system), Statement::new("input-same-insulation"));
        diagnostics.add_assumption(&at, value, reason, &[Source::OwnChoice]);
    }
    over
}

impl ResolvedWire {
    /// The widest that lies across a slot: the wire, or the jacket of a preformed loop where it is known.
    pub fn widest(&self, construction: Construction) -> Length {
        self.jacket(construction).unwrap_or(self.over_insulation)
    }

    /// The diameter over the jacket, where the loop has one and it is known.
    pub fn jacket(&self, construction: Construction) -> Option<Length> {
        self.over_jacket.filter(|_| construction.is_preformed())
    }

    /// Lets what nobody sent give way to a jacket that is thinner than the usual wire. `false` where what was sent does not go in.
    pub fn fit_jacket(
        &mut self,
        sent: Option<&Wire>,
        at: &FieldPath<'_>,
        system: UnitSystem,
        diagnostics: &mut Diagnostics,
    ) -> bool {
        let Some(jacket) = self.over_jacket.filter(|jacket| *jacket < self.over_insulation) else { return true };
        let (has_gauge, has_over) =
            sent.map_or((false, false), |sent| (sent.gauge.is_some(), sent.over_insulation.is_some()));
        let is_thick = self.diameter() >= jacket;
        if has_over || has_gauge && is_thick {
            return false;
        }
        if is_thick {
            diagnostics.mark_unneeded(at, &[("gauge", false)]);
            if let Some((gauge, area, _)) = gauge_within(jacket, at, diagnostics) {
                (self.gauge, self.area) = (gauge, area);
            }
        }
        diagnostics.mark_unneeded(at, &[("over_insulation", false)]);
        let (value, reason) =
            (format_detail_length_input(jacket, system), Statement::new("input-insulation-gives-way"));
        diagnostics.add_assumption(&at.field("over_insulation"), value, reason, &[Source::OwnChoice]);
        self.over_insulation = jacket;
        true
    }

    /// Diameter of a solid conductor of this area.
    pub fn diameter(&self) -> Length {
        bare_diameter(self.area)
    }

    /// Conductor area in square metres, for the physics.
    pub fn area_m2(&self) -> f64 {
        self.area.get::<square_meter>()
    }
}

impl Loop {
    /// Reads the loop.
    pub fn resolve(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<ResolvedLoop> {
        let shape = diagnostics.value_or_default(
            &at.field("shape"),
            self.shape,
            (Shape::Rectangle, Shape::Rectangle.code()),
            Statement::new("input-usual-shape"),
            Source::CommonPractice,
        );
        let along_travel = diagnostics.parse(&at.field("along_travel"), &self.along_travel);
        let across_lane = diagnostics.parse(&at.field("across_lane"), &self.across_lane);
        let corner_cut = diagnostics.parse_or_default(
            &at.field("corner_cut"),
            self.corner_cut.as_ref(),
            "0 in",
            Statement::new("input-square-corners"),
            Source::OwnChoice,
        );
        let cover = diagnostics.parse_or_default(
            &at.field("cover"),
            self.cover.as_ref(),
            wires::USUAL_COVER,
            Statement::new("input-least-cover"),
            Source::Everett,
        );
        let wire = Wire::resolve(self.wire.as_ref(), &at.field("wire"), diagnostics);
        let (along, across) = (along_travel?, across_lane?);
        let resolved = ResolvedLoop {
            shape,
            system: along.system,
            along_travel: along.si,
            across_lane: across.si,
            turns: self.turns,
            corner_cut: corner_cut?,
            cover: cover?,
            wire: wire?,
        };
        if resolved.corner_cut > resolved.longest_corner_cut() {
            diagnostics.add_error(
                &at.field("corner_cut"),
                FieldErrorCode::Contradiction,
                Statement::new("errors-large-corner-cut"),
                Statement::new("errors-large-corner-cut-hint"),
            );
        }
        Some(resolved)
    }
}

impl ResolvedLoop {
    /// From the middle to the line on which two-wheelers are taken to ride: 0.3 m inside the side wire, where they are calibrated,
    /// or the centre slot of a quadrupole.
    pub fn riding_line(&self) -> Length {
        match self.shape {
            Shape::Rectangle => (self.across_lane / 2.0 - two_wheeler_inset()).max(Length::default()),
            Shape::Quadrupole => Length::default(),
        }
    }

    /// The height of its wires where most of them lie: one on the other, those of both cells in the centre slot of a quadrupole.
    pub fn stack(&self) -> Length {
        f64::from(self.shape.cells() * self.turns) * self.wire.over_insulation
    }

    /// The height of what lies in the slot: the wires one on the other, or the jackets of both cells in the centre slot of a quadrupole.
    pub fn height_in_slot(&self, construction: Construction) -> Length {
        self.wire.jacket(construction).map_or_else(|| self.stack(), |jacket| f64::from(self.shape.cells()) * jacket)
    }

    fn longest_corner_cut(&self) -> Length {
        0.45 * self.along_travel.min(self.across_lane / f64::from(self.shape.cells()))
    }

    /// How much work it is to compute what it measures, in steps of a budget: the mutual inductances of its sides, turn by turn. Measured.
    pub fn measure_steps(&self) -> u64 {
        let of_turn = match self.shape {
            Shape::Rectangle => 150,
            Shape::Quadrupole => 700,
        };
        of_turn * u64::from(self.turns)
    }

    /// The loop for the physics.
    pub fn winding(&self) -> Winding {
        Winding {
            shape: match self.shape {
                Shape::Rectangle => winding::WindingShape::Rectangle,
                Shape::Quadrupole => winding::WindingShape::Quadrupole,
            },
            along: self.along_travel.get::<meter>(),
            across: self.across_lane.get::<meter>(),
            corner_cut: self.corner_cut.get::<meter>(),
            turns: self.turns,
            pitch: self.wire.over_insulation.get::<meter>(),
            wire_radius: self.wire.diameter().get::<meter>() / 2.0,
        }
    }
}
