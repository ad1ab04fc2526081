//! How wood grows and shrinks across the grain with its moisture.

use uom::si::f64::Length;
use uom::si::length::millimeter;

use crate::formula::formula;
use crate::source::Source;
use crate::words::{Id, Msg, carpentry as words};

/// Change of dimension by a coefficient.
pub static CHANGE: Source = Source::transcribed_of(words::SOURCE_CHANGE);
/// Coefficients from total shrinkage: C = S / (3000 - 20 S), which gives table 13-5 back on every species tried.
pub static COEFFICIENT: Source = Source::transcribed_of(words::SOURCE_COEFFICIENT);
/// Shrinkage values that nobody has looked up again.
pub static COEFFICIENT_FROM_MEMORY: Source =
    Source::from_memory_of(words::SOURCE_COEFFICIENT_RECALLED);
/// Change of dimension over a wider range of moisture.
pub static WIDE_CHANGE: Source = Source::from_memory_of(words::SOURCE_WIDE_CHANGE);

/// Moisture contents that equation 13-2 holds for. [%]
pub const COEFFICIENT_RANGE: (f64, f64) = (6.0, 14.0);
/// Above this wood does not grow further. [%]
pub const FIBRE_SATURATION: f64 = 30.0;

/// One species' coefficients of dimensional change, for each percent of moisture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Species {
    /// Trade name, as it is typed and kept.
    pub name: &'static str,
    /// The same as it stands in a sentence.
    pub said: Id,
    /// Across the growth rings; quarter-sawn boards move so in width.
    pub radial: f64,
    /// Along the growth rings; flat-sawn boards move so in width.
    pub tangential: f64,
    /// Where the coefficients come from.
    pub source: &'static Source,
}

const fn species(
    name: &'static str,
    said: Id,
    radial: f64,
    tangential: f64,
    source: &'static Source,
) -> Species {
    Species { name, said, radial, tangential, source }
}

/// Short for the table.
const RECALLED: &Source = &COEFFICIENT_FROM_MEMORY;

/// Species for ceilings, floors and furniture, by name.
pub static SPECIES: [Species; 18] = [
    species("alder, red", words::WOOD_ALDER_RED, 0.001_51, 0.002_56, &CHANGE),
    species("beech", words::WOOD_BEECH, 0.001_90, 0.004_31, &CHANGE),
    species("cherry", words::WOOD_CHERRY, 0.001_26, 0.002_48, &CHANGE),
    species("Douglas-fir, coast", words::WOOD_DOUGLAS_FIR_COAST, 0.001_65, 0.002_67, &COEFFICIENT),
    species("fir, balsam", words::WOOD_FIR_BALSAM, 0.000_99, 0.002_41, &COEFFICIENT),
    species("fir, grand", words::WOOD_FIR_GRAND, 0.001_16, 0.002_63, &COEFFICIENT),
    species("fir, white", words::WOOD_FIR_WHITE, 0.001_12, 0.002_45, &COEFFICIENT),
    species("maple, sugar", words::WOOD_MAPLE_SUGAR, 0.001_65, 0.003_53, &CHANGE),
    species("oak, red", words::WOOD_OAK_RED, 0.001_58, 0.003_69, &CHANGE),
    species("pine, eastern white", words::WOOD_PINE_EASTERN_WHITE, 0.000_71, 0.002_12, RECALLED),
    species("pine, loblolly", words::WOOD_PINE_LOBLOLLY, 0.001_65, 0.002_59, RECALLED),
    species("pine, lodgepole", words::WOOD_PINE_LODGEPOLE, 0.001_48, 0.002_34, RECALLED),
    species("pine, longleaf", words::WOOD_PINE_LONGLEAF, 0.001_76, 0.002_63, RECALLED),
    species("pine, ponderosa", words::WOOD_PINE_PONDEROSA, 0.001_33, 0.002_16, RECALLED),
    species("redcedar, western", words::WOOD_REDCEDAR_WESTERN, 0.000_81, 0.001_72, &COEFFICIENT),
    species("spruce, Engelmann", words::WOOD_SPRUCE_ENGELMANN, 0.001_30, 0.002_48, RECALLED),
    species("spruce, Sitka", words::WOOD_SPRUCE_SITKA, 0.001_48, 0.002_63, RECALLED),
    species("walnut, black", words::WOOD_WALNUT_BLACK, 0.001_90, 0.002_74, &CHANGE),
];

formula! {
    /// How much a width grows from one moisture content to another; it never shrinks by it.
    Swelling: "ΔD = D · C · (M₂ − M₁)", &CHANGE;
    |of| Length::new::<millimeter>(of.mm()) => Length as small;
    /// The width.
    "D" as mark: width: Length,
    /// Of dimensional change, for each percent of moisture.
    "C" as coefficient: coefficient: f64,
    /// The moisture content that it begins at, the drier one. [%]
    "M₁" as percent: from_percent: f64,
    /// The one that it comes to. [%]
    "M₂" as percent: to_percent: f64,
}

impl Swelling {
    /// What it gives. [mm]
    pub fn mm(&self) -> f64 {
        let width_mm = self.width.get::<millimeter>();
        least_gap_mm(width_mm, self.coefficient, self.from_percent, self.to_percent)
    }
}

