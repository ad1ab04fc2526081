//! Coats on a surface: wet and dry film, spread rate, and the amount that they take.

use uom::si::area::square_meter;
use uom::si::f64::{Area, Length, Ratio, ReciprocalLength, Volume};
use uom::si::length::micrometer;
use uom::si::ratio::percent;
use uom::si::reciprocal_length::reciprocal_meter;
use uom::si::volume::liter;

use super::range::{OutOfRange, within};
use crate::formula::{Formula as _, formula};
use crate::source::Source;
use crate::words::{range as names, wet as words};

/// Wet film and spread rate are each other's reciprocal: a volume spread over an area has one
/// thickness. With 1 US gal = 231 in³ exactly, 1 gal at 1 mil covers 231 / 0.144 = 1604.17 ft²; 1
/// l at 1 µm covers 1000 m².
pub static SPREAD_RATE: Source = Source::identity_of(words::SOURCE_SPREAD_RATE);

/// Only the solids stay: dry film = wet film x solids, thinned by T: x solids / (1 + T).
pub static SOLIDS: Source = Source::identity_of(words::SOURCE_SOLIDS);

/// The share that is lost never reaches the surface: needed = net / (1 - loss).
pub static LOSS: Source = Source::identity_of(words::SOURCE_LOSS);

/// What is taken where nobody says how much is lost.
pub static USUAL_LOSS: Source = Source::practice_of(words::SOURCE_USUAL_LOSS);

/// What the amounts of one coating job are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Amount {
    /// The surface that all coats together cover: area x surface factor x coats.
    pub coated: Area,
    /// What stays on the surface, wet.
    pub net: Volume,
    /// What is used up, the loss included; as applied, so with the thinner in it.
    pub needed: Volume,
}

/// The wet film that a spread rate leaves. Source: [`SPREAD_RATE`].
///
/// # Errors
/// The rate must be from 0.01 to 10 000 m²/l (0.41 to 407 000 ft²/gal).
pub fn wet_film(spread_rate: ReciprocalLength) -> Result<Length, OutOfRange> {
    // m2 per l is mm-1, so per m it is 1000 times as much.
    let rate = spread_rate.get::<reciprocal_meter>() / 1000.0;
    within(names::SPREAD_RATE, rate, 0.01, 10_000.0, "m2/l")?;
    Ok(WetFilm { rate: spread_rate }.value())
}

/// The theoretical spread rate of a wet film. Source: [`SPREAD_RATE`].
///
/// # Errors
/// The wet film must be from 0.1 to 100 000 µm.
pub fn spread_rate(wet: Length) -> Result<ReciprocalLength, OutOfRange> {
    within(names::WET_FILM, wet.get::<micrometer>(), 0.1, 100_000.0, "um")?;
    Ok(SpreadRate { wet }.value())
}

/// The wet film that leaves a dry film: dry x (1 + thinner) / solids. Source: [`SOLIDS`].
///
/// `solids` is the share of solids by volume before thinning; `thinner` the share of thinner
/// added, of the volume thinned.
///
/// # Errors
/// The dry film must be from 0.1 to 50 000 µm, solids from 1 to 100 %, thinner from 0 to 300 %;
/// and so must what comes out be a wet film.
pub fn wet_for_dry(dry: Length, solids: Ratio, thinner: Ratio) -> Result<Length, OutOfRange> {
    within(names::DRY_FILM, dry.get::<micrometer>(), 0.1, 50_000.0, "um")?;
    solids_as_applied(solids, thinner)?;
    let wet = WetForDry { dry, thinner, solids }.value();
    within(names::WET_FILM, wet.get::<micrometer>(), 0.1, 100_000.0, "um")?;
    Ok(wet)
}

/// The dry film that a wet film leaves: wet x solids / (1 + thinner). Source: [`SOLIDS`].
///
/// # Errors
/// As [`spread_rate`] and [`wet_for_dry`].
pub fn dry_of_wet(wet: Length, solids: Ratio, thinner: Ratio) -> Result<Length, OutOfRange> {
    within(names::WET_FILM, wet.get::<micrometer>(), 0.1, 100_000.0, "um")?;
    Ok(wet * solids_as_applied(solids, thinner)?)
}

