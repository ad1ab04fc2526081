//! What the gap-filling sheet asks, and how it is read.

use uom::si::f64::Ratio;
use uom::si::ratio::percent;

use super::super::schedule::label::{self, LIMITS, OF_FILLER, Times};
use super::wood::{WOOD, wood};
use super::{Gap, Holes, Inputs, Label};
use crate::ask::{Ask, Figure};
use crate::coating::containers::Offer;
use crate::coating::gap::Hole;
use crate::coating::mixing::{By, Mix};
use crate::coating::purchase::{Part, PartOffer};
use crate::quantity::{FLOW, LENGTH, MASS_DENSITY, TEMPERATURE, TIME, VOLUME};
use crate::reader::Reader;

pub static ASKS: &[&Ask] = &[
    &PRODUCT,
    &GAPS,
    &HOLES,
    &PASSES,
    &SHRINK,
    &LOSS,
    &MIX,
    &POT_LIFE,
    &TEMPERATURE_NOW,
    &POUR_RATE,
    &BATCH_LIMIT,
    &CUP,
    &CONTAINERS,
    &OF_FILLER,
    &LIMITS,
    &WOOD,
];

static PRODUCT: Ask = Ask::words("product", "What it is")
    .default("filler")
    .usual("clear epoxy", "clear epoxy")
    .help("Its name on the buy list.");

static LABEL: Ask = Ask::words("label", "Name").usual("floor joints", "floor joints");
static COUNT: Ask = Ask::count("count", "How many", (1, 10_000)).default("1");
static LENGTH_OF_GAP: Ask = Ask::measure("length", "Length", &LENGTH, ["in", "mm"], (1e-4, 90.0))
    .usual("90 in", "2400 mm")
    .figure(Figure::Along);
static WIDTH: Ask = Ask::measure("width", "Width", &LENGTH, ["in", "mm"], (1e-5, 0.9))
    .usual("1/8 in", "3 mm")
    .help("The mean of a few places; a drill bit that just fits is a good gauge.")
    .figure(Figure::Gap);
static DEPTH: Ask = Ask::measure("depth", "Depth", &LENGTH, ["in", "mm"], (1e-5, 0.9))
    .usual("3/4 in", "18 mm")
    .help("As deep as it will be filled: to the backing, or to a cord laid in.")
    .figure(Figure::Depth);
static OPEN_BELOW: Ask = Ask::flag("open_below", "Open below", true).help(
    "Filler runs through onto exhaust, wires and skin: what is open below is closed with tape or a plug first. Say no only where you saw that it is closed.",
);
pub static GAPS: Ask = Ask::rows(
    "gaps",
    "Gaps and joints",
    "gap",
    1,
    &[&LABEL, &COUNT, &LENGTH_OF_GAP, &WIDTH, &DEPTH, &OPEN_BELOW],
)
.optional();

static DIAMETER: Ask = Ask::measure("diameter", "Diameter", &LENGTH, ["in", "mm"], (1e-4, 0.9))
    .usual("3/8 in", "10 mm")
    .help("Across the hole, at the surface.")
    .figure(Figure::Diameter);
static HOLE_DEPTH: Ask = Ask::measure("depth", "Depth", &LENGTH, ["in", "mm"], (1e-4, 0.9))
    .usual("3/4 in", "18 mm")
    .figure(Figure::Depth);
static SHAPE: Ask = Ask::choice(
    "shape",
    "Shape",
    &[("plain", "plain"), ("countersunk", "countersunk cone"), ("plugged", "with a plug")],
);
static BOTTOM: Ask =
    Ask::measure("bottom", "Diameter at the cone's bottom", &LENGTH, ["in", "mm"], (0.0, 0.9))
        .default("0 in")
        .help("Of a countersunk hole: across its lower end; nothing where it comes to a point.")
        .figure(Figure::Diameter);
static PLUG_DIAMETER: Ask =
    Ask::measure("plug_diameter", "Plug diameter", &LENGTH, ["in", "mm"], (0.0, 0.9))
        .optional()
        .help("Of a hole with a plug: only what the plug leaves is filled.")
        .figure(Figure::Diameter);
static PLUG_LENGTH: Ask =
    Ask::measure("plug_length", "Plug length", &LENGTH, ["in", "mm"], (0.0, 0.9))
        .optional()
        .figure(Figure::Along);
