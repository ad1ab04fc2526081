//! Whether the joints move: the swing of the boards beside them.

use calc_derive::{Choice, Inputs};
use uom::si::f64::Length;

use crate::ask::Figure;
use crate::carpentry::moisture::{self, SPECIES, Species, Swelling, movement};
use crate::formula::Formula as _;
use crate::reader::Notation;
use crate::words::{Arg, Msg, gap_fill as words};

/// The boards that the gaps are between.
#[derive(Inputs)]
#[words(gap_fill)]
pub(super) struct Wood {
    #[ask(notation("oak, red", "maple, sugar", "Douglas-fir, coast", "pine, ponderosa", "beech"))]
    #[ask(no_help)]
    species: Of,
    #[ask(units("in", "mm"), range(1e-3, 2.0), usual("3 1/2 in", "90 mm"), no_help)]
    #[ask(figure(Figure::Across))]
    board_width: Length,
    #[ask(choice, no_help)]
    cut: Rings,
    #[ask(percent, range(0.0, 30.0), default("6"))]
    driest_percent: f64,
    #[ask(percent, range(0.0, 30.0), default("14"))]
    wettest_percent: f64,
}

/// A wood of the table.
struct Of(&'static Species);

impl Notation for Of {
    fn stand_in() -> Self {
        let [first, ..] = &SPECIES;
        Self(first)
    }

    fn read(text: &str) -> Result<Self, Msg> {
        moisture::wood(text).map(Self)
    }
}

#[derive(Choice, Clone, Copy)]
#[words(gap_fill)]
enum Rings {
    Flat,
    Quarter,
}

impl Wood {
    /// Whether it would be drier in its wettest season than in its driest.
    pub(super) fn drier_when_wettest(&self) -> bool {
        self.wettest_percent < self.driest_percent
    }

    fn coefficient(&self) -> f64 {
        match self.cut {
            Rings::Flat => self.species.0.tangential,
            Rings::Quarter => self.species.0.radial,
        }
    }

    /// How much a joint opens and closes between the driest and the dampest season.
    pub(super) fn swing(&self) -> Swelling {
        Swelling {
            width: self.board_width,
            coefficient: self.coefficient(),
            from_percent: self.driest_percent,
            to_percent: self.wettest_percent,
        }
    }

    /// What is said of gaps, the narrowest of which is so wide.
    pub(super) fn moving(&self, narrowest: Length) -> Msg {
        let (driest, wettest) = (self.driest_percent, self.wettest_percent);
        let in_range = movement(1.0, self.coefficient(), driest, wettest).in_range;
        let (wood, width) = (self.species.0.said, Arg::short(self.board_width));
        let (swing, gap) = (Arg::small(self.swing().value()), Arg::short(narrowest));
        let (driest, wettest) = (Arg::percent(driest), Arg::percent(wettest));
        match in_range {
            true => words::Moving { wood, width, swing, driest, wettest, gap }.into(),
            false => words::MovingRoughly { wood, width, swing, driest, wettest, gap }.into(),
        }
    }
}
