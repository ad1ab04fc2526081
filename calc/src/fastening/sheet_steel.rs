//! Sheet steel: thickness by gauge, and what a screw holds in it.

use uom::si::f64::{Force, Length, Pressure};
use uom::si::length::{inch, millimeter};
use uom::si::pressure::megapascal;

use crate::coating::range::{OutOfRange, within};
use crate::formula::{Formula as _, formula};
use crate::source::Source;
use crate::words::range as names;

/// Manufacturers' Standard Gauge of steel sheet: weight in lb/ft² over 41.82 is the thickness in
/// inches.
pub static GAUGE: Source = Source::transcribed(
    "Manufacturers' Standard Gauge; weights of 15 USC 206",
    "lb/ft2 / 41.82 = inches",
);

/// Galvanised sheet: 2.5 oz/ft² more.
pub static GALVANISED_GAUGE: Source = Source::identity(
    "(weight of the gauge + 2.5 oz/ft2) / 41.82, as galvanised-sheet tables print it",
);

/// Pull-out and pull-over of screws in sheet steel.
pub static PULL_OUT: Source = Source::transcribed(
    "AISI S100, section E4 (J4 in later editions)",
    "pull-out 0.85 t d Fu, pull-over 1.5 t dw Fu, shear 4.2 (t3 d)1/2 Fu, safety factor 3",
);

/// The safety factor of [`PULL_OUT`] for allowable loads.
pub const SAFETY_FACTOR: f64 = 3.0;

formula! {
    /// What one screw may hold before it pulls out of the sheet that it is threaded into.
    PullOut: "P = 0.85 · t · d · Fu / 3", &PULL_OUT;
    |of| 0.85 * of.sheet * of.screw * of.strength / SAFETY_FACTOR => Force as force;
    /// Thickness of the sheet.
    "t" as small: sheet: Length,
    /// Outside diameter of the screw.
    "d" as small: screw: Length,
    /// Tensile strength of the steel.
    "Fu" as megapascals: strength: Pressure,
}

/// Kinds of sheet that a gauge number may mean.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sheet {
    /// Bare steel, Manufacturers' Standard Gauge.
    Bare,
    /// Galvanised steel.
    Galvanised,
}

/// The thickness of bare steel of a gauge: an even number from 10 to 26. Source: [`GAUGE`].
pub fn gauge_thickness(gauge: u8) -> Option<Length> {
    sheet_thickness(gauge, Sheet::Bare)
}

/// The thickness of a gauge of either sheet. Sources: [`GAUGE`], [`GALVANISED_GAUGE`].
pub fn sheet_thickness(gauge: u8, sheet: Sheet) -> Option<Length> {
    let (_, weight) = WEIGHTS_LB_FT2.iter().find(|(number, _)| *number == gauge)?;
    let zinc = match sheet {
        Sheet::Bare => 0.0,
        Sheet::Galvanised => 2.5 / 16.0,
    };
    Some(Length::new::<inch>((weight + zinc) / 41.82))
}

/// What one screw may hold in sheet steel; ultimate strength over the safety factor. Source:
/// [`PULL_OUT`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Allowable {
    /// Pulled out of the sheet that it is threaded into.
    pub pull_out: Force,
    /// Its head pulled through the sheet under it.
    pub pull_over: Force,
    /// Sheared, where the sheet that it is threaded into lets it tilt or tears.
    pub shear: Force,
}

/// What one screw may hold, with the sheet under its head as thick and of the same steel as the
/// one that it is threaded into. Source: [`PULL_OUT`].
///
/// The formulas are for steel of known strength, at least 230 MPa (33 ksi): what a vehicle's skin
/// is made of is not known, so take this as the best that can be hoped for.
///
/// # Errors
/// Sheet from 0.3 to 7 mm, screw from 2 to 6.4 mm (0.08 to 0.25 in), head or washer from the
/// screw's diameter to 19.1 mm, strength from 230 to 700 MPa.
pub fn allowable(
    sheet: Length,
    screw: Length,
    head: Length,
    strength: Pressure,
) -> Result<Allowable, OutOfRange> {
    let t = within(names::SHEET, sheet.get::<millimeter>(), 0.3, 7.0, "mm")?;
    let d = within(names::SCREW_DIAMETER, screw.get::<millimeter>(), 2.0, 6.4, "mm")?;
    within(names::HEAD_DIAMETER, head.get::<millimeter>(), d, 19.1, "mm")?;
    within(names::TENSILE_STRENGTH, strength.get::<megapascal>(), 227.0, 700.0, "MPa")?;
    let tilting = screw * sheet * (t / d).sqrt() * 4.2;
    let bearing = 2.7 * sheet * screw;
    Ok(Allowable {
        pull_out: PullOut { sheet, screw, strength }.value(),
        pull_over: 1.5 * sheet * head * strength / SAFETY_FACTOR,
        shear: tilting.min(bearing) * strength / SAFETY_FACTOR,
    })
}