pub static HOLES: Ask = Ask::rows(
    "holes",
    "Holes",
    "hole",
    1,
    &[
        &LABEL,
        &COUNT,
        &DIAMETER,
        &HOLE_DEPTH,
        &SHAPE,
        &BOTTOM,
        &PLUG_DIAMETER,
        &PLUG_LENGTH,
        &OPEN_BELOW,
    ],
)
.optional();

static PASSES: Ask = Ask::count("passes", "Passes", (1, 50))
    .default("1")
    .help("The work is split evenly; each pass is poured when the one below has set.");
static SHRINK: Ask = Ask::percent("shrink_percent", "Shrinkage", (0.0, 80.0)).default("0").help(
    "By volume, on the data sheet: epoxy without solvent 2 to 5 %, water-borne filler far more.",
);
static LOSS: Ask = Ask::percent("loss_percent", "Loss", (0.0, 95.0))
    .default("10")
    .usual("15", "15")
    .help("The share that stays in cups and on sticks, or runs away below. Left out it is 10 %; type 0 for none.");

static BY: Ask = Ask::choice("by", "Measured by", &[("volume", "volume"), ("mass", "mass")]);
static A: Ask = Ask::number("a", "Parts of a", (0.01, 10_000.0))
    .usual("2", "2")
    .help("Part a: the resin, as a rule. On the label: the mixing ratio a : b.");
static B: Ask = Ask::number("b", "Parts of b", (0.01, 10_000.0))
    .usual("1", "1")
    .help("Part b: the hardener, as a rule.");
static DENSITY_A: Ask =
    Ask::measure("density_a", "Density of a", &MASS_DENSITY, ["lb/gal", "kg/l"], (110.0, 9000.0))
        .optional()
        .usual("9.2 lb/gal", "1.1 kg/l")
        .help("On the data sheet. A ratio by mass needs both densities.");
static DENSITY_B: Ask =
    Ask::measure("density_b", "Density of b", &MASS_DENSITY, ["lb/gal", "kg/l"], (110.0, 9000.0))
        .optional()
        .usual("8.6 lb/gal", "1.03 kg/l");
static MIX: Ask = Ask::group("mix", "Mixing ratio", &[&BY, &A, &B, &DENSITY_A, &DENSITY_B]);

static POT_LIFE_TIME: Ask = Ask::measure("time", "Pot life", &TIME, ["min", "min"], (10.0, 2.0e6))
    .usual("25 min", "25 min");
static POT_LIFE_AT: Ask =
    Ask::measure("at", "At", &TEMPERATURE, ["F", "C"], (258.15, 328.15)).usual("77 F", "25 C");
static POT_LIFE: Ask =
    Ask::group("pot_life", "Pot life on the label", &[&POT_LIFE_TIME, &POT_LIFE_AT])
        .optional()
        .help("With the temperature it is given for, mostly 25 C (77 F).");
static TEMPERATURE_NOW: Ask =
    Ask::measure("temperature", "Temperature now", &TEMPERATURE, ["F", "C"], (258.15, 328.15))
        .optional()
        .usual("68 F", "20 C")
        .help("Of the bottles and the room, the warmer of both.");
static POUR_RATE: Ask =
    Ask::measure("pour_rate", "Pour rate", &FLOW, ["fl oz/min", "ml/min"], (2e-9, 0.1))
        .optional()
        .usual("1 fl oz/min", "30 ml/min")
        .help("Time one cup: what it held over the minutes from mixing to the last drop. Leave it out until you have timed one.");
static BATCH_LIMIT: Ask =
    Ask::measure("batch_limit", "Largest batch", &VOLUME, ["fl oz", "ml"], (2e-6, 1.0))
        .optional()
        .usual("8 fl oz", "250 ml")
        .help("What the label allows to be mixed at once. Left out, no cup holds more than 100 g: a larger mass heats itself.");
static CUP: Ask = Ask::measure("cup_diameter", "Cup diameter", &LENGTH, ["in", "mm"], (0.006, 1.9))
    .optional()
    .usual("3 in", "80 mm")
    .help("Inside, measured on a cup with straight walls: gives the marks as heights above its bottom. Leave it out for a cup with a scale.")
    .figure(Figure::Diameter);

