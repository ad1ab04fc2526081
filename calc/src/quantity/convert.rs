//! From measures to `uom` quantities, and the `uom` types that the project uses.

pub use uom::si::f64::{
    Angle, Area, ArealMassDensity, ElectricCharge, ElectricCurrent, ElectricPotential,
    ElectricalResistance, Energy, Force, HeatTransfer, Length, Mass, MassDensity, Power, Pressure,
    TemperatureInterval, ThermalConductivity, ThermodynamicTemperature, Time, Velocity, Volume,
    VolumeRate,
};

use super::dimension as of;
use super::measure::Measure;

macro_rules! quantities {
    ($($(#[$doc:meta])* $method:ident, $dimension:ident: $quantity:ident as $module:ident::$unit:ident;)*) => {
        impl Measure {
            $(
                $(#[$doc])*
                ///
                /// Meant for measures read in this dimension; others give their SI number.
                pub fn $method(&self) -> $quantity {
                    debug_assert!(self.dimension().is(&of::$dimension));
                    $quantity::new::<uom::si::$module::$unit>(self.si())
                }
            )*
        }
    };
}

quantities! {
    /// As a length.
    length, LENGTH: Length as length::meter;
    /// As an area.
    area, AREA: Area as area::square_meter;
    /// As a volume.
    volume, VOLUME: Volume as volume::cubic_meter;
    /// As a mass.
    mass, MASS: Mass as mass::kilogram;
    /// As a time.
    time, TIME: Time as time::second;
    /// As a temperature.
    temperature, TEMPERATURE: ThermodynamicTemperature as thermodynamic_temperature::kelvin;
    /// As a voltage.
    voltage, VOLTAGE: ElectricPotential as electric_potential::volt;
    /// As a current.
    current, CURRENT: ElectricCurrent as electric_current::ampere;
    /// As a resistance.
    resistance, RESISTANCE: ElectricalResistance as electrical_resistance::ohm;
    /// As a power.
    power, POWER: Power as power::watt;
    /// As an energy.
    energy, ENERGY: Energy as energy::joule;
    /// As an electric charge.
    charge, CHARGE: ElectricCharge as electric_charge::coulomb;
    /// As a density.
    mass_density, MASS_DENSITY: MassDensity as mass_density::kilogram_per_cubic_meter;
    /// As a mass per area.
    mass_per_area, MASS_PER_AREA: ArealMassDensity as areal_mass_density::kilogram_per_square_meter;
    /// As a thermal conductivity.
    conductivity, CONDUCTIVITY: ThermalConductivity as thermal_conductivity::watt_per_meter_kelvin;
    /// As a thermal transmittance.
    u_value, U_VALUE: HeatTransfer as heat_transfer::watt_per_square_meter_kelvin;
    /// As a volume flow.
    flow, FLOW: VolumeRate as volume_rate::cubic_meter_per_second;
    /// As an angle.
    angle, ANGLE: Angle as angle::radian;
    /// As a force.
    force, FORCE: Force as force::newton;
    /// As a pressure.
    pressure, PRESSURE: Pressure as pressure::pascal;
    /// As a speed.
    speed, SPEED: Velocity as velocity::meter_per_second;
}
