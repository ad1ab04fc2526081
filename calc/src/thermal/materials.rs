//! Conductivity, vapour resistance and density of what a wall is built from; resistance of air gaps.

use uom::si::f64::Length;
use uom::si::length::millimeter;

use crate::source::Source;
use crate::words::{Id, insulation as words};

/// A figure that a publication gives as a range; both ends are equal where it gives one value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// Lower end.
    pub low: f64,
    /// Upper end.
    pub high: f64,
    /// Where both were read.
    pub source: Source,
}

/// A material. What its maker declares on the label comes before the table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Material {
    /// Plain name.
    pub name: Id,
    /// Conductivity, W/(m K). For insulation the upper end is the careful choice.
    pub conductivity_w_mk: Range,
    /// Vapour resistance factor mu, wet to dry; 1e6 stands for what lets no vapour through.
    pub vapour_factor: Option<Range>,
    /// Density, kg/m³.
    pub density_kg_m3: Option<Range>,
}

impl Material {
    /// The careful conductivity: the higher end. [W/(m K)]
    pub fn careful_conductivity_w_mk(&self) -> f64 {
        self.conductivity_w_mk.high
    }

    /// The careful vapour factor of what lies at the warm side: the lower end, wet.
    pub fn careful_vapour_factor(&self) -> Option<f64> {
        self.vapour_factor.map(|range| range.low)
    }
}

/// Which way the heat flows through an air gap.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeatFlow {
    /// Through a roof in winter.
    Upward,
    /// Through a wall.
    Level,
    /// Through a floor in winter.
    Downward,
}

