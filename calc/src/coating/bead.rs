//! Beads of adhesive and sealant: cross-section, length of a cartridge, cartridges for a length.

use std::f64::consts::PI;

use uom::si::area::square_millimeter;
use uom::si::f64::{Area, Length, Ratio, Volume};
use uom::si::length::{meter, millimeter};
use uom::si::ratio::percent;
use uom::si::volume::milliliter;

use super::film::with_loss;
use super::range::{OutOfRange, ceiling, within};
use crate::formula::formula;
use crate::source::Source;
use crate::words::{Id, range as names, wet as words};

/// A bead's volume is its cross-section times its length; a cartridge gives volume / cross-section.
pub static BEAD: Source = Source::identity_of(words::SOURCE_BEAD);

/// What a bead looks like when cut across.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bead {
    /// Round, as it leaves a nozzle cut straight.
    Round {
        /// Across the bead.
        diameter: Length,
    },
    /// Half round, pressed flat on one side.
    HalfRound {
        /// Across the flat side.
        diameter: Length,
    },
    /// A filled groove.
    Square {
        /// Across the groove.
        width: Length,
        /// How deep it is.
        depth: Length,
    },
    /// A triangle in an inside corner.
    Fillet {
        /// Along one face.
        width: Length,
        /// Along the other.
        depth: Length,
    },
}

impl Bead {
    /// The cross-section. Source: [`BEAD`].
    ///
    /// # Errors
    /// Every size from 0.1 to 100 mm.
    pub fn section(self) -> Result<Area, OutOfRange> {
        match self {
            Self::Round { diameter } => {
                size(names::BEAD, diameter)?;
                Ok(PI / 4.0 * diameter * diameter)
            }
            Self::HalfRound { diameter } => {
                size(names::BEAD, diameter)?;
                Ok(PI / 8.0 * diameter * diameter)
            }
            Self::Square { width, depth } => {
                size(names::BEAD_WIDTH, width)?;
                size(names::BEAD_DEPTH, depth)?;
                Ok(width * depth)
            }
            Self::Fillet { width, depth } => {
                size(names::BEAD_WIDTH, width)?;
                size(names::BEAD_DEPTH, depth)?;
                Ok(width * depth / 2.0)
            }
        }
    }

    /// How long a bead one cartridge gives, with nothing lost. Source: [`BEAD`].
    ///
    /// # Errors
    /// As [`Bead::section`]; the cartridge from 1 ml to 20 l.
    pub fn length_of(self, cartridge: Volume) -> Result<Length, OutOfRange> {
        cartridge_ml(cartridge)?;
        Ok(cartridge / self.section()?)
    }

    /// What a bead of this length takes, losses included: cross-section x length / (1 - loss).
    /// Source: [`BEAD`].
    ///
    /// # Errors
    /// As [`Bead::section`]; length from 0 to 100 000 m, loss from 0 to 95 %.
    pub fn volume(self, length: Length, loss: Ratio) -> Result<Volume, OutOfRange> {
        within(names::BEAD_LENGTH, length.get::<meter>(), 0.0, 100_000.0, "m")?;
        with_loss(self.section()? * length, loss)
    }
}

formula! {
    /// What a round bead takes, with what is wasted.
    RoundBead: "V = π / 4 · d² · l / (1 − w)", &BEAD;
    |of| {
        let whole = Ratio::new::<percent>(100.0);
        let net = PI / 4.0 * of.diameter * of.diameter * of.length;
        net / (whole - Ratio::new::<percent>(of.waste_percent)) * whole
    } => Volume as volume;
    /// Across the bead.
    "d²" as small_squared: diameter: Length,
    /// All beads in a row.
    "l" as run: length: Length,
    /// Of what is bought.
    "w" as percent: waste_percent: f64,
}

/// How many cartridges hold a volume; a volume over by 1e-9 of a cartridge takes no other one.
///
/// # Errors
/// Volume from 0 to 1e9 ml; cartridge from 1 ml to 20 l.
pub fn cartridges(volume: Volume, cartridge: Volume) -> Result<u32, OutOfRange> {
    let volume = within(names::VOLUME, volume.get::<milliliter>(), 0.0, 1e9, "ml")?;
    Ok(ceiling(volume / cartridge_ml(cartridge)?) as u32)
}

/// The diameter of the round bead with a given cross-section, to compare shapes by.
///
/// # Errors
/// Cross-section from 0.01 to 10 000 mm².
pub fn round_of_section(section: Area) -> Result<Length, OutOfRange> {
    let section =
        within(names::CROSS_SECTION, section.get::<square_millimeter>(), 0.01, 1e4, "mm2")?;
    Ok(Length::new::<millimeter>((4.0 * section / PI).sqrt()))
}

fn size(what: Id, length: Length) -> Result<f64, OutOfRange> {
    within(what, length.get::<millimeter>(), 0.1, 100.0, "mm")
}

