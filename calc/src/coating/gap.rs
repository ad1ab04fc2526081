//! Volumes of what a filler goes into: joints, plain holes, countersunk holes, plugged holes.

use std::f64::consts::PI;

use uom::si::f64::{Length, Ratio, Volume};
use uom::si::length::millimeter;
use uom::si::ratio::percent;

use super::film::with_loss;
use super::range::{OutOfRange, within};
use crate::formula::{Formula as _, formula};
use crate::source::Source;
use crate::words::{Id, range as names, wet as words};

/// Box, cylinder and cone frustum.
pub static VOLUMES: Source = Source::identity_of(words::SOURCE_VOLUMES);

/// What shrinks by a share must be filled by so much more: needed = net / (1 - shrink) / (1 -
/// loss).
pub static SHRINKAGE: Source = Source::identity_of(words::SOURCE_SHRINKAGE);

/// A hole to be filled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Hole {
    /// As wide at the bottom as at the top.
    Plain {
        /// Across the hole.
        diameter: Length,
        /// How deep it is.
        depth: Length,
    },
    /// Filled above a countersunk screw head: widest at the surface.
    Countersunk {
        /// Across the cone at the surface.
        top: Length,
        /// Across the cone at its bottom; zero where it comes to a point.
        bottom: Length,
        /// How deep the cone is.
        depth: Length,
    },
    /// A hole that takes a plug: only the ring of glue round it and the room below it are filled.
    Plugged {
        /// Across the hole.
        diameter: Length,
        /// How deep it is.
        depth: Length,
        /// Across the plug; not more than the hole.
        plug_diameter: Length,
        /// How long the plug is; not more than the hole is deep.
        plug_length: Length,
    },
}

/// The volume of a joint. Source: [`VOLUMES`].
///
/// # Errors
/// Length from 0 to 100 000 mm, width and depth from 0 to 1000 mm.
pub fn joint(length: Length, width: Length, depth: Length) -> Result<Volume, OutOfRange> {
    within(names::GAP_LENGTH, length.get::<millimeter>(), 0.0, 100_000.0, "mm")?;
    size(names::GAP_WIDTH, width)?;
    size(names::GAP_DEPTH, depth)?;
    Ok(length * width * depth)
}

/// The volume of a hole that is left to be filled. Source: [`VOLUMES`].
///
/// # Errors
/// Every size from 0 to 1000 mm; a plug no larger than its hole.
pub fn hole(hole: Hole) -> Result<Volume, OutOfRange> {
    match hole {
        Hole::Plain { diameter, depth } => {
            size(names::HOLE_DIAMETER, diameter)?;
            size(names::HOLE_DEPTH, depth)?;
            Ok(PI / 4.0 * diameter * diameter * depth)
        }
        Hole::Countersunk { top, bottom, depth } => {
            size(names::COUNTERSINK_DIAMETER, top)?;
            size(names::DIAMETER_AT_THE_BOTTOM, bottom)?;
            size(names::COUNTERSINK_DEPTH, depth)?;
            Ok(PI / 12.0 * depth * (top * top + top * bottom + bottom * bottom))
        }
        Hole::Plugged { diameter, depth, plug_diameter, plug_length } => {
            let across = size(names::HOLE_DIAMETER, diameter)?;
            let deep = size(names::HOLE_DEPTH, depth)?;
            within(names::PLUG_DIAMETER, plug_diameter.get::<millimeter>(), 0.0, across, "mm")?;
            within(names::PLUG_LENGTH, plug_length.get::<millimeter>(), 0.0, deep, "mm")?;
            let plug = plug_diameter * plug_diameter * plug_length;
            Ok(PI / 4.0 * (diameter * diameter * depth - plug))
        }
    }
}

/// What must be mixed so that `net` is filled once it has shrunk. Source: [`SHRINKAGE`].
///
/// # Errors
/// Net from 0 to 1e9 l, shrinkage from 0 to 80 %, loss from 0 to 95 %.
pub fn with_shrinkage_and_loss(
    net: Volume,
    shrinkage: Ratio,
    loss: Ratio,
) -> Result<Volume, OutOfRange> {
    let shrink_percent = shrinkage.get::<percent>();
    within(names::SHRINKAGE, shrink_percent, 0.0, 80.0, "%")?;
    // The ranges of net and loss are those of any amount that some of is lost of.
    with_loss(net, loss)?;
    Ok(Mixed { net, shrink_percent, loss_percent: loss.get::<percent>() }.value())
}

