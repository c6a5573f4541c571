//! The backer rod: how much of it, and the room that it takes.

use std::f64::consts::FRAC_PI_4;

use uom::si::f64::{Area, Length};

use super::request::BackerRod;
use crate::calculation::report::{Diagnostics, FieldPath};
use crate::practice::materials::{RodForm, USUAL_ROD_PIECE, USUAL_ROD_SPACING, rod_excess};
use crate::practice::site::Construction;
use crate::practice::sources::Source;
use crate::vocabulary::Vocabulary;

/// How single wire is held down.
#[derive(Clone)]
pub struct Rod {
    /// In pieces, continuous or none.
    pub form: RodForm,
    /// Length of a piece.
    pub piece: Length,
    /// From piece to piece.
    pub spacing: Length,
    /// Diameter before it is pressed into the slot, when given.
    pub diameter: Option<Length>,
}

impl Rod {
    /// Reads what was sent, and takes the usual for the rest.
    pub fn read(sent: Option<&BackerRod>, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<Self> {
        let form = diagnostics.value_or_default(
            &at.field("form"),
            sent.map(|rod| rod.form),
            (RodForm::Pieces, RodForm::Pieces.code()),
            "Short pieces hold single wire down and let sealant round it; a jacketed loop gets none.",
            Source::CommonPractice,
        );
        let piece_sent = sent.and_then(|rod| rod.piece_length.as_ref());
        let spacing_sent = sent.and_then(|rod| rod.spacing.as_ref());
        let reason = "What one agency asks for.";
        let piece = diagnostics.parse_or_default(
            &at.field("piece_length"),
            piece_sent,
            USUAL_ROD_PIECE,
            reason,
            Source::Everett,
        );
        let spacing = diagnostics.parse_or_default(
            &at.field("spacing"),
            spacing_sent,
            USUAL_ROD_SPACING,
            reason,
            Source::Everett,
        );
        let diameter = sent.and_then(|rod| rod.diameter.as_ref());
        let diameter = diameter.map(|text| diagnostics.parse(&at.field("diameter"), text));
        if form != RodForm::Pieces {
            diagnostics
                .mark_unneeded(at, &[("piece_length", piece_sent.is_some()), ("spacing", spacing_sent.is_some())]);
        }
        if form == RodForm::None {
            diagnostics.mark_unneeded(at, &[("diameter", diameter.is_some())]);
        }
        Some(Self {
            form,
            piece: piece?,
            spacing: spacing?,
            diameter: diameter.map_or(Some(None), |read| read.map(|read| Some(read.si)))?,
        })
    }

    /// The form that a construction gets: a jacketed loop needs none.
    pub fn form_for(&self, construction: Construction) -> RodForm {
        if construction == Construction::HandWound { self.form } else { RodForm::None }
    }

    /// The diameter for a slot: the given one, or one that sits snug.
    pub fn diameter_for(&self, width: Length) -> Length {
        self.diameter.unwrap_or(width + rod_excess())
    }

    /// The area that it takes of a slot's section. Pressed into a narrower slot it keeps its area and grows in height.
    pub fn area_in(&self, width: Length) -> Area {
        let diameter = self.diameter_for(width);
        FRAC_PI_4 * diameter * diameter
    }

    /// The height that it takes of a slot.
    pub fn height_in(&self, width: Length) -> Length {
        let diameter = self.diameter_for(width);
        if diameter <= width { diameter } else { self.area_in(width) / width }
    }

    /// The rod for a path of wire with so many bends.
    pub fn length_for(&self, form: RodForm, path: Length, bends: u32) -> Length {
        match form {
            RodForm::None => Length::default(),
            RodForm::Continuous => path,
            RodForm::Pieces => {
                let steps: f64 = (path / self.spacing).into();
                let pieces = (steps - 1e-9).ceil().max(0.0) + f64::from(bends);
                // Where pieces would touch they are one length.
                (pieces * self.piece).min(path)
            }
        }
    }
}
