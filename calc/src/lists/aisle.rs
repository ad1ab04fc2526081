//! Where in a store a line of the buy list is found.

use super::{BuyLine, words};
use crate::words::Id;

/// The parts of a hardware store, in the order of the list.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Aisle {
    /// Boards, strips, sheets, insulation.
    Lumber,
    /// Screws, plugs, bolts.
    Fasteners,
    /// Wire, fuses, lamps, batteries.
    Electrical,
    /// Coatings, fillers, adhesives, sealants, and what they are mixed and spread with.
    PaintAndGlue,
    /// Tanks, pumps, hose.
    Plumbing,
    /// What is found elsewhere.
    Other,
}

/// Kinds of lines by the first part of their ids.
const KINDS: &[(Aisle, &[&str])] = &[
    (Aisle::Lumber, &["stock", "spare", "nailer"]),
    (Aisle::Fasteners, &["screw", "nailer_screw", "plug"]),
    (
        Aisle::Electrical,
        &[
            "wire",
            "fuse",
            "block-fuse",
            "fuse-block",
            "string-fuse",
            "dimmer",
            "splice",
            "lamp",
            "battery",
            "lug",
            "solar-panel",
            "inverter",
            "charger",
        ],
    ),
    (
        Aisle::PaintAndGlue,
        &[
            "filler", "tape", "cup", "stick", "paint", "supply", "adhesive", "sealant", "thinner",
            "part-a", "part-b",
        ],
    ),
    (Aisle::Plumbing, &["tank", "pump", "hose", "pipe"]),
];

impl Aisle {
    /// The aisle of a line, by what it is. What a person added by hand is under [`Aisle::Other`].
    pub fn of(line: &BuyLine) -> Self {
        let kind = line.id.text().split('/').next().unwrap_or_default();
        let found = KINDS.iter().find(|(_, kinds)| kinds.contains(&kind));
        found.map_or(Self::Other, |(aisle, _)| *aisle)
    }

    /// What the aisle is called.
    pub fn name(self) -> Id {
        match self {
            Self::Lumber => words::AISLE_LUMBER,
            Self::Fasteners => words::AISLE_FASTENERS,
            Self::Electrical => words::AISLE_ELECTRICAL,
            Self::PaintAndGlue => words::AISLE_PAINT,
            Self::Plumbing => words::AISLE_PLUMBING,
            Self::Other => words::AISLE_OTHER,
        }
    }
}