formula! {
    /// What must be mixed, within the ranges of [`with_shrinkage_and_loss`].
    Mixed: "V = N / (1 − s) / (1 − w)", &SHRINKAGE;
    |of| {
        let whole = Ratio::new::<percent>(100.0);
        let shrinkage = Ratio::new::<percent>(of.shrink_percent).get::<percent>();
        let had = of.net / (whole - Ratio::new::<percent>(of.loss_percent)) * whole;
        had / (1.0 - shrinkage / 100.0)
    } => Volume as volume_needed_both;
    /// What is filled.
    "N" as volume_needed: net: Volume,
    /// What is lost of it as it sets, in percent, below 100.
    "s" as percent: shrink_percent: f64,
    /// What stays in cups or runs away, in percent, below 100.
    "w" as percent: loss_percent: f64,
}

fn size(what: Id, length: Length) -> Result<f64, OutOfRange> {
    within(what, length.get::<millimeter>(), 0.0, 1000.0, "mm")
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use uom::si::length::inch;
    use uom::si::volume::milliliter;

    use super::*;

    fn mm(value: f64) -> Length {
        Length::new::<millimeter>(value)
    }

    fn ml(volume: Volume) -> f64 {
        volume.get::<milliliter>()
    }

    /// By the formula: 10 x 18 mm, 1/2 x 3/4 in, and a joint of 3 x 18 x 2400 mm.
    #[test]
    fn volumes_by_hand() {
        let plain = |diameter, depth| ml(hole(Hole::Plain { diameter, depth }).unwrap());
        assert!((plain(mm(10.0), mm(18.0)) - 1.414).abs() < 5e-4);
        assert!((plain(Length::new::<inch>(0.5), Length::new::<inch>(0.75)) - 2.413).abs() < 5e-4);
        assert!((ml(joint(mm(2400.0), mm(3.0), mm(18.0)).unwrap()) - 129.6).abs() < 1e-9);
        let cone = Hole::Countersunk { top: mm(10.0), bottom: mm(0.0), depth: mm(3.0) };
        assert!((ml(hole(cone).unwrap()) - PI * 100.0 * 3.0 / 12.0 / 1000.0).abs() < 1e-12);
        let straight = Hole::Countersunk { top: mm(10.0), bottom: mm(10.0), depth: mm(18.0) };
        assert!((ml(hole(straight).unwrap()) - plain(mm(10.0), mm(18.0))).abs() < 1e-12);
        let plugged = |plug_diameter, plug_length| {
            let (diameter, depth) = (mm(10.0), mm(18.0));
            ml(hole(Hole::Plugged { diameter, depth, plug_diameter, plug_length }).unwrap())
        };
        assert!(plugged(mm(10.0), mm(18.0)).abs() < 1e-12);
        assert!((plugged(mm(10.0), mm(9.0)) - plain(mm(10.0), mm(9.0))).abs() < 1e-12);
    }

    #[test]
    fn shrinkage_and_loss_both_divide() {
        let share = Ratio::new::<percent>;
        let got =
            with_shrinkage_and_loss(Volume::new::<milliliter>(72.0), share(20.0), share(10.0));
        assert!((ml(got.unwrap()) - 100.0).abs() < 1e-9);
    }

    #[test]
    fn a_plug_larger_than_its_hole_is_refused() {
        let (diameter, depth, plug_length) = (mm(10.0), mm(10.0), mm(10.0));
        assert!(
            hole(Hole::Plugged { diameter, depth, plug_diameter: mm(11.0), plug_length }).is_err()
        );
    }

    proptest! {
        #[test]
        fn any_input_gives_a_finite_volume_or_a_fault(
            a in any::<f64>(),
            b in 0.0..1000.0,
            c in any::<f64>(),
            d in any::<f64>(),
        ) {
            let (a, b, c, d) = (mm(a), mm(b), mm(c), mm(d));
            for volume in [
                joint(a, b, c),
                hole(Hole::Plain { diameter: b, depth: c }),
                hole(Hole::Countersunk { top: b, bottom: a, depth: c }),
                hole(Hole::Plugged { diameter: b, depth: b, plug_diameter: c, plug_length: d }),
            ] {
                prop_assert!(volume.is_err() || volume.is_ok_and(|v| v.value.is_finite() && v.value >= -1e-18));
            }
        }
    }
}
