//! What is asked of a filling, and what is wrong between its inputs.

use calc_derive::{Choice, Inputs};
use uom::si::f64::{
    Length, MassDensity, Ratio, ThermodynamicTemperature, Time, Volume, VolumeRate,
};
use uom::si::ratio::percent;

use super::super::schedule::label::{Limits, OF_FILLER, Times};
use super::wood::Wood;
use crate::ask::{Ask, Figure};
use crate::coating::containers::Offer;
use crate::coating::gap::Hole;
use crate::coating::mixing::{self, By};
use crate::coating::purchase::{Part, PartOffer};
use crate::reader::Reader;
use crate::text::text;
use crate::words::{Msg, gap_fill as words};

/// What was typed, but for times and limits.
#[derive(Inputs)]
#[words(gap_fill)]
pub(super) struct Inputs {
    /// The name on the buy list.
    #[ask(default("filler"))]
    pub(super) product: String,
    #[ask(rows(1), optional(), no_help)]
    pub(super) gaps: Vec<Gap>,
    #[ask(rows(1), optional(), no_help)]
    pub(super) holes: Vec<Holes>,
    #[ask(range(1, 50), default("1"))]
    pub(super) passes: u32,
    #[ask(percent, range(0.0, 80.0), default("0"))]
    pub(super) shrink_percent: f64,
    #[ask(percent, range(0.0, 95.0), default("10"), usual("15", "15"), convention())]
    pub(super) loss_percent: f64,
    #[ask(group, no_help)]
    pub(super) mix: Mix,
    #[ask(group)]
    pub(super) pot_life: Option<PotLife>,
    /// At which it is mixed and poured.
    #[ask(units("F", "C"), range(258.15, 328.15), usual("68 F", "20 C"))]
    pub(super) temperature: Option<ThermodynamicTemperature>,
    #[ask(units("fl oz/min", "ml/min"), range(2e-9, 0.1), usual("1 fl oz/min", "30 ml/min"))]
    pub(super) pour_rate: Option<VolumeRate>,
    #[ask(units("fl oz", "ml"), range(2e-6, 1.0), usual("8 fl oz", "250 ml"))]
    pub(super) batch_limit: Option<Volume>,
    #[ask(units("in", "mm"), range(0.006, 1.9), usual("3 in", "80 mm"))]
    #[ask(figure(Figure::Diameter))]
    pub(super) cup_diameter: Option<Length>,
    #[ask(rows(1), optional())]
    containers: Vec<Container>,
    #[ask(group)]
    pub(super) wood: Option<Wood>,
}

/// A row of gaps.
#[derive(Inputs)]
#[words(gap_fill)]
pub(super) struct Gap {
    pub(super) label: String,
    #[ask(range(1, 10_000), default("1"), no_help)]
    pub(super) count: u32,
    #[ask(units("in", "mm"), range(1e-4, 90.0), usual("90 in", "2400 mm"), no_help)]
    #[ask(figure(Figure::Along))]
    pub(super) length: Length,
    #[ask(units("in", "mm"), range(1e-5, 0.9), usual("1/8 in", "3 mm"), figure(Figure::Gap))]
    pub(super) width: Length,
    #[ask(units("in", "mm"), range(1e-5, 0.9), usual("3/4 in", "18 mm"), figure(Figure::Depth))]
    pub(super) depth: Length,
    #[ask(usually(true))]
    pub(super) open_below: bool,
}

/// A row of holes.
#[derive(Inputs)]
#[words(gap_fill)]
pub(super) struct Holes {
    #[ask(word(hole_label))]
    pub(super) label: String,
    #[ask(range(1, 10_000), default("1"), no_help)]
    pub(super) count: u32,
    #[ask(units("in", "mm"), range(1e-4, 0.9), usual("3/8 in", "10 mm"))]
    #[ask(figure(Figure::Diameter))]
    diameter: Length,
    #[ask(units("in", "mm"), range(1e-4, 0.9), usual("3/4 in", "18 mm"), no_help)]
    #[ask(figure(Figure::Depth))]
    depth: Length,
    #[ask(choice, no_help)]
    shape: Shape,
    #[ask(units("in", "mm"), range(0.0, 0.9), default("0 in"), figure(Figure::Diameter))]
    bottom: Length,
    #[ask(units("in", "mm"), range(0.0, 0.9), figure(Figure::Diameter))]
    plug_diameter: Option<Length>,
    #[ask(units("in", "mm"), range(0.0, 0.9), figure(Figure::Along), no_help)]
    plug_length: Option<Length>,
    #[ask(usually(true))]
    pub(super) open_below: bool,
}

#[derive(Choice, Clone, Copy, PartialEq)]
#[words(gap_fill)]
enum Shape {
    Plain,
    Countersunk,
    Plugged,
}

impl Holes {
    /// One of them.
    pub(super) fn hole(&self) -> Hole {
        let (diameter, depth) = (self.diameter, self.depth);
        match self.shape {
            Shape::Plain => Hole::Plain { diameter, depth },
            Shape::Countersunk => Hole::Countersunk { top: diameter, bottom: self.bottom, depth },
            Shape::Plugged => Hole::Plugged {
                diameter,
                depth,
                plug_diameter: self.plug_diameter.unwrap_or_default(),
                plug_length: self.plug_length.unwrap_or_default(),
            },
        }
    }

