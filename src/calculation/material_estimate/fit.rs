//! Whether sealant can flow round what lies in a slot.

use uom::si::f64::Length;
use uom::si::ratio::ratio;

use super::job::{Job, LoopJob};
use super::report::SlotFit;
use super::trench::{Trench, widest, widest_of_pair};
use crate::practice::materials::{blade_widths, generous_clearance};
use crate::practice::wires::least_clearance;
use crate::quantity::System;
use crate::quantity::shown::{round, say_small};

/// How a slot suits what lies in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
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
            Self::TooNarrow => "too_narrow",
            Self::Right => "right",
            Self::Generous => "generous",
        }
    }
}

/// A slot and what lies in it.
pub struct Fit {
    /// `loop` or `lead_in`.
    pub place: &'static str,
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
    /// The row of the report.
    pub fn shown(&self, one: &LoopJob) -> SlotFit {
        SlotFit {
            label: one.label.clone(),
            place: self.place,
            verdict: self.verdict.code(),
            width: self.width.into(),
            widest: self.widest.into(),
            clearance: (self.width - self.widest).into(),
            advice: self.advice.clone(),
        }
    }
}

/// Judges the slot of a loop, and that of its lead-in.
pub fn judge(one: &LoopJob, trench: &Trench, job: &Job) -> Vec<Fit> {
    let system = one.coil.system;
    let mut fits = vec![fit("loop", trench.width, widest(&one.coil, one.construction), system, job)];
    if let Some(cut) = &trench.lead_in {
        fits.push(fit("lead_in", cut.width, widest_of_pair(&one.coil, one.construction), system, job));
    }
    fits
}

fn fit(place: &'static str, width: Length, widest: Length, system: System, job: &Job) -> Fit {
    let clearance = width - widest;
    // A hair, so that a clearance that is exactly the limit does not depend on binary fractions.
    let hair = 1e-9 * width;
    let best = best_width(widest, system);
    let least = job.agency.as_ref().filter(|(_, least)| *least - hair > width);
    let (verdict, advice) = if let Some((agency, least)) = least {
        let asked = say_small(*least, system);
        (Verdict::TooNarrow, format!("{agency} asks for {asked} at the least: cut it that wide."))
    } else if clearance < least_clearance() - hair {
        let advice = format!(
            "Sealant cannot flow round {}: air pockets, then false calls, water and frost heave. Cut it {} wide.",
            say_small(widest, system),
            say_small(best.max(agency_width(job)), system)
        );
        (Verdict::TooNarrow, advice)
    } else if clearance <= generous_clearance() + hair || agency_width(job) >= width - hair {
        (Verdict::Right, "Room for sealant all round, and no more.".to_owned())
    } else {
        let share = (width / best).get::<ratio>() - 1.0;
        let advice = format!(
            "It works and takes {} more slot, and so sealant, than {} would.",
            share_in_words(share),
            say_small(best, system)
        );
        (Verdict::Generous, advice)
    };
    Fit { place, verdict, width, widest, advice }
}

/// The narrowest width of blade that leaves room enough.
fn best_width(widest: Length, system: System) -> Length {
    let needed = widest + least_clearance();
    blade_widths(system).into_iter().find(|blade| *blade >= needed * 0.999_999).unwrap_or(needed)
}

fn agency_width(job: &Job) -> Length {
    job.agency.as_ref().map_or_else(Length::default, |(_, least)| *least)
}

fn share_in_words(share: f64) -> String {
    match share {
        share if (share - 1.0 / 3.0).abs() < 1e-6 => "one third".to_owned(),
        share if (share - 0.5).abs() < 1e-6 => "one half".to_owned(),
        share => format!("{} %", round(100.0 * share, 0)),
    }
}