/// The materials, insulation first.
pub static MATERIALS: [Material; 22] = [
    Material {
        name: words::MATERIAL_XPS,
        conductivity_w_mk: range(0.030, 0.040, DETAIL),
        vapour_factor: Some(range(80.0, 250.0, DIN_4108)),
        density_kg_m3: Some(range(
            21.0,
            48.0,
            Source::transcribed("ASTM C578", "least densities, types X to V"),
        )),
    },
    Material {
        name: words::MATERIAL_EPS,
        conductivity_w_mk: range(0.035, 0.040, DETAIL),
        vapour_factor: Some(range(20.0, 100.0, DIN_4108)),
        density_kg_m3: None,
    },
    Material {
        name: words::MATERIAL_POLYISO,
        conductivity_w_mk: range(0.022, 0.026, EN_13165),
        vapour_factor: Some(one(60.0, ISO_10456)),
        density_kg_m3: Some(one(45.0, CIBSE)),
    },
    Material {
        name: words::MATERIAL_POLYURETHANE,
        conductivity_w_mk: range(0.024, 0.030, DETAIL),
        vapour_factor: Some(one(60.0, ISO_10456)),
        density_kg_m3: Some(one(30.0, CIBSE)),
    },
    Material {
        name: words::MATERIAL_SPRAY_FOAM,
        conductivity_w_mk: range(0.020, 0.029, ASHRAE),
        vapour_factor: Some(one(60.0, ISO_10456)),
        density_kg_m3: None,
    },
    Material {
        name: words::MATERIAL_MINERAL_WOOL,
        conductivity_w_mk: range(0.035, 0.045, DETAIL),
        vapour_factor: Some(one(1.0, DIN_4108)),
        density_kg_m3: Some(range(32.0, 45.0, ASHRAE)),
    },
    Material {
        name: words::MATERIAL_ELASTOMERIC,
        conductivity_w_mk: range(0.033, 0.040, EN_14304),
        vapour_factor: Some(range(7000.0, 10_000.0, EN_14304)),
        density_kg_m3: None,
    },
    Material {
        name: words::MATERIAL_CORK,
        conductivity_w_mk: range(0.040, 0.055, ISO_10456),
        vapour_factor: Some(range(5.0, 10.0, ISO_10456)),
        density_kg_m3: None,
    },
    Material {
        name: words::MATERIAL_SOFTWOOD,
        conductivity_w_mk: one(0.13, EN_12524),
        vapour_factor: Some(range(20.0, 50.0, ISO_10456)),
        density_kg_m3: Some(one(500.0, EN_12524)),
    },
    Material {
        name: words::MATERIAL_HARDWOOD,
        conductivity_w_mk: one(0.18, ISO_10456),
        vapour_factor: Some(range(50.0, 200.0, ISO_10456)),
        density_kg_m3: Some(one(700.0, ISO_10456)),
    },
    Material {
        name: words::MATERIAL_SOFTWOOD_PLYWOOD,
        conductivity_w_mk: one(0.13, ISO_10456),
        vapour_factor: Some(range(70.0, 200.0, ISO_10456)),
        density_kg_m3: Some(one(500.0, ISO_10456)),
    },
    Material {
        name: words::MATERIAL_BIRCH_PLYWOOD,
        conductivity_w_mk: one(0.17, ISO_10456),
        vapour_factor: Some(range(90.0, 220.0, ISO_10456)),
        density_kg_m3: Some(range(
            680.0,
            700.0,
            Source::from_memory("plywood makers' data sheets", "birch"),
        )),
    },
    Material {
        name: words::MATERIAL_GYPSUM,
        conductivity_w_mk: one(0.25, ISO_10456),
        vapour_factor: Some(range(4.0, 10.0, ISO_10456)),
        density_kg_m3: Some(one(900.0, ISO_10456)),
    },
    Material {
        name: words::MATERIAL_LINOLEUM,
        conductivity_w_mk: one(0.17, ISO_10456),
        vapour_factor: Some(range(800.0, 1000.0, ISO_10456)),
        density_kg_m3: Some(one(1200.0, ISO_10456)),
    },
    Material {
        name: words::MATERIAL_CARPET,
        conductivity_w_mk: one(0.06, ISO_10456),
        vapour_factor: Some(one(5.0, ISO_10456)),
        density_kg_m3: Some(one(200.0, ISO_10456)),
    },
    Material {
        name: words::MATERIAL_FIBERGLASS,
        conductivity_w_mk: one(0.19, ISO_10456),
        vapour_factor: Some(one(10_000.0, ISO_10456)),
        density_kg_m3: Some(one(1400.0, ISO_10456)),
    },
    Material {
        name: words::MATERIAL_GLASS,
        conductivity_w_mk: one(1.0, ISO_10456),
        vapour_factor: Some(one(1e6, ISO_10456)),
        density_kg_m3: Some(one(2500.0, ISO_10456)),
    },
    Material {
        // PMMA; the table's "acrylic" is another row: 1050 kg/m³, 0.20 W/(m K), 10 000.
        name: words::MATERIAL_ACRYLIC,
        conductivity_w_mk: one(0.18, ISO_10456),
        vapour_factor: Some(one(50_000.0, ISO_10456)),
        density_kg_m3: Some(one(1180.0, ISO_10456)),
    },
    Material {
        name: words::MATERIAL_STEEL,
        conductivity_w_mk: range(
            45.0,
            50.0,
            Source::transcribed("EN 12524; CIBSE Guide A", "steel"),
        ),
        vapour_factor: Some(one(1e6, ISO_10456)),
        density_kg_m3: Some(one(7850.0, HANDBOOK)),
    },
    Material {
        name: words::MATERIAL_STAINLESS,
        conductivity_w_mk: range(
            16.0,
            29.0,
            Source::transcribed("EN 12524; CIBSE Guide A", "stainless steel"),
        ),
        vapour_factor: Some(one(1e6, ISO_10456)),
        density_kg_m3: None,
    },
    Material {
        name: words::MATERIAL_ALUMINUM,
        conductivity_w_mk: range(
            160.0,
            230.0,
            Source::transcribed("EN 12524; CIBSE Guide A", "aluminum"),
        ),
        vapour_factor: Some(one(1e6, ISO_10456)),
        density_kg_m3: Some(one(2700.0, HANDBOOK)),
    },
    Material {
        name: words::MATERIAL_COPPER,
        conductivity_w_mk: one(380.0, EN_12524),
        vapour_factor: Some(one(1e6, ISO_10456)),
        density_kg_m3: Some(range(8930.0, 8960.0, HANDBOOK)),
    },
];

/// Resistances of unventilated air layers with ordinary surfaces.
pub const AIR_LAYERS: Source = Source::from_memory("ISO 6946", "table 2, unventilated air layers");