/// What `coats` coats of a wet film take on an area. Sources: [`SPREAD_RATE`], [`LOSS`].
///
/// `surface_factor` multiplies the area: 1 for a smooth surface, more for a rough one.
///
/// # Errors
/// Area from 0 to 100 000 m², coats from 1 to 50, surface factor from 1 to 10, loss from 0 to 95
/// %, wet film as [`spread_rate`].
pub fn amount(
    area: Area,
    coats: u32,
    wet: Length,
    surface_factor: f64,
    loss: Ratio,
) -> Result<Amount, OutOfRange> {
    within(names::AREA, area.get::<square_meter>(), 0.0, 100_000.0, "m2")?;
    within(names::NUMBER_OF_COATS, f64::from(coats), 1.0, 50.0, "")?;
    within(names::SURFACE_FACTOR, surface_factor, 1.0, 10.0, "")?;
    within(names::WET_FILM, wet.get::<micrometer>(), 0.1, 100_000.0, "um")?;
    let coated = area * surface_factor * f64::from(coats);
    let net = OnSurface { area, surface_factor, coats, wet }.value();
    Ok(Amount { coated, net, needed: with_loss(net, loss)? })
}

/// What must be had so that `net` arrives: net / (1 - loss). Source: [`LOSS`].
///
/// # Errors
/// Net from 0 to 1e9 l, loss from 0 to 95 %.
pub fn with_loss(net: Volume, loss: Ratio) -> Result<Volume, OutOfRange> {
    within(names::VOLUME, net.get::<liter>(), 0.0, 1e9, "l")?;
    within(names::LOSS, loss.get::<percent>(), 0.0, 95.0, "%")?;
    Ok(Needed { net, loss }.value())
}

/// The spread rate that is left of the theoretical one after losses: rate x (1 - loss). Source:
/// [`LOSS`].
///
/// # Errors
/// As [`wet_film`] and [`with_loss`].
pub fn practical_spread_rate(
    theoretical: ReciprocalLength,
    loss: Ratio,
) -> Result<ReciprocalLength, OutOfRange> {
    wet_film(theoretical)?;
    within(names::LOSS, loss.get::<percent>(), 0.0, 95.0, "%")?;
    Ok(theoretical * (1.0 - loss.get::<percent>() / 100.0))
}

/// How much of a thinned amount is paint from the can, and how much is thinner. Source: [`SOLIDS`].
///
/// # Errors
/// Thinner from 0 to 300 %, amount from 0 to 1e9 l.
pub fn paint_and_thinner(
    as_applied: Volume,
    thinner: Ratio,
) -> Result<(Volume, Volume), OutOfRange> {
    within(names::VOLUME, as_applied.get::<liter>(), 0.0, 1e9, "l")?;
    within(names::THINNER, thinner.get::<percent>(), 0.0, 300.0, "%")?;
    let paint = FromCan { as_applied, thinner }.value();
    Ok((paint, as_applied - paint))
}

formula! {
    /// The wet film that a spread rate leaves: see [`wet_film`].
    WetFilm: "t = 1 / s", &SPREAD_RATE;
    |of| 1.0 / of.rate => Length as film;
    /// What is covered by a volume.
    "s" as spread_rate: rate: ReciprocalLength,
}

formula! {
    /// The spread rate that leaves a wet film: see [`spread_rate`].
    SpreadRate: "s = 1 / t", &SPREAD_RATE;
    |of| 1.0 / of.wet => ReciprocalLength as spread_rate;
    /// Wet film of one coat.
    "t" as film: wet: Length,
}

formula! {
    /// The dry film that a wet film leaves where nothing thins it: see [`dry_of_wet`].
    DryFilm: "d = t · S", &SOLIDS;
    |of| of.wet * (of.solids.get::<percent>() / 100.0) => Length as film;
    /// Wet film of one coat.
    "t" as film: wet: Length,
    /// By volume.
    "S" as ratio: solids: Ratio,
}

formula! {
    /// The wet film that leaves a dry film: see [`wet_for_dry`].
    WetForDry: "t = d · (1 + T) / S", &SOLIDS;
    |of| {
        let [solids, thinner] = [of.solids, of.thinner].map(|share| share.get::<percent>());
        of.dry / (solids / 100.0 / (1.0 + thinner / 100.0))
    } => Length as film;
    /// Dry film of one coat.
    "d" as film: dry: Length,
    /// Of the volume that is thinned.
    "T" as ratio: thinner: Ratio,
    /// By volume, before thinning.
    "S" as ratio: solids: Ratio,
}

formula! {
    /// What all coats leave on the surface: see [`amount`].
    OnSurface: "N = A · f · n · t", &SPREAD_RATE;
    |of| of.area * of.surface_factor * f64::from(of.coats) * of.wet => Volume as volume_needed_both;
    /// What is coated.
    "A" as area: area: Area,
    /// 1 for a smooth surface, more for a rough one.
    "f" as factor: surface_factor: f64,
    /// How many coats.
    "n" as count: coats: u32,
    /// Wet film of one coat.
    "t" as film: wet: Length,
}

