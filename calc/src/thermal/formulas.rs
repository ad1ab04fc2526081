//! Formulas of a build-up as they are shown, each with its values.

use uom::si::f64::{Length, ThermalConductivity, ThermodynamicTemperature};
use uom::si::length::{meter, millimeter};
use uom::si::thermal_conductivity::watt_per_meter_kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::build_up::COMBINED_METHOD;
use super::condensation::{AIR_PERMEABILITY_KG_M_S_PA, METHOD};
use super::moisture::{SATURATION, saturates_at, saturation_pa};
use super::steel_rib::{STRIP, TEMPERATURE_FACTOR, ZONE_METHOD};
use crate::formula::formula;
use crate::quantity::plain;
use crate::words::insulation as words;
use crate::words::{Arg, Msg};

formula! {
    /// Resistance of one layer, m²K/W.
    LayerResistance: "R = d / λ", &COMBINED_METHOD;
    |of| of.thickness.get::<meter>() / of.conductivity.get::<watt_per_meter_kelvin>() => f64 as resistance;
    /// 0.01 mm to 5 m.
    "d" as small: thickness: Length,
    /// 0.001 to 1000 W/(m K).
    "λ" as conductivity: conductivity: ThermalConductivity,
}

formula! {
    /// Resistance of all layers and both air films, m²K/W.
    InSeries: "R = Rsi + Σ d/λ + Rse", &COMBINED_METHOD;
    |of| of.inside + of.outside + of.layers => f64 as resistance;
    /// Of the inner film.
    "Rsi" as resistance: inside: f64,
    /// Of the layers together.
    "Σ d/λ" as resistance: layers: f64,
    /// Of the outer film.
    "Rse" as resistance: outside: f64,
}

formula! {
    /// Upper limit of the resistance, m²K/W: heat keeps to its path.
    UpperLimit: "R′ = 1 / (f / R_a + (1 − f) / R_b)", &COMBINED_METHOD;
    |of| 1.0 / (of.share / of.through + (1.0 - of.share) / of.beside) => f64 as resistance;
    /// The bridge's share of the area, 0 to 1.
    "f" as share: share: f64,
    /// From air to air through the bridge, m²K/W.
    "R_a" as resistance: through: f64,
    /// From air to air beside it, m²K/W.
    "R_b" as resistance: beside: f64,
}

formula! {
    /// Lower limit of the resistance, m²K/W: every layer evens out sideways.
    LowerLimit: "R″ = R_o + 1 / (f / R_t + (1 − f) / R_f)", &COMBINED_METHOD;
    |of| of.others + 1.0 / (of.share / of.bridge + (1.0 - of.share) / of.filling) => f64 as resistance;
    /// Of both films and the layers that nothing crosses, m²K/W.
    "R_o" as resistance: others: f64,
    /// The bridge's share of the area, 0 to 1.
    "f" as share: share: f64,
    /// Of the crossed layer within the bridge, m²K/W.
    "R_t" as resistance: bridge: f64,
    /// Of the crossed layer beside it, m²K/W.
    "R_f" as resistance: filling: f64,
}

formula! {
    /// Resistance by the combined method, m²K/W.
    Mean: "R = (R′ + R″) / 2", &COMBINED_METHOD;
    |of| (of.upper.value() + of.lower.value()) / 2.0 => f64 as resistance;
    /// The upper limit.
    "R′" as limit: upper: UpperLimit,
    /// The lower limit.
    "R″" as limit: lower: LowerLimit,
}

formula! {
    /// Width of the zone that one rib draws heat from.
    ZoneWidth: "W = m + 2 · d", &ZONE_METHOD;
    |of| Length::new::<millimeter>(of.metres() * 1000.0) => Length as small;
    /// The widest part of the metal.
    "m" as small: metal: Length,
    /// From the metal to the nearer surface, or the least that counts.
    "d" as small: cover: Length,
}

impl ZoneWidth {
    /// The width in metres.
    pub(super) fn metres(&self) -> f64 {
        self.metal.get::<meter>() + 2.0 * self.cover.get::<meter>()
    }
}

formula! {
    /// Resistance through the zone of one rib, m²K/W: flange and web, each side by side with the filling.
    ZoneResistance: "R_z = R_o + t / λ_t + (h − t) / λ_w", &ZONE_METHOD;
    |of| of.others
        + (of.flange.get::<meter>() / of.beside_flange.get::<watt_per_meter_kelvin>()
            + (of.depth.get::<meter>() - of.flange.get::<meter>()) / of.beside_web.get::<watt_per_meter_kelvin>())
        => f64 as resistance;
    /// Of both films and the layers that no rib crosses, m²K/W.
    "R_o" as resistance: others: f64,
    /// Thickness of the flange; none where the metal is no wider than the web.
    "t" as small: flange: Length,
    /// Mean conductivity of flange and filling.
    "λ_t" as conductivity: beside_flange: ThermalConductivity,
    /// Thickness of the crossed layer.
    "h" as small: depth: Length,
    /// Mean conductivity of web and filling.
    "λ_w" as conductivity: beside_web: ThermalConductivity,
}