static PART: Ask =
    Ask::choice("part", "Holds", &[("a", "part a"), ("b", "part b"), ("kit", "kit of both")])
        .required();
static SIZE: Ask = Ask::measure("size", "Size", &VOLUME, ["fl oz", "ml"], (5e-6, 1.0))
    .usual("32 fl oz", "1 l")
    .help("Of a kit: both parts together.");
static PRICE: Ask = Ask::number("price", "Price", (0.0, 1e6)).optional();
pub static CONTAINERS: Ask = Ask::rows(
    "containers",
    "Containers on the shelf",
    "container",
    1,
    &[&PART, &SIZE, &PRICE],
)
.optional()
.help("With a price for each, the cheapest that are enough; else those that leave least over.");

pub fn read(reader: &Reader<'_>) -> Inputs {
    if !reader.given(&GAPS) && !reader.given(&HOLES) {
        reader.fault_at(&GAPS, "add at least one gap or one hole to fill");
    }
    Inputs {
        product: reader.words(&PRODUCT),
        gaps: reader.rows(&GAPS, |row| Gap {
            label: row.words(&LABEL),
            count: row.count(&COUNT),
            length: row.measure(&LENGTH_OF_GAP),
            width: row.measure(&WIDTH),
            depth: row.measure(&DEPTH),
            open_below: row.flag(&OPEN_BELOW),
        }),
        holes: reader.rows(&HOLES, |row| Holes {
            label: row.words(&LABEL),
            count: row.count(&COUNT),
            hole: hole(row),
            open_below: row.flag(&OPEN_BELOW),
        }),
        passes: reader.count(&PASSES),
        shrink: Ratio::new::<percent>(reader.number(&SHRINK)),
        shrink_given: reader.given(&SHRINK),
        loss: Ratio::new::<percent>(reader.number(&LOSS)),
        loss_given: reader.given(&LOSS),
        mix: reader.group(&MIX, |group| Mix {
            by: if group.choice(&BY) == "mass" { By::Mass } else { By::Volume },
            a: group.number(&A),
            b: group.number(&B),
            density_a: group.maybe(&DENSITY_A),
            density_b: group.maybe(&DENSITY_B),
        }),
        pot_life: reader.maybe_group(&POT_LIFE, |group| Label {
            time: group.measure(&POT_LIFE_TIME),
            at: group.measure(&POT_LIFE_AT),
        }),
        temperature: reader.maybe(&TEMPERATURE_NOW),
        pour_rate: reader.maybe(&POUR_RATE),
        batch_limit: reader.maybe(&BATCH_LIMIT),
        cup: reader.maybe(&CUP),
        times: Times::group(reader, &OF_FILLER),
        limits: label::limits(reader),
        wood: wood(reader),
        offers: reader.rows(&CONTAINERS, |row| PartOffer {
            part: match row.choice(&PART) {
                "b" => Part::B,
                "kit" => Part::Kit,
                _ => Part::A,
            },
            offer: Offer { size: row.measure(&SIZE), price: row.maybe_number(&PRICE) },
        }),
    }
}

fn hole(row: &Reader<'_>) -> Hole {
    let (diameter, depth) = (row.measure(&DIAMETER), row.measure(&HOLE_DEPTH));
    match row.choice(&SHAPE) {
        "countersunk" => Hole::Countersunk { top: diameter, bottom: row.measure(&BOTTOM), depth },
        "plugged" => {
            for ask in [&PLUG_DIAMETER, &PLUG_LENGTH] {
                if !row.given(ask) {
                    row.fault_at(ask, "give the size of the plug, or choose a plain hole");
                }
            }
            let plug_diameter = row.maybe(&PLUG_DIAMETER).unwrap_or_default();
            let plug_length = row.maybe(&PLUG_LENGTH).unwrap_or_default();
            if plug_diameter > diameter {
                row.fault_at(&PLUG_DIAMETER, "the plug must not be wider than its hole");
            }
            if plug_length > depth {
                row.fault_at(&PLUG_LENGTH, "the plug must not be longer than its hole is deep");
            }
            Hole::Plugged { diameter, depth, plug_diameter, plug_length }
        }
        _ => Hole::Plain { diameter, depth },
    }
}
