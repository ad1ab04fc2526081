//! What sheets hand to each other, each hand-off a type: who gives it and what it means stands here.

use uom::si::f64::{
    ElectricPotential, Energy, HeatTransfer, Length, Mass, Power, ThermodynamicTemperature, Time,
};

use super::schedule::label::{Limits, Times};
use crate::handoff::HandOff;
use crate::words::{Id, energy as words};

/// What is taken from a sheet where one of several inputs names it.
pub type Taken<T> = Option<T>;

/// A load of the day: what circuits, lamps, a cooler or a water pump draw.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Load {
    /// While it runs.
    pub power: Power,
    /// How long it runs in a day, where the sheet knows. [h]
    pub hours: Option<f64>,
    /// Share of that time in which it draws, where the sheet knows. [%]
    pub duty_percent: Option<f64>,
}

impl Load {
    /// A load whose time is not known.
    pub fn of(power: Power) -> Self {
        Self { power, ..Self::default() }
    }
}

/// A sheet's load, or why it has none.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawn(pub Result<Load, Id>);

impl HandOff for Drawn {}

/// What a heater's fan and pump draw.
#[derive(Clone, Debug, PartialEq)]
pub struct HeaterDrawn(pub Load);

impl HandOff for HeaterDrawn {
    const LACKING: Id = words::NO_HEATER;
}

/// The demand: what a day takes out of the battery, and what else there is to cover it. Known before any panel is.
#[derive(Clone, Debug, PartialEq)]
pub struct DailyUse {
    /// Of a mean day, as it leaves the battery.
    pub day: Energy,
    /// From full to the lowest charge, as it reaches the loads; none without a battery.
    pub usable: Option<Energy>,
    /// The strongest charger beside panels: its name, and the power that reaches the loads.
    pub charger: Option<(String, Power)>,
    /// Of the battery.
    pub nominal: ElectricPotential,
    /// At the end of a charge.
    pub charging: ElectricPotential,
}

impl HandOff for DailyUse {}

/// The supply: what panels bring. Known before any use is.
#[derive(Clone, Debug, PartialEq)]
pub struct PanelYield {
    /// Of all panels, as rated.
    pub rated: Power,
    /// Of a mean day of each month, January first.
    pub days: [Energy; 12],
}

impl HandOff for PanelYield {}

/// The U value of walls, roof or floor.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct UValue(pub HeatTransfer);

impl HandOff for UValue {}

/// What a full tank's water weighs.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct FullTank(pub Mass);

impl HandOff for FullTank {}

/// What axles and tires still carry; below zero where they are overloaded.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PayloadLeft {
    /// On the front axle.
    pub front: Mass,
    /// On the rear axle.
    pub rear: Mass,
    /// On the whole rig.
    pub gross: Mass,
}

impl HandOff for PayloadLeft {}

/// Boards as they are laid.
#[derive(Clone, Debug, PartialEq)]
pub struct LaidBoards {
    /// Edges of the courses across the ceiling, the first and the last included.
    pub course_edges: Vec<Length>,
    /// Each piece: its length and its width.
    pub pieces: Vec<(Length, Length)>,
}

impl HandOff for LaidBoards {}

/// A filler with its passes.
#[derive(Clone, Debug, PartialEq)]
pub struct Filling {
    /// As somebody named it; none where nobody did.
    pub product: Option<String>,
    /// One after the other, each set before the next.
    pub passes: u32,
    /// In a pass, all alike.
    pub batches: u32,
    /// To mix and pour a pass, where it is known. [min]
    pub pass_min: Option<f64>,
    /// How long a batch can be worked and the temperature that it is given for, as on the label.
    pub pot_life: Option<(Time, ThermodynamicTemperature)>,
    /// On the label.
    pub times: Option<Times>,
    /// On the label.
    pub limits: Limits,
}

impl HandOff for Filling {}

/// Finishes in the order in which they go on.
#[derive(Clone, Debug, PartialEq)]
pub struct Coated(pub Vec<Layer>);

impl HandOff for Coated {}

/// The coats of one finish.
#[derive(Clone, Debug, PartialEq)]
pub struct Layer {
    /// As somebody named it; none where nobody did.
    pub product: Option<String>,
    /// How many.
    pub coats: u32,
    /// It is wiped off, where it goes into the wood: after how long, where that is known. [min]
    pub wiped: Option<Option<f64>>,
    /// On the label.
    pub times: Times,
    /// On the label.
    pub limits: Limits,
}
