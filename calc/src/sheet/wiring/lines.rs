//! Wire, fuses and lugs as they are bought.

use uom::si::mass::kilogram;

use super::{degrees, rating};
use crate::electrical::ampacity::Conditions;
use crate::electrical::charging::fuse_voltage;
use crate::electrical::conductor::Conductor;
use crate::electrical::least_size::is_thin;
use crate::electrical::splice::stud;
use crate::lists::{BuyLine, LineId};
use crate::quantity::{Mass, Style, UnitSystem, amount, plain};
use crate::text::text;
use crate::words::{Msg, wiring as words};

/// Density of copper: the middle of what tables give. Source: [`crate::mass::densities::DENSITIES`]. [kg/m³]
const COPPER_KG_M3: f64 = 8945.0;

/// Whether a wire is bought in a jacket: it was said so, or it is too thin for anything else.
fn is_jacketed(conductor: Conductor, conditions: &Conditions) -> bool {
    conditions.in_jacket || is_thin(conductor)
}

/// What a wire is, whatever it is called: its size, what its insulation is rated for, and whether it
/// comes in a jacket.
pub fn wire_id(conductor: Conductor, conditions: &Conditions) -> LineId {
    let jacket = if is_jacketed(conductor, conditions) { "/jacket" } else { "" };
    let rating = plain(conditions.insulation.rating_c(), 0);
    LineId::shared(text!("wire/{}/{}c{}", conductor.id(), rating, jacket))
}

/// A wire by all that it is bought by: size and insulation. `14 AWG, insulation 105 °C`.
pub fn wire_name(conductor: Conductor, conditions: &Conditions) -> Msg {
    let (size, rating) = (conductor.to_string(), degrees(conditions.insulation.rating_c()));
    if is_jacketed(conductor, conditions) {
        words::WireJacket { size, rating }.into()
    } else {
        words::Wire { size, rating }.into()
    }
}

/// Wire for the buy list, both polarities counted: whole feet or metres. The rating of the
/// insulation is part of what it is: what the wire may carry rests on it.
pub fn wire_line(
    conductor: Conductor,
    metres: f64,
    conditions: &Conditions,
    style: Style,
) -> BuyLine {
    let (unit, metres_each) = match style.system {
        UnitSystem::Imperial => ("ft", 0.3048),
        UnitSystem::Metric => ("m", 1.0),
    };
    let (size, rating) = (conductor.to_string(), degrees(conditions.insulation.rating_c()));
    let is_resistance = matches!(conductor, Conductor::PerLength { .. });
    let spec: Msg = match (is_resistance, is_jacketed(conductor, conditions)) {
        (false, false) => words::BuyWireSpec { size, rating }.into(),
        (false, true) => words::BuyWireSpecJacket { size, rating }.into(),
        (true, false) => words::BuyWireSpecPlain { size, rating }.into(),
        (true, true) => words::BuyWireSpecPlainJacket { size, rating }.into(),
    };
    // Its copper alone.
    let mass = |mm2: f64| Mass::new::<kilogram>(mm2 * 1e-6 * metres * COPPER_KG_M3);
    let id = wire_id(conductor, conditions);
    let item = style.say(words::BUY_WIRE);
    BuyLine::amount(id, item, style.say(spec), metres / metres_each, unit)
        .mass(conductor.area_mm2().map(mass))
}

/// A fuse with its holder for the buy list, rated for the highest voltage that stands on it.
pub fn fuse_line(rating_a: f64, highest_v: f64, style: Style) -> BuyLine {
    let id = LineId::shared(text!("fuse/{}", fuse_id(rating_a, highest_v)));
    let spec = style.say(fuse_spec(rating_a, highest_v));
    BuyLine::pieces(id, style.say(words::BUY_FUSE), spec, 1.0)
}

/// Ring lugs for a wire, each for the stud that is usual for it, or for another one that it shares.
pub fn lug_line(conductor: Conductor, on: &str, count: f64, style: Style) -> BuyLine {
    let id = LineId::shared(text!("lug/{}/{}", conductor.id(), stud_id(on)));
    let spec = style.say(words::BuyLugSpec { size: conductor.to_string(), stud: on });
    BuyLine::pieces(id, style.say(words::BUY_LUG), spec, count)
}

/// Wire with a lug on each of so many ends.
pub fn buy_wire_and_lugs(
    conductor: Conductor,
    metres: f64,
    lugs: f64,
    conditions: &Conditions,
    style: Style,
) -> [BuyLine; 2] {
    let wire = wire_line(conductor, metres, conditions, style);
    [wire, lug_line(conductor, stud(conductor), lugs, style)]
}

/// A size of stud as part of an id: `m6`.
pub fn stud_id(stud: &str) -> &str {
    if stud.starts_with("M6") { "m6" } else { "m8" }
}

/// A rating and its voltage as part of an id: `15a/32v`.
pub fn fuse_id(rating_a: f64, highest_v: f64) -> String {
    text!("{}a/{}v", plain(rating_a, 1), plain(fuse_voltage(highest_v, rating_a).0, 1))
}

/// `15 A, 32 V DC or more`.
pub fn fuse_spec(rating_a: f64, highest_v: f64) -> Msg {
    let volts = amount(fuse_voltage(highest_v, rating_a).0, 1, "V");
    words::BuyFuseSpec { rating: rating(rating_a), volts }.into()
}
