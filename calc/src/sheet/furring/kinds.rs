//! Strips that are cut and marked alike: all of them in an even body, else by the width at their ribs.

use calc_derive::Outcome;

use super::{Fastened, Inputs, Job, mm};
use crate::carpentry::setting_out::{
    EqualSpacing, SettingOutError, marks_by_count, marks_by_spacing,
};
use crate::quantity::{Style, UnitSystem};
use crate::sheet::boards::letters;
use crate::sorting::sort_by;
use crate::text::text;
use crate::words::{Arg, Msg, furring as words};
use uom::si::length::millimeter;

/// Lengths that differ by less are cut alike. [mm]
const ALIKE_MM: f64 = 0.01;

/// Strips of one length.
#[derive(Outcome)]
pub(super) struct Kind {
    /// Its name in the outcome, the same in every language.
    pub(super) label: String,
    /// How long they are cut.
    pub(super) length_mm: f64,
    /// How many.
    pub(super) count: u32,
    /// The ribs they go to, counted from 1; empty where all strips are alike.
    pub(super) ribs: Vec<usize>,
    /// The screws, from the strip's left end.
    pub(super) screw_marks_mm: Vec<f64>,
    /// Which of the first rib's strips it is, counted from 1 at the left wall.
    #[outcome(skip)]
    part: usize,
    /// `A` among several kinds.
    #[outcome(skip)]
    pub(super) letter: Option<String>,
}

impl Kind {
    /// A stand-in for no strip at all.
    pub(super) const fn none() -> Self {
        Self {
            label: String::new(),
            length_mm: 0.0,
            count: 0,
            ribs: Vec::new(),
            screw_marks_mm: Vec::new(),
            part: 1,
            letter: None,
        }
    }

    /// `strip`, or `strip A` among several kinds.
    pub(super) fn name(&self) -> Msg {
        match &self.letter {
            Some(letter) => words::StripOf { letter: letter.as_str() }.into(),
            None => words::STRIP.into(),
        }
    }

    /// Which kind it is, whatever it is called: by the first of its ribs.
    pub(super) fn id(&self) -> String {
        match (self.ribs.first(), self.part) {
            (None, _) => "all".to_owned(),
            (Some(rib), 1) => text!("r{}", rib),
            (Some(rib), part) => text!("r{}.{}", rib, &part),
        }
    }

    /// Screws in one strip.
    pub(super) fn per_strip(&self) -> u32 {
        u32::try_from(self.screw_marks_mm.len()).unwrap_or(u32::MAX)
    }

    /// Screws in all strips of this kind.
    pub(super) fn screws(&self) -> u32 {
        self.per_strip().saturating_mul(self.count)
    }

    /// From screw to screw.
    pub(super) fn spacing(&self, job: &Job) -> EqualSpacing {
        EqualSpacing {
            length: mm(self.length_mm),
            end: job.inputs.end_distance,
            marks: self.per_strip(),
        }
    }

    /// `rib 3`, `ribs 1, 2 and 5`; nothing where all strips are alike.
    pub(super) fn places(&self) -> Option<Msg> {
        let ribs = Arg::each(self.ribs.iter().map(ToString::to_string));
        (!self.ribs.is_empty()).then(|| words::Ribs { count: self.ribs.len(), ribs }.into())
    }
}

/// The kinds of strip, the longest first, each with its marks.
pub(super) fn kinds(job: &Job) -> Result<Vec<Kind>, (&'static str, Msg)> {
    let mut kinds: Vec<Kind> = Vec::new();
    for span in &job.spans {
        let length_mm = job.strip_mm(span);
        let known = kinds.iter_mut().find(|kind| (kind.length_mm - length_mm).abs() < ALIKE_MM);
        if let Some(kind) = known {
            kind.count += 1;
            if kind.ribs.last() != Some(&span.rib) {
                kind.ribs.push(span.rib);
            }
        } else {
            let (ribs, part) = (vec![span.rib], span.part);
            kinds.push(Kind { length_mm, count: 1, ribs, part, ..Kind::none() });
        }
    }
    sort_by(&mut kinds, |a, b| b.length_mm.total_cmp(&a.length_mm));
    let single = kinds.len() == 1;
    let english = Style::new(UnitSystem::Metric).english();
    for (index, kind) in kinds.iter_mut().enumerate() {
        kind.screw_marks_mm = marks(job, kind.length_mm)?;
        if single {
            kind.ribs.clear();
        } else {
            kind.letter = Some(letters(index));
        }
        kind.label = english.say(kind.name());
    }
    Ok(kinds)
}

fn marks(job: &Job, strip_mm: f64) -> Result<Vec<f64>, (&'static str, Msg)> {
    let (first, last) = (job.end_mm(), strip_mm - job.end_mm());
    let (marks, field) = match job.inputs.fastened {
        Fastened::ScrewsPerStrip(count) => {
            (marks_by_count(first, last, count), Fastened::SCREWS_PER_STRIP)
        }
        Fastened::ScrewSpacingLimit(limit) => (
            marks_by_spacing(first, last, limit.get::<millimeter>()),
            Fastened::SCREW_SPACING_LIMIT,
        ),
    };
    marks.map_err(|error| match error {
        SettingOutError::Spacing { .. } | SettingOutError::Count { .. } => {
            (field.key, error.said())
        }
        _ => (Inputs::END_DISTANCE.key, error.said()),
    })
}