/// How a board moves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Movement {
    /// Growth; below zero it shrinks. [mm]
    pub change_mm: f64,
    /// False when a moisture content lies outside [`COEFFICIENT_RANGE`]: the coefficient then only gives the order of size.
    pub in_range: bool,
}

/// Movement of a width from one moisture content to another [%], by a coefficient: equation 13-2.
pub fn movement(width_mm: f64, coefficient: f64, from_percent: f64, to_percent: f64) -> Movement {
    let (low, high) = COEFFICIENT_RANGE;
    let inside = |percent: f64| (low..=high).contains(&percent);
    Movement {
        change_mm: finite(width_mm * coefficient * (to_percent - from_percent)),
        in_range: inside(from_percent) && inside(to_percent),
    }
}

/// Movement by total shrinkage from green to oven-dry [%], for 0 to 30 % moisture: equation 13-3. [mm]
pub fn wide_movement_mm(
    width_mm: f64,
    shrinkage_percent: f64,
    from_percent: f64,
    to_percent: f64,
) -> f64 {
    let from = from_percent.clamp(0.0, FIBRE_SATURATION);
    let to = to_percent.clamp(0.0, FIBRE_SATURATION);
    finite(
        width_mm * (to - from)
            / (FIBRE_SATURATION * 100.0 / shrinkage_percent - FIBRE_SATURATION + from),
    )
}

/// Coefficient of dimensional change from total shrinkage [%]: C = S / (3000 - 20 S).
pub fn coefficient(shrinkage_percent: f64) -> f64 {
    finite(shrinkage_percent / (3000.0 - 20.0 * shrinkage_percent))
}

/// The least gap to leave between boards that are laid drier than they will become; zero where they will only shrink. [mm]
pub fn least_gap_mm(
    width_mm: f64,
    coefficient: f64,
    laid_percent: f64,
    wettest_percent: f64,
) -> f64 {
    movement(width_mm, coefficient, laid_percent, wettest_percent).change_mm.max(0.0)
}

fn finite(value: f64) -> f64 {
    if value.is_finite() { value } else { 0.0 }
}

/// The wood of the table that a text names.
///
/// # Errors
/// There is none of this name.
pub fn wood(text: &str) -> Result<&'static Species, Msg> {
    let wanted = text.trim();
    SPECIES.iter().find(|one| one.name.eq_ignore_ascii_case(wanted)).ok_or_else(|| {
        // The names are what is typed, in every language; with commas in them, they are set apart by semicolons.
        let names: Vec<&str> = SPECIES.iter().map(|one| one.name).collect();
        words::WoodUnknown { names: names.join("; ") }.into()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(name: &str) -> Species {
        *SPECIES.iter().find(|species| species.name == name).unwrap()
    }

    /// Wood Handbook FPL-GTR-190 p. 13-18: white fir, 232 mm (9.15 in), 3 % more moisture, grows 1.7 mm (0.067 in).
    #[test]
    fn the_handbook_example_comes_out() {
        let fir = of("fir, white");
        let metric = movement(232.0, fir.tangential, 8.0, 11.0);
        assert!((metric.change_mm - 1.7).abs() < 0.05 && metric.in_range, "{metric:?}");
        let inches = movement(9.15, fir.tangential, 8.0, 11.0).change_mm;
        assert!((inches - 0.067).abs() < 5e-4, "{inches}");
        let wide = wide_movement_mm(232.0, 7.0, 8.0, 11.0);
        assert!((wide - 1.712).abs() < 5e-4, "{wide}");
    }

    /// A flooring association's page on equation 13-2: mesquite (.00129), 5 in, 6 to 9 %, grows 0.019 in.
    #[test]
    fn the_flooring_example_comes_out() {
        let change = movement(5.0, 0.001_29, 6.0, 9.0).change_mm;
        assert!((change - 0.019).abs() < 5e-4, "{change}");
    }

    /// Wood Handbook tables 4-3 (total shrinkage) and 13-5 (coefficients), radial and tangential.
    #[test]
    fn shrinkage_gives_the_table_coefficients() {
        for (name, radial, tangential) in [
            ("alder, red", 4.4, 7.3),
            ("beech", 5.5, 11.9),
            ("walnut, black", 5.5, 7.8),
            ("cherry", 3.7, 7.1),
            ("Douglas-fir, coast", 4.8, 7.6),
            ("fir, white", 3.3, 7.0),
            ("redcedar, western", 2.4, 5.0),
        ] {
            let species = of(name);
            assert!((coefficient(radial) - species.radial).abs() < 6e-6, "{name} radial");
            assert!(
                (coefficient(tangential) - species.tangential).abs() < 6e-6,
                "{name} tangential"
            );
        }
    }

    #[test]
    fn out_of_range_is_said_and_nothing_is_infinite() {
        assert!(!movement(100.0, 0.002, 5.0, 9.0).in_range);
        assert!(wide_movement_mm(100.0, 0.0, 8.0, 11.0).is_finite());
        assert!(coefficient(150.0).is_finite());
        assert_eq!(least_gap_mm(100.0, 0.002, 12.0, 8.0), 0.0);
        assert!((least_gap_mm(100.0, 0.002, 8.0, 12.0) - 0.8).abs() < 1e-12);
    }
}