    /// What is wrong with its plug.
    fn faults(&self) -> Vec<(&'static Ask, Msg)> {
        if self.shape != Shape::Plugged {
            return Vec::new();
        }
        let mut faults: Vec<(&'static Ask, Msg)> = Vec::new();
        let sizes = [
            (Self::PLUG_DIAMETER, self.plug_diameter, self.diameter, words::PLUG_TOO_WIDE),
            (Self::PLUG_LENGTH, self.plug_length, self.depth, words::PLUG_TOO_LONG),
        ];
        for (ask, size, ..) in sizes {
            if size.is_none() {
                faults.push((ask, words::PLUG_MISSING.into()));
            }
        }
        for (ask, size, most, too_large) in sizes {
            if size.is_some_and(|size| size > most) {
                faults.push((ask, too_large.into()));
            }
        }
        faults
    }
}

/// The mixing ratio on the label.
#[derive(Inputs)]
#[words(gap_fill)]
pub(super) struct Mix {
    #[ask(choice, no_help)]
    by: Measured,
    #[ask(range(0.01, 10_000.0), usual("2", "2"))]
    a: f64,
    #[ask(range(0.01, 10_000.0), usual("1", "1"))]
    b: f64,
    #[ask(units("lb/gal", "kg/l"), range(110.0, 9000.0), usual("9.2 lb/gal", "1.1 kg/l"))]
    density_a: Option<MassDensity>,
    #[ask(
        units("lb/gal", "kg/l"),
        range(110.0, 9000.0),
        usual("8.6 lb/gal", "1.03 kg/l"),
        no_help
    )]
    density_b: Option<MassDensity>,
}

#[derive(Choice, Clone, Copy)]
#[words(gap_fill)]
enum Measured {
    Volume,
    Mass,
}

impl Mix {
    /// What the ratio counts in.
    pub(super) fn by(&self) -> By {
        match self.by {
            Measured::Volume => By::Volume,
            Measured::Mass => By::Mass,
        }
    }

    /// As it is mixed.
    pub(super) fn ratio(&self) -> mixing::Mix {
        mixing::Mix {
            by: self.by(),
            a: self.a,
            b: self.b,
            density_a: self.density_a,
            density_b: self.density_b,
        }
    }
}

/// The pot life on the label.
#[derive(Inputs)]
#[words(gap_fill)]
pub(super) struct PotLife {
    #[ask(units("min", "min"), range(10.0, 2.0e6), usual("25 min", "25 min"), no_help)]
    pub(super) time: Time,
    #[ask(units("F", "C"), range(258.15, 328.15), usual("77 F", "25 C"), no_help)]
    pub(super) at: ThermodynamicTemperature,
}

/// A container on the shelf.
#[derive(Inputs)]
#[words(gap_fill)]
struct Container {
    #[ask(choice, required(), no_help)]
    part: Holds,
    #[ask(units("fl oz", "ml"), range(5e-6, 1.0), usual("32 fl oz", "1 l"))]
    size: Volume,
    #[ask(range(0.0, 1e6), no_help)]
    price: Option<f64>,
}

#[derive(Choice, Clone, Copy)]
#[words(gap_fill)]
enum Holds {
    A,
    B,
    Kit,
}

/// What is to be done.
pub(super) struct Job {
    pub(super) inputs: Inputs,
    pub(super) offers: Vec<PartOffer>,
    pub(super) times: Option<Times>,
    pub(super) limits: Option<Limits>,
    /// Whether the product has a name of its own.
    pub(super) named: bool,
    /// Whether the shrinkage was typed.
    pub(super) shrink_given: bool,
    /// Whether the loss was typed.
    pub(super) loss_given: bool,
}

impl Job {
    pub(super) fn read(reader: &Reader<'_>) -> Self {
        if !reader.given(Inputs::GAPS) && !reader.given(Inputs::HOLES) {
            reader.tell(Inputs::GAPS, words::NOTHING_GIVEN);
        }
        let inputs = Inputs::read(reader);
        for (row, holes) in inputs.holes.iter().enumerate() {
            for (ask, message) in holes.faults() {
                reader.tell_at(&text!("{}.{}.{}", Inputs::HOLES.key, &row, ask.key), message);
            }
        }
        if inputs.wood.as_ref().is_some_and(Wood::drier_when_wettest) {
            let path = text!("{}.{}", Inputs::WOOD.key, Wood::WETTEST_PERCENT.key);
            reader.tell_at(&path, words::WETTEST_BELOW_DRIEST);
        }
        let offers = inputs.containers.iter().map(|container| PartOffer {
            part: match container.part {
                Holds::A => Part::A,
                Holds::B => Part::B,
                Holds::Kit => Part::Kit,
            },
            offer: Offer { size: container.size, price: container.price },
        });
        Self {
            offers: offers.collect(),
            times: Times::group(reader, &OF_FILLER),
            limits: Limits::of(reader),
            named: reader.given(Inputs::PRODUCT),
            shrink_given: reader.given(Inputs::SHRINK_PERCENT),
            loss_given: reader.given(Inputs::LOSS_PERCENT),
            inputs,
        }
    }

    pub(super) fn loss(&self) -> Ratio {
        Ratio::new::<percent>(self.inputs.loss_percent)
    }

    pub(super) fn shrinkage(&self) -> Ratio {
        Ratio::new::<percent>(self.inputs.shrink_percent)
    }

    /// The narrowest gap; none where there are holes alone.
    pub(super) fn narrowest(&self) -> Option<Length> {
        self.inputs.gaps.iter().map(|gap| gap.width).reduce(Length::min)
    }
}