fn cartridge_ml(cartridge: Volume) -> Result<f64, OutOfRange> {
    within(names::CARTRIDGE, cartridge.get::<milliliter>(), 1.0, 20_000.0, "ml")
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use uom::si::length::{foot, inch};
    use uom::si::ratio::percent;

    use super::*;

    fn fluid_ounces(value: f64) -> Volume {
        Volume::new::<milliliter>(value * 29.573_529_562_5)
    }

    fn round(diameter: Length) -> Bead {
        Bead::Round { diameter }
    }

    fn groove(side: Length) -> Bead {
        Bead::Square { width: side, depth: side }
    }

    /// Worked from 1 US fl oz = 1.8046875 in³ and the cross-section: a 10 and a 28 oz cartridge,
    /// 300 and 310 ml.
    #[test]
    fn cartridge_lengths() {
        let sixteenths = [2.0, 3.0, 4.0, 6.0, 8.0];
        for (ounces, round_ft, square_ft) in [
            (10.0, [122.5, 54.5, 30.6, 13.6, 7.7], [96.2, 42.8, 24.1, 10.7, 6.0]),
            (28.0, [343.1, 152.5, 85.8, 38.1, 21.4], [269.5, 119.8, 67.4, 29.9, 16.8]),
        ] {
            for (place, sixteenth) in sixteenths.iter().enumerate() {
                let side = Length::new::<inch>(sixteenth / 16.0);
                let feet = |bead: Bead| bead.length_of(fluid_ounces(ounces)).unwrap().get::<foot>();
                assert!(
                    (feet(round(side)) - round_ft[place]).abs() <= 0.051,
                    "{ounces} oz {sixteenth}/16"
                );
                assert!(
                    (feet(groove(side)) - square_ft[place]).abs() <= 0.051,
                    "{ounces} oz {sixteenth}/16"
                );
            }
        }
        let millimeters = [3.0, 4.0, 5.0, 6.0, 8.0, 10.0];
        for (place, side) in millimeters.iter().enumerate() {
            let side = Length::new::<millimeter>(*side);
            let long = |bead: Bead, ml| {
                bead.length_of(Volume::new::<milliliter>(ml)).unwrap().get::<meter>()
            };
            assert!(
                (long(round(side), 300.0) - [42.4, 23.9, 15.3, 10.6, 5.97, 3.82][place]).abs()
                    <= 0.051
            );
            assert!(
                (long(groove(side), 300.0) - [33.3, 18.8, 12.0, 8.33, 4.69, 3.0][place]).abs()
                    <= 0.051
            );
        }
    }

    /// A sealant supplier's statement: a 10 oz cartridge in a joint of 1/4 x 1/4 in covers about
    /// 24 to 27 ft; and its volumes: 10.1 oz are 18.3 in³.
    #[test]
    fn published_joint_length() {
        let side = Length::new::<inch>(0.25);
        let feet = groove(side).length_of(fluid_ounces(10.0)).unwrap().get::<foot>();
        assert!((24.0..=27.0).contains(&feet), "{feet}");
        let cubic_inches = fluid_ounces(10.1).get::<milliliter>() / 16.387_064;
        assert!((cubic_inches - 18.3).abs() < 0.1, "{cubic_inches}");
    }

    #[test]
    fn shapes_compare() {
        let side = Length::new::<millimeter>(6.0);
        let section = |bead: Bead| bead.section().unwrap().get::<square_millimeter>();
        assert!(
            (section(Bead::HalfRound { diameter: side }) * 2.0 - section(round(side))).abs() < 1e-9
        );
        assert!(
            (section(Bead::Fillet { width: side, depth: side }) * 2.0 - section(groove(side)))
                .abs()
                < 1e-9
        );
        let diameter = round_of_section(round(side).section().unwrap()).unwrap();
        assert!((diameter.get::<millimeter>() - 6.0).abs() < 1e-9);
    }

    #[test]
    fn whole_cartridges() {
        let cartridge = Volume::new::<milliliter>(300.0);
        let count = |ml| cartridges(Volume::new::<milliliter>(ml), cartridge).unwrap();
        assert_eq!([count(0.0), count(299.0), count(600.000_000_01), count(601.0)], [0, 1, 2, 3]);
    }

    proptest! {
        #[test]
        fn any_input_gives_a_finite_answer_or_a_fault(
            a in any::<f64>(),
            b in any::<f64>(),
            c in any::<f64>(),
            d in 0.1..100.0,
        ) {
            let bead = Bead::Fillet { width: Length::new::<millimeter>(a), depth: Length::new::<millimeter>(d) };
            for bead in [bead, round(Length::new::<millimeter>(d)), round(Length::new::<millimeter>(b))] {
                let volume = bead.volume(Length::new::<meter>(b), Ratio::new::<percent>(c)).map(|v| v.value);
                let length = bead.length_of(Volume::new::<milliliter>(c)).map(|v| v.value);
                for value in [volume, length] {
                    prop_assert!(value.is_err() || value.is_ok_and(|v| v.is_finite() && v >= 0.0));
                }
            }
            let _ = cartridges(Volume::new::<milliliter>(a), Volume::new::<milliliter>(b));
        }
    }
}
