//! Strips that are cut and marked alike: all of them in an even body, else by the width at their ribs.

use crate::sorting::sort_by;
use crate::text::text;

use super::Inputs;
use crate::carpentry::setting_out::{SettingOutError, marks_by_count, marks_by_spacing};
use crate::fault::Fault;
use crate::outcome::Record;
use crate::sheet::boards::letters;

/// Lengths that differ by less are cut alike. [mm]
const ALIKE_MM: f64 = 0.01;

/// Strips of one length.
pub(super) struct Kind {
    /// `strip`, or `strip A` among several kinds.
    pub(super) name: String,
    /// How long they are cut. [mm]
    pub(super) length_mm: f64,
    /// How many.
    pub(super) count: u32,
    /// The ribs they go to, counted from 1; empty where all strips are alike.
    pub(super) ribs: Vec<usize>,
    /// Which of the first rib's strips it is, counted from 1 at the left wall.
    part: usize,
    /// The screws, from the strip's left end. [mm]
    pub(super) marks_mm: Vec<f64>,
}

impl Kind {
    /// A stand-in for no strip at all.
    pub(super) const fn none() -> Self {
        Self {
            name: String::new(),
            length_mm: 0.0,
            count: 0,
            ribs: Vec::new(),
            part: 1,
            marks_mm: Vec::new(),
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

    /// Screws in all strips of this kind.
    pub(super) fn screws(&self) -> u32 {
        u32::try_from(self.marks_mm.len()).unwrap_or(u32::MAX).saturating_mul(self.count)
    }

    /// From screw to screw. [mm]
    pub(super) fn spacing_mm(&self) -> f64 {
        match self.marks_mm.as_slice() {
            [first, second, ..] => second - first,
            _ => 0.0,
        }
    }

    /// `rib 3`, `ribs 1, 2, 5`; empty where all strips are alike.
    pub(super) fn places(&self) -> String {
        let ribs: Vec<String> = self.ribs.iter().map(usize::to_string).collect();
        match self.ribs.len() {
            0 => String::new(),
            1 => text!("rib {}", ribs.join("")),
            _ => text!("ribs {}", ribs.join(", ")),
        }
    }

    pub(super) fn record(&self) -> Record {
        Record::new()
            .with("label", self.name.as_str())
            .with("length_mm", self.length_mm)
            .with("count", self.count)
            .with("ribs", self.ribs.clone())
            .with("screw_marks_mm", self.marks_mm.clone())
    }
}

/// The kinds of strip, the longest first, each with its marks.
pub(super) fn kinds(inputs: &Inputs) -> Result<Vec<Kind>, Vec<Fault>> {
    let mut kinds: Vec<Kind> = Vec::new();
    for span in &inputs.spans {
        let length_mm = inputs.strip_mm(span.length_mm);
        let known = kinds.iter_mut().find(|kind| (kind.length_mm - length_mm).abs() < ALIKE_MM);
        if let Some(kind) = known {
            kind.count += 1;
            if kind.ribs.last() != Some(&span.rib) {
                kind.ribs.push(span.rib);
            }
        } else {
            kinds.push(Kind {
                length_mm,
                count: 1,
                ribs: vec![span.rib],
                part: span.part,
                ..Kind::none()
            });
        }
    }
    sort_by(&mut kinds, |a, b| b.length_mm.total_cmp(&a.length_mm));
    let single = kinds.len() == 1;
    for (index, kind) in kinds.iter_mut().enumerate() {
        kind.marks_mm = marks(inputs, kind.length_mm)?;
        if single {
            kind.name.push_str("strip");
            kind.ribs.clear();
        } else {
            kind.name = text!("strip {}", letters(index));
        }
    }
    Ok(kinds)
}

fn marks(inputs: &Inputs, strip_mm: f64) -> Result<Vec<f64>, Vec<Fault>> {
    let (first, last) = (inputs.end_distance_mm, strip_mm - inputs.end_distance_mm);
    let marks = match inputs.per_strip {
        Some(count) => marks_by_count(first, last, count),
        None => marks_by_spacing(first, last, inputs.limit_mm),
    };
    marks.map_err(|error| {
        let field = match error {
            SettingOutError::Count { .. } if inputs.per_strip.is_some() => "screws_per_strip",
            SettingOutError::Spacing { .. } | SettingOutError::Count { .. } => {
                "screw_spacing_limit"
            }
            _ => "end_distance",
        };
        vec![Fault::new(field, error.to_string())]
    })
}
