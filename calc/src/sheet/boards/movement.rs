//! How boards grow and shrink across the grain, and whether their joints have room for it.

use uom::si::length::millimeter;

use crate::carpentry::moisture::{COEFFICIENT_RANGE, Species, Swelling};
use crate::formula::{Formula as _, step};
use crate::quantity::{Length, Style};
use crate::report::{Remark, Step};
use crate::words::{Arg, Msg, boards as words};

use super::mm;

/// The wood and the climates that it will see. [%]
pub(super) struct Movement {
    pub(super) species: &'static Species,
    pub(super) laid: f64,
    pub(super) driest: f64,
    pub(super) wettest: f64,
    /// Width over all of one board.
    pub(super) width: Length,
    /// Tongue or lap; none where the width over all is not known.
    pub(super) lap: Option<Length>,
    /// Left free between the faces of two boards.
    pub(super) gap: Length,
}

/// A joint that is short by less is not. [mm]
const SLACK_MM: f64 = 0.05;

impl Movement {
    fn change(&self, from_percent: f64, to_percent: f64) -> Swelling {
        let (width, coefficient) = (self.width, self.species.tangential);
        Swelling { width, coefficient, from_percent, to_percent }
    }

    /// Growth of one board from laid to wettest.
    pub(super) fn grows(&self) -> Swelling {
        self.change(self.laid, self.wettest)
    }

    /// Shrinkage of one board from laid to driest.
    pub(super) fn shrinks(&self) -> Swelling {
        self.change(self.driest, self.laid)
    }

    /// A change, with what is said where the coefficient does not hold as far as a climate.
    fn figure(&self, change: Length, climate: f64) -> Arg {
        let (low, high) = COEFFICIENT_RANGE;
        let length = Arg::small(change);
        if [self.laid, climate].iter().all(|at| (low..=high).contains(at)) {
            length
        } else {
            Msg::from(words::Rough { length }).into()
        }
    }

    pub(super) fn remarks(&self, style: Style) -> Vec<Remark> {
        let slack = mm(SLACK_MM);
        let (grows, shrinks) = (self.grows().value(), self.shrinks().value());
        let [laid, driest, wettest] = [self.laid, self.driest, self.wettest].map(Arg::percent);
        let wood = self.species.said;
        let (growth, gap) = (self.figure(grows, self.wettest), Arg::small(self.gap));
        let mut remarks = vec![if grows > self.gap + slack {
            let least = Arg::small(grows);
            let said: Msg = if self.gap > slack {
                words::SwellBuckles { laid, wettest, wood, growth, gap, least }.into()
            } else {
                words::SwellBucklesTight { laid, wettest, wood, growth, least }.into()
            };
            Remark::warning(style.say(said))
        } else {
            Remark::good(style.say(words::SwellFits { laid, wettest, wood, growth, gap }))
        }];
        let opens = self.gap + shrinks;
        let open = Arg::small(opens);
        if let Some(lap) = self.lap.filter(|lap| opens > *lap + slack) {
            let lap = Arg::small(lap);
            remarks.push(Remark::warning(style.say(words::Gapes { driest, open, lap })));
        } else if shrinks.get::<millimeter>() > 0.0 {
            let shrinkage = self.figure(shrinks, self.driest);
            remarks.push(Remark::note(style.say(words::Opens { driest, shrinkage, open })));
        }
        remarks.push(Remark::note(style.say(words::ACCLIMATE)));
        remarks
    }

    pub(super) fn steps(&self, style: Style) -> Vec<Step> {
        let (swells, shrinks) = (self.grows(), self.shrinks());
        let steps =
            [step(words::STEP_SWELLS, &swells, style), step(words::STEP_SHRINKS, &shrinks, style)];
        // The coefficient is of the species, and so is where it was read.
        steps.map(|step| Step { source: self.species.source, ..step }).into()
    }
}