/// 15 USC 206; 24 and 26 from memory.
const WEIGHTS_LB_FT2: [(u8, f64); 9] = [
    (10, 5.625),
    (12, 4.375),
    (14, 3.125),
    (16, 2.5),
    (18, 2.0),
    (20, 1.5),
    (22, 1.25),
    (24, 1.0),
    (26, 0.75),
];

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use uom::si::force::newton;

    use super::*;

    const LBF_N: f64 = 4.448_221_615_260_5;
    const KSI_MPA: f64 = 6.894_757_293_168;

    fn inches(value: f64) -> Length {
        Length::new::<inch>(value)
    }

    fn pounds(t: f64, d: f64, head: f64, ksi: f64) -> [f64; 3] {
        let strength = Pressure::new::<megapascal>(ksi * KSI_MPA);
        let got = allowable(inches(t), inches(d), inches(head), strength).unwrap();
        [got.shear, got.pull_out, got.pull_over].map(|force| force.get::<newton>() / LBF_N)
    }

    /// Printed gauge tables: Manufacturers' Standard and galvanised sheet.
    #[test]
    fn printed_gauge_tables() {
        for (gauge, bare, galvanised) in [
            (10, 0.1345, 0.1382),
            (12, 0.1046, 0.1084),
            (14, 0.0747, 0.0785),
            (16, 0.0598, 0.0635),
            (18, 0.0478, 0.0516),
            (20, 0.0359, 0.0396),
            (22, 0.0299, 0.0336),
            (24, 0.0239, 0.0276),
            (26, 0.0179, 0.0217),
        ] {
            let got = gauge_thickness(gauge).unwrap().get::<inch>();
            assert!((got - bare).abs() < 1e-4, "{gauge} ga: {got}");
            let got = sheet_thickness(gauge, Sheet::Galvanised).unwrap().get::<inch>();
            assert!((got - galvanised).abs() < 1e-4, "{gauge} ga galvanised: {got}");
        }
        assert_eq!(gauge_thickness(15), None);
    }

    /// ICC-ES ESR-1976, table 2: allowable pull-out, Fu 45 ksi.
    #[test]
    fn published_pull_out() {
        let thicknesses =
            [0.018, 0.024, 0.030, 0.036, 0.048, 0.060, 0.075, 0.105, 0.125, 0.187, 0.250];
        for (d, row) in [
            (0.190, &[44.0, 58.0, 73.0, 87.0, 116.0, 145.0, 182.0, 254.0, 303.0][..]),
            (0.216, &[50.0, 66.0, 83.0, 99.0, 132.0, 165.0, 207.0, 289.0, 344.0, 515.0, 689.0]),
            (0.250, &[57.0, 77.0, 96.0, 115.0, 153.0, 191.0, 239.0, 335.0, 398.0, 596.0, 797.0]),
        ] {
            for (t, printed) in thicknesses.iter().zip(row) {
                let got = pounds(*t, d, 0.4, 45.0)[1];
                assert!((got - printed).abs() <= 0.55, "{t} {d}: {got}, printed {printed}");
            }
        }
    }

    /// A stud maker's table on AISI S100: allowable shear, pull-out, pull-over in lb, Fu 33 ksi.
    #[test]
    fn published_stud_table() {
        for (t, d, head, printed) in [
            (0.0188, 0.138, 0.272, [44.0, 24.0, 84.0]),
            (0.0188, 0.164, 0.272, [48.0, 29.0, 84.0]),
            (0.0188, 0.190, 0.340, [52.0, 33.0, 105.0]),
            (0.0188, 0.216, 0.340, [55.0, 38.0, 105.0]),
            (0.0188, 0.250, 0.409, [60.0, 44.0, 127.0]),
            (0.0283, 0.138, 0.272, [82.0, 37.0, 127.0]),
            (0.0283, 0.190, 0.340, [96.0, 50.0, 159.0]),
            (0.0283, 0.250, 0.409, [110.0, 66.0, 191.0]),
        ] {
            for (got, printed) in pounds(t, d, head, 33.0).iter().zip(printed) {
                assert!((got - printed).abs() <= 1.0, "{t} {d}: {got}, printed {printed}");
            }
        }
    }

    proptest! {
        #[test]
        fn any_input_gives_finite_loads_or_a_fault(
            a in any::<f64>(),
            b in any::<f64>(),
            c in any::<f64>(),
            d in 2.0..6.0,
        ) {
            let mm = Length::new::<millimeter>;
            for (t, screw, head, strength) in [(a, b, c, d), (1.0, d, a, 300.0), (d, d, d + 1.0, a)] {
                if let Ok(got) = allowable(mm(t), mm(screw), mm(head), Pressure::new::<megapascal>(strength)) {
                    prop_assert!(got.pull_out.value.is_finite() && got.pull_out.value > 0.0 && got.shear.value.is_finite());
                }
            }
        }
    }
}
