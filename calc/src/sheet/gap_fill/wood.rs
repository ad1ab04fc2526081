//! Whether the joints move: the swing of the boards beside them.

use uom::si::f64::Length;
use uom::si::length::millimeter;

use crate::ask::{Ask, Figure};
use crate::carpentry::moisture::{self, SPECIES, Species};
use crate::quantity::{LENGTH, Style, percent};
use crate::reader::Reader;
use crate::report::{Remark, Step};
use crate::text::text;

static NAME: Ask = Ask::notation(
    "species",
    "Wood",
    "species",
    &["oak, red", "maple, sugar", "Douglas-fir, coast", "pine, ponderosa", "beech"],
);
static BOARD_WIDTH: Ask =
    Ask::measure("board_width", "Width of a board", &LENGTH, ["in", "mm"], (1e-3, 2.0))
        .usual("3 1/2 in", "90 mm")
        .figure(Figure::Across);
static CUT: Ask = Ask::choice(
    "cut",
    "Growth rings",
    &[("flat", "flat: arches on the end"), ("quarter", "upright: lines on the end")],
);
static DRIEST: Ask = Ask::percent("driest_percent", "Moisture at its driest", (0.0, 30.0))
    .default("6")
    .help("In a body that is parked in the sun or heated.");
static WETTEST: Ask = Ask::percent("wettest_percent", "Moisture at its wettest", (0.0, 30.0))
    .default("14")
    .help("In a damp winter.");
/// The boards that the gaps are between.
pub static WOOD: Ask =
    Ask::group("wood", "Boards beside the gaps", &[&NAME, &BOARD_WIDTH, &CUT, &DRIEST, &WETTEST])
        .optional()
        .help("To tell how much the gaps open and close: a rigid filler does not follow.");

/// The boards beside the gaps.
pub struct Wood {
    species: &'static Species,
    width: Length,
    quarter: bool,
    driest: f64,
    wettest: f64,
}

/// Reads the boards.
pub fn wood(reader: &Reader<'_>) -> Option<Wood> {
    let read = reader.maybe_group(&WOOD, |group| {
        let species = group.notation(&NAME, None, |text| species(text).map(Some));
        let (driest, wettest) = (group.number(&DRIEST), group.number(&WETTEST));
        if wettest < driest {
            group.fault_at(&WETTEST, "it must not be below the moisture at its driest");
        }
        Some(Wood {
            species: species?,
            width: group.measure(&BOARD_WIDTH),
            quarter: group.choice(&CUT) == "quarter",
            driest,
            wettest,
        })
    });
    read.flatten()
}

fn species(text: &str) -> Result<&'static Species, String> {
    let wanted = text.trim();
    SPECIES.iter().find(|one| one.name.eq_ignore_ascii_case(wanted)).ok_or_else(|| {
        let names: Vec<&str> = SPECIES.iter().map(|one| one.name).collect();
        text!("this wood is not in the table; choose one of: {}", names.join("; "))
    })
}

impl Wood {
    fn coefficient(&self) -> f64 {
        if self.quarter { self.species.radial } else { self.species.tangential }
    }

    /// How much a joint opens and closes between the driest and the dampest season. Source:
    /// [`moisture::CHANGE`].
    pub fn swing(&self) -> Length {
        let width = self.width.get::<millimeter>();
        let moved = moisture::movement(width, self.coefficient(), self.driest, self.wettest);
        Length::new::<millimeter>(moved.change_mm)
    }

    /// What is said of gaps, the narrowest of which is so wide.
    pub fn remark(&self, narrowest: Length, style: Style) -> Remark {
        let moved = moisture::movement(1.0, self.coefficient(), self.driest, self.wettest);
        let roughly = if moved.in_range { "" } else { "roughly " };
        Remark::warning(text!(
            "Rigid filler in joints that move: boards of {}, {} wide, swing by {}{} between {} and {} \
             moisture, and the narrowest gap is {} wide. Epoxy does not follow: it cracks or pushes the \
             boards up. Fill such joints with what stretches, or leave them open.",
            &self.species.name,
            style.short(self.width),
            roughly,
            style.small(self.swing()),
            percent(self.driest),
            percent(self.wettest),
            style.short(narrowest)
        ))
    }

    /// How the swing is worked out.
    pub fn step(&self, style: Style) -> Step {
        Step::new(
            "Swing of a joint",
            "Δ = w · C · (M₂ − M₁)",
            text!(
                "{} · {} · ({} − {})",
                style.short(self.width),
                crate::quantity::plain(self.coefficient(), 5),
                percent(self.wettest),
                percent(self.driest)
            ),
            style.small(self.swing()),
            &moisture::CHANGE,
        )
    }
}
