//! Densities for weighing what is bought before it is on the scales.

use uom::si::f64::{Area, Length, Mass, MassDensity};
use uom::si::mass_density::kilogram_per_cubic_meter;

use crate::quantity::{MASS_DENSITY, Measure};
use crate::source::Source;
use crate::words::{Arg, Msg, stock as words};

/// A density, or the range a publication gives; both ends equal where it gives one value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Density {
    /// Plain name.
    pub name: &'static str,
    /// Lower end, kg/m³.
    pub low_kg_m3: f64,
    /// Upper end, kg/m³.
    pub high_kg_m3: f64,
    /// Where both were read.
    pub source: Source,
}

impl Density {
    /// Middle of the range, kg/m³.
    pub fn mean_kg_m3(&self) -> f64 {
        (self.low_kg_m3 + self.high_kg_m3) / 2.0
    }
}

/// Mass = density x volume.
pub static MASS_OF_VOLUME: Source = Source::identity_of(words::SOURCE_MASS);

/// The mean density of a material of [`DENSITIES`] by its name; a density as it is written is read too: `480 kg/m3`.
///
/// # Errors
/// What is known, where the text is neither.
pub fn read(text: &str) -> Result<MassDensity, Msg> {
    let wanted = text.trim();
    if let Some(known) = DENSITIES.iter().find(|one| one.name.eq_ignore_ascii_case(wanted)) {
        return Ok(MassDensity::new::<kilogram_per_cubic_meter>(known.mean_kg_m3()));
    }
    let kg_m3 =
        Measure::read(wanted, &MASS_DENSITY, None).map(|measure| measure.si()).map_err(|_| {
            // The names are what is typed, in every language.
            let names = Arg::each(DENSITIES.iter().take(WOODS).map(|one| one.name));
            Msg::from(words::DensityUnknown { example: "480 kg/m3", names })
        })?;
    if (10.0..=25_000.0).contains(&kg_m3) {
        Ok(MassDensity::new::<kilogram_per_cubic_meter>(kg_m3))
    } else {
        Err(words::DensityRange { least: "10", most: "25 000 kg/m3", pine: "450 kg/m3" }.into())
    }
}

/// Mass of so much of a section. Source: [`MASS_OF_VOLUME`].
pub fn mass(density: MassDensity, section: Area, length: Length) -> Mass {
    density * (section * length)
}

/// One pound a cubic foot, kg/m³.
pub const KG_M3_PER_LB_FT3: f64 = 0.453_592_37 / (0.3048 * 0.3048 * 0.3048);

/// How many of the densities, from the first, are woods.
const WOODS: usize = 10;

/// The densities. Wood is dry; sheet goods vary by 15 percent with veneer and glue.
pub static DENSITIES: [Density; 20] = [
    range("white pine", 350.0, 500.0, OF_WOOD),
    one("yellow pine", 420.0, OF_WOOD),
    one("radiata pine", 480.0, OF_WOOD),
    one("Scots pine", 510.0, OF_WOOD),
    one("Douglas fir", 530.0, OF_WOOD),
    one("Canadian spruce", 450.0, OF_WOOD),
    // 3.0 lb a square foot and inch; 40.6 lb for 4 x 8 ft of 1/2 in.
    range("softwood plywood", 488.0, 577.0, APA),
    one("spruce plywood", 460.0, PLYWOOD),
    one("pine plywood", 550.0, PLYWOOD),
    range("birch plywood", 680.0, 700.0, PLYWOOD),
    one("XPS type X", 21.0, XPS),
    one("XPS type IV", 25.0, XPS),
    one("XPS type VI", 29.0, XPS),
    one("XPS type VII", 35.0, XPS),
    one("XPS type V", 48.0, XPS),
    one("polyurethane foam", 30.0, Source::transcribed("CIBSE Guide A", "table 3.37")),
    one("steel", 7850.0, METALS),
    one("aluminium", 2700.0, METALS),
    range("copper", 8930.0, 8960.0, METALS),
    one("water at 20 °C", 998.0, METALS),
];

/// Where the densities of wood were read.
pub static WOOD: Source = OF_WOOD;
const OF_WOOD: Source = Source::from_memory("engineering handbooks", "densities of dry wood");
const APA: Source =
    Source::transcribed("APA, The Engineered Wood Association; plywood weight chart", "");
const PLYWOOD: Source = Source::from_memory("plywood makers' data sheets", "density by species");
const XPS: Source = Source::transcribed("ASTM C578", "least densities by type");
const METALS: Source = Source::from_memory("engineering handbooks", "densities");

const fn range(name: &'static str, low_kg_m3: f64, high_kg_m3: f64, source: Source) -> Density {
    Density { name, low_kg_m3, high_kg_m3, source }
}

const fn one(name: &'static str, kg_m3: f64, source: Source) -> Density {
    range(name, kg_m3, kg_m3, source)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_or_a_density_is_read() {
        let kg_m3 = |text: &str| read(text).map(|found| found.get::<kilogram_per_cubic_meter>());
        assert!((kg_m3("Douglas Fir").unwrap() - 530.0).abs() < 1e-9);
        assert!((kg_m3("white pine").unwrap() - 425.0).abs() < 1e-9);
        assert!((kg_m3("30 lb/ft3").unwrap() - 480.55).abs() < 0.01);
        assert!(kg_m3("480").unwrap_err().english().contains("480 kg/m3"));
        assert!(kg_m3("oak").unwrap_err().english().contains("Scots pine"));
        assert!(kg_m3("1 kg/m3").is_err());
    }

    fn find(name: &str) -> &'static Density {
        DENSITIES.iter().find(|d| d.name == name).unwrap()
    }

    // ASTM C578 prints lb/ft³ beside kg/m³: types X, IV, VI, VII, V.
    #[test]
    fn xps_types_in_both_units() {
        for (name, lb_ft3) in [
            ("XPS type X", 1.30),
            ("XPS type IV", 1.55),
            ("XPS type VI", 1.80),
            ("XPS type VII", 2.20),
            ("XPS type V", 3.00),
        ] {
            assert!((find(name).mean_kg_m3() - lb_ft3 * KG_M3_PER_LB_FT3).abs() < 0.51, "{name}");
        }
        assert!((KG_M3_PER_LB_FT3 - 16.0185).abs() < 1e-4);
    }

    // 3.0 lb a square foot and inch of thickness is 36 lb/ft³; a 1/2 in sheet of 4 x 8 ft weighs 40.6 lb.
    #[test]
    fn plywood_figures_agree_with_sheet_weights() {
        let plywood = find("softwood plywood");
        assert!((plywood.high_kg_m3 - 36.0 * KG_M3_PER_LB_FT3).abs() < 0.5);
        let sheet_ft3 = 4.0 * 8.0 * 0.5 / 12.0;
        assert!((plywood.low_kg_m3 - 40.6 / sheet_ft3 * KG_M3_PER_LB_FT3).abs() < 0.5);
    }
}