formula! {
    /// What goes into the wood, where no film stays on it: see [`amount`].
    IntoWood: "N = A · f · n / s", &SPREAD_RATE;
    |of| {
        of.area * of.surface_factor * f64::from(of.coats) * (1.0 / of.rate)
    } => Volume as volume_needed_both;
    /// What is coated.
    "A" as area: area: Area,
    /// 1 for a smooth surface, more for a rough one.
    "f" as factor: surface_factor: f64,
    /// How many coats.
    "n" as count: coats: u32,
    /// What is covered by a volume.
    "s" as spread_rate: rate: ReciprocalLength,
}

formula! {
    /// What must be had: see [`with_loss`].
    Needed: "V = N / (1 − w)", &LOSS;
    |of| {
        let whole = Ratio::new::<percent>(100.0);
        of.net / (whole - of.loss) * whole
    } => Volume as volume_needed_both;
    /// What is to arrive.
    "N" as volume_needed: net: Volume,
    /// Below 100 %.
    "w" as ratio: loss: Ratio,
}

formula! {
    /// What of a thinned amount comes from the can: see [`paint_and_thinner`].
    FromCan: "P = V / (1 + T)", &SOLIDS;
    |of| of.as_applied / (1.0 + of.thinner.get::<percent>() / 100.0) => Volume as volume_needed_both;
    /// With the thinner in it.
    "V" as volume_needed: as_applied: Volume,
    /// Of the volume that is thinned.
    "T" as ratio: thinner: Ratio,
}

