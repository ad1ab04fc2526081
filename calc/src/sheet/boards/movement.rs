//! How boards grow and shrink across the grain, and whether their joints have room for it.

use crate::carpentry::moisture::{COEFFICIENT_RANGE, Species, least_gap_mm};
use crate::quantity::{Style, percent};
use crate::report::{Remark, Step};
use crate::text::text;

use super::mm;

/// The wood and the climates that it will see. [%]
pub(super) struct Movement {
    pub(super) species: &'static Species,
    pub(super) laid: f64,
    pub(super) driest: f64,
    pub(super) wettest: f64,
    /// Width over all of one board. [mm]
    pub(super) width_mm: f64,
    /// Tongue or lap; none where the width over all is not known. [mm]
    pub(super) lap_mm: Option<f64>,
    /// Left free between the faces of two boards. [mm]
    pub(super) gap_mm: f64,
}

impl Movement {
    /// Growth of one board from laid to wettest. [mm]
    pub(super) fn grows_mm(&self) -> f64 {
        least_gap_mm(self.width_mm, self.species.tangential, self.laid, self.wettest)
    }

    /// Shrinkage of one board from laid to driest. [mm]
    pub(super) fn shrinks_mm(&self) -> f64 {
        least_gap_mm(self.width_mm, self.species.tangential, self.driest, self.laid)
    }

    /// What is said where the coefficient does not hold as far as a climate.
    fn rough(&self, climate: f64) -> &'static str {
        let (low, high) = COEFFICIENT_RANGE;
        let held = [self.laid, climate].iter().all(|at| (low..=high).contains(at));
        if held { "" } else { " (outside 6 to 14 % a rough figure)" }
    }

    pub(super) fn remarks(&self, style: Style) -> Vec<Remark> {
        let small = |value: f64| style.small(mm(value));
        let (grows, shrinks) = (self.grows_mm(), self.shrinks_mm());
        let grown = text!(
            "From {} to {} moisture a flat-sawn board of {} grows {} wider{}",
            percent(self.laid),
            percent(self.wettest),
            &self.species.name,
            small(grows),
            self.rough(self.wettest)
        );
        let mut remarks = vec![if grows > self.gap_mm + 0.05 {
            Remark::warning(text!(
                "{}, and its joint leaves {}. Screwed through the face, boards cannot push to the side gaps: they buckle. Enter a joint gap of {} or more, or lay them when they are damper.",
                grown,
                small(self.gap_mm),
                small(grows)
            ))
        } else {
            Remark::good(text!("{}; the joint leaves {}.", grown, small(self.gap_mm)))
        }];
        let opens = self.gap_mm + shrinks;
        if let Some(lap) = self.lap_mm.filter(|lap| opens > *lap + 0.05) {
            remarks.push(Remark::warning(text!(
                "Dried to {} each joint opens to {}, more than the tongue or lap of {}: it will gape. Lay the boards drier.",
                percent(self.driest),
                small(opens),
                small(lap)
            )));
        } else if shrinks > 0.0 {
            remarks.push(Remark::note(text!(
                "Dried to {}, as in a closed body parked in the sun, each joint opens by {}{}, to {}: finish tongues and edges before the boards go up, so that no raw wood shows.",
                percent(self.driest),
                small(shrinks),
                self.rough(self.driest),
                small(opens)
            )));
        }
        remarks.push(Remark::note(
            "Let the boards lie stickered in the body for some days before they are cut and laid, and check one in the middle with a moisture meter.",
        ));
        remarks
    }

    pub(super) fn steps(&self, style: Style) -> Vec<Step> {
        let step = |name: &str, from: f64, to: f64, result: f64| {
            Step::new(
                name,
                "ΔD = D · C · (M₂ − M₁)",
                text!(
                    "{} · {} · ({} − {})",
                    style.mark(mm(self.width_mm)).text,
                    &self.species.tangential,
                    percent(to),
                    percent(from)
                ),
                style.small(mm(result)),
                self.species.source,
            )
        };
        vec![
            step("Swelling of one board", self.laid, self.wettest, self.grows_mm()),
            step("Shrinkage of one board", self.driest, self.laid, self.shrinks_mm()),
        ]
    }
}