/// Resistance of an unventilated air gap between ordinary surfaces, m²K/W, interpolated in the table; none for a gap
/// above 300 mm or below 0.
///
/// A gap with a bright foil resists more, a ventilated one less.
pub fn air_gap_m2k_w(gap: Length, flow: HeatFlow) -> Option<f64> {
    let mm = gap.get::<millimeter>();
    let column = |row: &(f64, [f64; 3])| match flow {
        HeatFlow::Upward => row.1[0],
        HeatFlow::Level => row.1[1],
        HeatFlow::Downward => row.1[2],
    };
    AIR_GAP_ROWS.windows(2).find(|pair| (pair[0].0..=pair[1].0).contains(&mm)).map(|pair| {
        let part = (mm - pair[0].0) / (pair[1].0 - pair[0].0);
        column(&pair[0]) + part * (column(&pair[1]) - column(&pair[0]))
    })
}

const DETAIL: Source =
    Source::transcribed("DETAIL Practice: Insulating Materials", "declared conductivities");
const DIN_4108: Source =
    Source::transcribed("DIN 4108-4; ISO 10456", "water vapor resistance factors");
const EN_12524: Source = Source::transcribed("EN 12524", "tabulated design values");
const ISO_10456: Source = Source::from_memory("ISO 10456", "table 3");
const EN_14304: Source =
    Source::from_memory("EN 14304", "flexible elastomeric foam, declared values");
const EN_13165: Source = Source::from_memory(
    "EN 13165",
    "polyurethane and polyisocyanurate boards, declared values, aged",
);
const CIBSE: Source = Source::transcribed("CIBSE Guide A", "table 3.37");
const ASHRAE: Source = Source::from_memory("ASHRAE Handbook, Fundamentals", "chapter 26, table 1");
const HANDBOOK: Source = Source::from_memory("engineering handbooks", "densities of metals");

/// Gap in mm; m²K/W upward, level, downward.
const AIR_GAP_ROWS: [(f64, [f64; 3]); 9] = [
    (0.0, [0.0, 0.0, 0.0]),
    (5.0, [0.11, 0.11, 0.11]),
    (7.0, [0.13, 0.13, 0.13]),
    (10.0, [0.15, 0.15, 0.15]),
    (15.0, [0.16, 0.17, 0.17]),
    (25.0, [0.16, 0.18, 0.19]),
    (50.0, [0.16, 0.18, 0.21]),
    (100.0, [0.16, 0.18, 0.22]),
    (300.0, [0.16, 0.18, 0.23]),
];

const fn range(low: f64, high: f64, source: Source) -> Range {
    Range { low, high, source }
}

const fn one(value: f64, source: Source) -> Range {
    range(value, value, source)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_figure_is_in_the_range_that_the_formulas_take() {
        for material in &MATERIALS {
            let k = material.conductivity_w_mk;
            assert!(
                k.low <= k.high && super::super::build_up::CONDUCTIVITY.contains(&k.low),
                "{:?}",
                material.name
            );
            if let Some(mu) = material.vapour_factor {
                assert!(
                    mu.low >= 1.0 && mu.low <= mu.high && mu.high <= 1e7,
                    "{:?}",
                    material.name
                );
            }
            if let Some(density) = material.density_kg_m3 {
                assert!(density.low >= 10.0 && density.low <= density.high, "{:?}", material.name);
            }
        }
    }

    #[test]
    fn metals_alone_lie_above_the_bound_for_bridges() {
        for material in &MATERIALS {
            let metal = [
                words::MATERIAL_STEEL,
                words::MATERIAL_STAINLESS,
                words::MATERIAL_ALUMINUM,
                words::MATERIAL_COPPER,
            ]
            .contains(&material.name);
            let above =
                material.conductivity_w_mk.low >= super::super::build_up::METAL_CONDUCTIVITY;
            assert_eq!(metal, above, "{:?}", material.name);
        }
    }

    #[test]
    fn air_gaps_follow_the_table_between_its_rows() {
        let gap = |mm: f64, flow| air_gap_m2k_w(Length::new::<millimeter>(mm), flow);
        assert_eq!(gap(10.0, HeatFlow::Level), Some(0.15));
        assert_eq!(gap(25.0, HeatFlow::Downward), Some(0.19));
        assert!((gap(12.5, HeatFlow::Level).unwrap() - 0.16).abs() < 1e-12);
        assert_eq!(gap(0.0, HeatFlow::Level), Some(0.0));
        assert_eq!(gap(300.1, HeatFlow::Level), None);
        assert_eq!(gap(-1.0, HeatFlow::Level), None);
        assert_eq!(gap(f64::NAN, HeatFlow::Level), None);
    }
}