fn solids_as_applied(solids: Ratio, thinner: Ratio) -> Result<f64, OutOfRange> {
    let solids = within(names::SOLIDS_BY_VOLUME, solids.get::<percent>(), 1.0, 100.0, "%")?;
    let thinner = within(names::THINNER, thinner.get::<percent>(), 0.0, 300.0, "%")?;
    Ok(solids / 100.0 / (1.0 + thinner / 100.0))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use uom::si::area::square_foot;
    use uom::si::length::mil;

    use super::*;

    fn share(value: f64) -> Ratio {
        Ratio::new::<percent>(value)
    }

    fn ft2_per_gal(rate: ReciprocalLength) -> f64 {
        let gallon = Volume::new::<liter>(3.785_411_784);
        let covered: Area = rate * gallon;
        covered.get::<square_foot>()
    }

    fn m2_per_l(rate: ReciprocalLength) -> f64 {
        rate.get::<reciprocal_meter>() / 1000.0
    }

    fn rate_mil(solids: f64, dry: f64) -> f64 {
        let wet = wet_for_dry(Length::new::<mil>(dry), share(solids), share(0.0)).unwrap();
        ft2_per_gal(spread_rate(wet).unwrap())
    }

    fn rate_um(solids: f64, dry: f64, thinner: f64) -> f64 {
        let wet =
            wet_for_dry(Length::new::<micrometer>(dry), share(solids), share(thinner)).unwrap();
        m2_per_l(spread_rate(wet).unwrap())
    }

    /// 231 in³ over 0.144 in² ft² mil: the definition of the US gallon, NIST HB 44, appendix C.
    #[test]
    fn a_gallon_at_one_mil() {
        let rate = ft2_per_gal(spread_rate(Length::new::<mil>(1.0)).unwrap());
        assert!((rate - 231.0 / 0.144).abs() < 1e-6, "{rate}");
    }

    /// Theoretical spread rates as coating makers publish them in their data sheets and coverage
    /// charts.
    #[test]
    fn makers_published_spread_rates() {
        for (solids, dry, printed, places) in
            [(65.0, 5.0, 208.5, 0.05), (35.0, 2.0, 281.0, 0.5), (100.0, 10.0, 160.417, 0.001)]
        {
            let rate = rate_mil(solids, dry);
            assert!((rate - printed).abs() <= places, "{solids} % {dry} mil: {rate}");
        }
        for (solids, dry, thinner, printed, places) in [
            (65.0, 125.0, 0.0, 5.2, 1e-9),
            (100.0, 25.0, 0.0, 40.0, 1e-9),
            (70.0, 175.0, 0.0, 4.0, 1e-9),
            (50.0, 75.0, 0.0, 6.7, 0.05),
            (45.0, 60.0, 0.0, 7.5, 1e-9),
            // Printed 7.57: cut short, not rounded.
            (50.0, 60.0, 10.0, 7.57, 0.01),
        ] {
            let rate = rate_um(solids, dry, thinner);
            assert!((rate - printed).abs() <= places, "{solids} % {dry} um: {rate}");
        }
    }

    /// A coating maker's example: 50 % solids, 60 µm dry, 10 % thinner, 30 % lost. Printed 5.299,
    /// worked on from its own 7.57.
    #[test]
    fn practical_rate_and_loss_agree() {
        let wet = wet_for_dry(Length::new::<micrometer>(60.0), share(50.0), share(10.0)).unwrap();
        let practical = practical_spread_rate(spread_rate(wet).unwrap(), share(30.0)).unwrap();
        assert!((m2_per_l(practical) - 5.299).abs() < 0.005);
        let area = Area::new::<square_meter>(100.0);
        let needed = amount(area, 1, wet, 1.0, share(30.0)).unwrap().needed;
        assert!((needed.get::<liter>() - 100.0 / m2_per_l(practical)).abs() < 1e-9);
    }

    /// A floor-finish maker's statement: 400 ft²/gal is 4 mil wet; at 50 % solids, 2 mil dry.
    #[test]
    fn floor_finish_film() {
        let gallon = Volume::new::<liter>(3.785_411_784);
        let rate: ReciprocalLength = Area::new::<square_foot>(400.0) / gallon;
        let wet = wet_film(rate).unwrap();
        assert!((wet.get::<mil>() - 4.0).abs() < 0.02);
        let dry = dry_of_wet(wet, share(50.0), share(0.0)).unwrap();
        assert!((dry.get::<mil>() - 2.0).abs() < 0.01);
        // 35 % solids, 10 % thinner, 2.8 mil dry is 8.8 mil wet, as published.
        let wet = wet_for_dry(Length::new::<mil>(2.8), share(35.0), share(10.0)).unwrap();
        assert!((wet.get::<mil>() - 8.8).abs() < 0.01);
    }

    #[test]
    fn rough_surfaces_and_coats_multiply() {
        let wet = Length::new::<micrometer>(100.0);
        let got = amount(Area::new::<square_meter>(12.0), 3, wet, 1.25, share(10.0)).unwrap();
        assert!((got.coated.get::<square_meter>() - 45.0).abs() < 1e-9);
        assert!((got.net.get::<liter>() - 4.5).abs() < 1e-9);
        assert!((got.needed.get::<liter>() - 5.0).abs() < 1e-9);
    }

    #[test]
    fn thinner_is_not_paint() {
        let (paint, thinner) = paint_and_thinner(Volume::new::<liter>(2.2), share(10.0)).unwrap();
        assert!((paint.get::<liter>() - 2.0).abs() < 1e-12);
        assert!((thinner.get::<liter>() - 0.2).abs() < 1e-12);
    }

    proptest! {
        #[test]
        fn any_input_gives_a_finite_answer_or_a_fault(
            a in any::<f64>(),
            b in any::<f64>(),
            c in any::<f64>(),
            d in any::<f64>(),
            n in any::<u32>(),
        ) {
            let (wet, rate) = (Length::new::<micrometer>(a), ReciprocalLength::new::<reciprocal_meter>(a));
            for value in [
                wet_film(rate).map(|v| v.value),
                spread_rate(wet).map(|v| v.value),
                wet_for_dry(wet, share(b), share(c)).map(|v| v.value),
                dry_of_wet(wet, share(b), share(c)).map(|v| v.value),
                practical_spread_rate(rate, share(b)).map(|v| v.value),
                with_loss(Volume::new::<liter>(a), share(b)).map(|v| v.value),
                paint_and_thinner(Volume::new::<liter>(a), share(b)).map(|v| v.0.value + v.1.value),
                amount(Area::new::<square_meter>(b), n % 60, wet, c, share(d)).map(|v| v.needed.value),
            ] {
                prop_assert!(value.is_err() || value.is_ok_and(|v| v.is_finite() && v >= 0.0));
            }
        }

        #[test]
        fn film_and_rate_go_back_and_forth(
            dry in 1.0..1000.0,
            solids in 5.0..100.0,
            thinner in 0.0..50.0,
        ) {
            let dry = Length::new::<micrometer>(dry);
            let wet = wet_for_dry(dry, share(solids), share(thinner)).unwrap();
            let back = dry_of_wet(wet, share(solids), share(thinner)).unwrap();
            prop_assert!(((back / dry).value - 1.0).abs() < 1e-12);
            let back = wet_film(spread_rate(wet).unwrap()).unwrap();
            prop_assert!(((back / wet).value - 1.0).abs() < 1e-12);
        }
    }
}