formula! {
    /// U value with ribs, W/(m² K): zone and field share the area.
    Ribbed: "U = (W / s) / R_z + (1 − W / s) / R_f", &ZONE_METHOD;
    |of| {
        let zone = (of.zone.metres() / of.spacing.get::<meter>()).min(1.0);
        zone / of.through + (1.0 - zone) / of.field
    } => f64 as transmittance;
    /// Width of the zone.
    "W" as zone: zone: ZoneWidth,
    /// From rib to rib.
    "s" as small: spacing: Length,
    /// From air to air through the zone, m²K/W.
    "R_z" as resistance: through: f64,
    /// From air to air between the zones, m²K/W.
    "R_f" as resistance: field: f64,
}

formula! {
    /// U value, W/(m² K).
    UValue: "U = 1 / R", &COMBINED_METHOD;
    |of| 1.0 / of.resistance => f64 as transmittance;
    /// From air to air, m²K/W.
    "R" as resistance: resistance: f64,
}

formula! {
    /// Dew point of air in range, below 0 °C its frost point.
    DewPoint: "p_s(θ_d) = φ · p_s(θ)", &SATURATION;
    |of| {
        let pascals = of.humidity * saturation_pa(of.temperature.get::<degree_celsius>());
        ThermodynamicTemperature::new::<degree_celsius>(saturates_at(pascals))
    } => ThermodynamicTemperature as temperature;
    /// Relative humidity, 0.01 to 1.
    "φ" as share: humidity: f64,
    /// -60 to 80 °C.
    "θ" as temperature: temperature: ThermodynamicTemperature,
}

formula! {
    /// Temperature in a build-up: in step with the resistance up to there.
    Within: "θ = θi − (θi − θe) · Rsi / R", &TEMPERATURE_FACTOR;
    |of| {
        let (inside, outside) = (of.inside.get::<degree_celsius>(), of.outside.get::<degree_celsius>());
        let part = (of.upto / of.total).min(1.0);
        ThermodynamicTemperature::new::<degree_celsius>(inside + (outside - inside) * part)
    } => ThermodynamicTemperature as temperature;
    /// Air inside.
    "θi" as temperature_in_sum: inside: ThermodynamicTemperature,
    /// Air outside.
    "θe" as temperature_in_sum: outside: ThermodynamicTemperature,
    /// From the air inside up to there, m²K/W: at the lining the inner film.
    "Rsi" as resistance: upto: f64,
    /// From air to air, m²K/W.
    "R" as resistance: total: f64,
}

formula! {
    /// Temperature of a surface by its temperature factor.
    ByFactor: "θ = θe + f · (θi − θe)", &STRIP;
    |of| {
        let (inside, outside) = (of.inside.get::<degree_celsius>(), of.outside.get::<degree_celsius>());
        ThermodynamicTemperature::new::<degree_celsius>(outside + of.factor * (inside - outside))
    } => ThermodynamicTemperature as temperature;
    /// Air inside.
    "θi" as temperature_in_sum: inside: ThermodynamicTemperature,
    /// Air outside.
    "θe" as temperature_in_sum: outside: ThermodynamicTemperature,
    /// 0 as cold as outside, 1 as warm as inside.
    "f" as factor: factor: f64,
}

formula! {
    /// What gathers where the fall of the vapour pressure bends, g per m² and day.
    Gathers: "g = 2·10⁻¹⁰ kg/(m s Pa) · (b₁ − b₂) · 86 400 s", &METHOD;
    |of| AIR_PERMEABILITY_KG_M_S_PA * (of.before - of.behind) * 86_400.0 * 1000.0 => f64 as grams_a_day;
    /// How far the pressure falls over a metre of still air towards the plane, Pa/m.
    "b₁" as fall: before: f64,
    /// And from there on, Pa/m.
    "b₂" as fall: behind: f64,
}

/// Ways to write what only these formulas hold.
impl Arg {
    /// A limit of the resistance.
    fn limit(of: impl crate::formula::Formula<Value = f64>) -> Self {
        Self::resistance(of.value())
    }

    /// The width of a zone.
    fn zone(of: ZoneWidth) -> Self {
        Self::small(crate::formula::Formula::value(&of))
    }

    /// A fall of pressure over a metre of still air, Pa/m.
    fn fall(pascals_a_metre: f64) -> Self {
        let text = plain(pascals_a_metre, 1);
        Self::As(if text.starts_with('-') { format!("({text} Pa/m)") } else { text + " Pa/m" })
    }

    /// What gathers in a day.
    fn grams_a_day(grams: f64) -> Self {
        Self::Message(Msg::from(words::Rate { grams: plain(grams, 3) }))
    }
}
