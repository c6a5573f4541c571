//! Whether sealant can flow round what lies in a slot.

use uom::si::f64::Length;
use uom::si::ratio::ratio;

use super::cut::{Cut, Place};
use super::job::{Job, LoopJob};
use super::report::SlotFit;
use crate::practice::materials::{best_width, generous_clearance};
use crate::practice::wires::least_clearance;
use crate::quantity::UnitSystem;
use crate::quantity::format::format_detail_length;
use crate::quantity::output::round;

/// How a slot suits what lies in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// It does not go in.
    DoesNotGoIn,
    /// Sealant cannot flow round it.
    TooNarrow,
    /// It can, and no more is cut than needed.
    Right,
    /// It can, and takes more sealant than needed.
    Generous,
}

impl Verdict {
    /// The value in reports.
    pub fn code(self) -> &'static str {
        match self {
            Self::DoesNotGoIn | Self::TooNarrow => "too_narrow",
            Self::Right => "right",
            Self::Generous => "generous",
        }
    }
}

/// A slot and what lies in it.
pub struct Fit {
    /// Which slot.
    pub place: Place,
    /// The verdict.
    pub verdict: Verdict,
    /// Width of the slot.
    pub width: Length,
    /// The widest that lies in it.
    pub widest: Length,
    /// What to do about it.
    pub advice: String,
}

impl Fit {
    /// Judges the slot of a loop, or that of its lead-in.
    pub fn of(cut: &Cut, system: UnitSystem, job: &Job) -> Self {
        let (verdict, advice) = judge(cut, system, job);
        Self { place: cut.place, verdict, width: cut.width, widest: cut.widest, advice }
    }

    /// The row of the report.
    pub fn shown(&self, one: &LoopJob) -> SlotFit {
        SlotFit {
            label: one.label.clone(),
            place: self.place.code(),
            verdict: self.verdict.code(),
            width: self.width.into(),
            widest: self.widest.into(),
            clearance: (self.width - self.widest).into(),
            advice: self.advice.clone(),
        }
    }
}

fn judge(cut: &Cut, system: UnitSystem, job: &Job) -> (Verdict, String) {
    let (width, widest) = (cut.width, cut.widest);
    let clearance = width - widest;
    // A hair, so that a clearance that is exactly the limit does not depend on binary fractions.
    let hair = 1e-9 * width;
    let advised = best_width(widest, system).max(job.agency_width());
    let wide = format_detail_length(advised, system);
    if cut.stiffest > width + hair {
        let advice = format!("{} does not go in. Cut it {wide} wide.", format_detail_length(cut.stiffest, system));
        return (Verdict::DoesNotGoIn, advice);
    }
    if let Some((agency, least)) = job.agency.as_ref().filter(|(_, least)| *least - hair > width) {
        let asked = format_detail_length(*least, system);
        return (Verdict::TooNarrow, format!("{agency} asks for {asked} at the least. Cut it {wide} wide."));
    }
    if clearance < least_clearance() - hair {
        let advice = format!(
            "Sealant cannot flow round {}: air pockets, then false calls, water and frost heave. Cut it {wide} wide.",
            format_detail_length(widest, system),
        );
        return (Verdict::TooNarrow, advice);
    }
    if clearance <= generous_clearance() + hair || advised >= width - hair {
        return (Verdict::Right, "Room for sealant all round, and no more.".to_owned());
    }
    let share = (width / advised).get::<ratio>() - 1.0;
    let advice = format!("It works and takes {} more slot, and so sealant, than {wide} would.", share_in_words(share));
    (Verdict::Generous, advice)
}

fn share_in_words(share: f64) -> String {
    match share {
        share if (share - 1.0 / 3.0).abs() < 1e-6 => "one third".to_owned(),
        share if (share - 0.5).abs() < 1e-6 => "one half".to_owned(),
        share => format!("{} %", round(100.0 * share, 0)),
    }
}
