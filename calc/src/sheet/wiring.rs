//! What the wiring sheets share: inputs on how the wire lies, figures in print, steps, list lines.

use crate::ask::Ask;
use crate::electrical::ampacity::{
    Conditions, Insulation, TABLE_AMBIENT_C, ambient_factor, bundling_factor, table_ampacity,
};
use crate::electrical::conductor::Conductor;
use crate::electrical::fuse::{self, Fuse};
use crate::electrical::sources;
use crate::electrical::wanted::Wanted;
use crate::lists::{BuyLine, LineId};
use crate::quantity::Mass;
use crate::quantity::{
    Length, Style, TEMPERATURE, UnitSystem, VOLTAGE, amount, plain, significant,
};
use crate::reader::Reader;
use crate::report::{Remark, Step};
use crate::text::text;
use uom::si::length::meter;
use uom::si::mass::kilogram;

pub static SOURCE_VOLTAGE: Ask =
    Ask::measure("source_voltage", "Source voltage", &VOLTAGE, ["V", "V"], (0.1, 1000.0))
        .usual("12.8 V", "12.8 V")
        .help("Measured at the battery or fuse block with the loads on; 12.8 V for a rested lithium battery, 12.2 V for a low lead one.");
pub static DROP_LIMIT: Ask =
    Ask::percent("drop_limit_percent", "Drop that is allowed", (0.01, 99.0))
        .usual("3", "3")
        .help("3 % for pumps, blowers, electronics and feeds to a panel; up to 10 % for cabin lights (ABYC E-11).");
pub static CONDUCTOR_TEMPERATURE: Ask = Ask::measure(
    "conductor_temperature",
    "Temperature of the copper",
    &TEMPERATURE,
    ["F", "C"],
    (223.15, 473.15),
)
.default("30 C")
.usual("86 F", "30 C")
.help("Warm copper resists more. 30 °C (86 °F) for light loads, 50 °C (122 °F) in a hot roof.");
pub static AIR_TEMPERATURE: Ask = Ask::measure(
    "air_temperature",
    "Air around the wire",
    &TEMPERATURE,
    ["F", "C"],
    (223.15, 373.15),
)
.optional()
.usual("104 F", "40 C")
.help("The hottest it gets where the wire runs; above 30 °C (86 °F) the wire may carry less.");
pub static INSULATION: Ask = Ask::choice(
    "insulation",
    "Insulation rating",
    &[
        ("60 C", "60 °C"),
        ("75 C", "75 °C"),
        ("80 C", "80 °C"),
        ("90 C", "90 °C"),
        ("105 C", "105 °C"),
        ("125 C", "125 °C"),
        ("200 C", "200 °C"),
    ],
)
.default("105 C")
.help(
    "Printed on the jacket. 105 °C is usual for boat cable; where nothing is printed choose 60 °C.",
);
pub static CONTINUOUS: Ask = Ask::flag("continuous", "On for three hours or more", true)
    .help("Then the fuse is at least 125 % of the current.");
pub static BUNDLED: Ask = Ask::count("bundled", "Conductors lying together", (1, 1000))
    .optional()
    .usual("2", "2")
    .help("All that carry current in one loom or sleeve: each run counts two. From three on each may carry less.");

/// What a bare `Conductor` stands in for while faults are gathered.
pub fn stand_in() -> Wanted {
    Wanted::Least(None)
}

/// Reads a conductor or `auto`.
pub fn wanted(text: &str) -> Result<Wanted, String> {
    text.parse().map_err(|error| text!("{}; or write auto for the least that is enough", &error))
}

/// How the wire lies, and how warm its copper is. [C]
pub fn read_conditions(reader: &Reader<'_>) -> (Conditions, f64) {
    let key = reader.choice(&INSULATION);
    let insulation = Insulation::ALL
        .into_iter()
        .find(|rating| key == text!("{} C", rating.rating_c()))
        .unwrap_or(Insulation::C105);
    let air_c = reader.maybe_si(&AIR_TEMPERATURE).map(celsius);
    let copper_c = celsius(reader.si(&CONDUCTOR_TEMPERATURE));
    let given = reader.given(&CONDUCTOR_TEMPERATURE);
    if let Some(air_c) = air_c {
        if air_c >= insulation.rating_c() {
            reader.fault_at(
                &AIR_TEMPERATURE,
                text!(
                    "air as hot as the insulation stands ({}) leaves nothing for a current; it \
                     must be cooler, or the insulation better",
                    amount(insulation.rating_c(), 0, "°C")
                ),
            );
        }
        if given && copper_c < air_c {
            reader.fault_at(
                &CONDUCTOR_TEMPERATURE,
                "the copper is never cooler than the air around it; give at least the air's \
                 temperature",
            );
        }
    }
    let ambient_c = air_c.unwrap_or(TABLE_AMBIENT_C);
    let copper_c = if given { copper_c } else { copper_c.max(air_c.unwrap_or(copper_c)) };
    let bundled = reader.maybe_count(&BUNDLED).unwrap_or(2);
    (Conditions { insulation, bundled, ambient_c }, copper_c)
}

/// Kelvin to degrees Celsius, free of the rounding that the offset leaves behind.
fn celsius(kelvin: f64) -> f64 {
    ((kelvin - 273.15) * 1e9).round() / 1e9
}

pub fn volts(v: f64) -> String {
    text!("{} V", significant(v, 4))
}

/// A drop in volts.
pub fn drop_volts(v: f64) -> String {
    text!("{} V", significant(v, 3))
}

pub fn amperes(a: f64) -> String {
    text!("{} A", significant(a, 3))
}

pub fn watts(w: f64) -> String {
    text!("{} W", significant(w, 3))
}

pub fn ohms(ohm: f64) -> String {
    text!("{} ohm", significant(ohm, 4))
}

/// A drop in percent, finely enough to tell neighbouring conductors apart.
pub fn percent(percent: f64) -> String {
    text!("{} %", plain(percent, 2))
}

/// A limit as it was typed.
pub fn limit(percent: f64) -> String {
    text!("{} %", plain(percent, 3))
}

/// Resistance by length: `3.14 ohm/kft`, `10.3 ohm/km`.
pub fn ohms_per_length(ohm_per_m: f64, style: Style) -> String {
    match style.system {
        UnitSystem::Imperial => text!("{} ohm/kft", significant(ohm_per_m * 304.8, 4)),
        UnitSystem::Metric => text!("{} ohm/km", significant(ohm_per_m * 1000.0, 4)),
    }
}

pub fn run_length(metres: f64, style: Style) -> String {
    style.run(Length::new::<meter>(metres))
}

/// A length that must not be exceeded: rounded down to the inch or to 0.1 m.
pub fn run_at_most(metres: f64, style: Style) -> String {
    let step = match style.system {
        UnitSystem::Imperial => 0.0254,
        UnitSystem::Metric => 0.1,
    };
    run_length((metres / step * (1.0 + 1e-9)).floor() * step, style)
}

/// Density of copper: the middle of what tables give. Source: [`crate::mass::densities::DENSITIES`]. [kg/m³]
const COPPER_KG_M3: f64 = 8945.0;

/// What a wire is, whatever it is called: its size, and what its insulation is rated for.
pub fn wire_id(conductor: Conductor, conditions: &Conditions) -> LineId {
    LineId::shared(text!("wire/{}/{}c", conductor.id(), plain(conditions.insulation.rating_c(), 0)))
}

/// Wire for the buy list, both polarities counted: whole feet or metres.
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
    let spec = match conductor {
        Conductor::PerLength { .. } => text!("{}, half positive, half negative", &conductor),
        _ => text!("{} stranded copper, half positive, half negative", &conductor),
    };
    // Its copper alone.
    let mass = |mm2: f64| Mass::new::<kilogram>(mm2 * 1e-6 * metres * COPPER_KG_M3);
    let id = wire_id(conductor, conditions);
    BuyLine::amount(id, "wire", spec, metres / metres_each, unit)
        .mass(conductor.area_mm2().map(mass))
}

/// A fuse with its holder for the buy list.
pub fn fuse_line(rating_a: f64, source_v: f64) -> BuyLine {
    let volts = if source_v <= 32.0 { "32 V".to_owned() } else { volts(source_v.ceil()) };
    let amperes = plain(rating_a, 1);
    let id = text!("fuse/{}a/{}v", &amperes, plain(source_v.ceil().max(32.0), 0));
    let spec = text!("{} A, {} DC or more", &amperes, &volts);
    BuyLine::pieces(LineId::shared(id), "fuse with holder", spec, 1.0)
}

/// What has to be said of high voltages, of small wire and of the insulation that was assumed.
pub fn general_remarks(
    source_v: f64,
    used: &[Conductor],
    conditions: &Conditions,
    remarks: &mut Vec<Remark>,
) {
    if source_v >= 50.0 {
        remarks.push(Remark::warning(
            "From 50 V on this is no longer low voltage: it can kill, and other rules hold. Leave \
             it to a licensed electrician.",
        ));
    } else if source_v > 32.0 {
        remarks.push(Remark::warning(
            "Usual blade fuses are made for 32 V: take fuse and holder for the voltage at hand.",
        ));
    }
    let thin = |wire: &&Conductor| wire.area_mm2().is_some_and(|area| area < 1.0);
    if let Some(wire) = used.iter().find(thin) {
        remarks.push(Remark::note(text!(
            "{} is too thin to be run on its own: only inside the jacket of a cable with \
             several conductors. Single wires start at 16 AWG ({}) or 1 mm2 ({}).",
            &wire,
            &sources::CFR_LEAST_SIZE,
            &sources::ISO_10133_LEAST_SIZE
        )));
    }
    remarks.push(Remark::note(text!(
        "What the wire may carry holds for insulation rated {} °C, with {} lying together in air \
         of {} °C. Look at the jacket: wire with a lower rating, or none, may carry less.",
        plain(conditions.insulation.rating_c(), 0),
        match conditions.bundled {
            0..=2 => "no more than two conductors".to_owned(),
            more => text!("{} conductors", &more),
        },
        plain(conditions.ambient_c, 1)
    )));
}

/// Resistance of one conductor at its temperature. [ohm/m, C]
pub fn resistance_steps(
    conductor: Conductor,
    copper_c: f64,
    ohm_per_m: f64,
    style: Style,
) -> Vec<Step> {
    let result = ohms_per_length(ohm_per_m, style);
    let warm = plain(copper_c, 1);
    let (symbol, table_c, factor, note) = match conductor {
        Conductor::Awg(_) => ("r75", 75.0, "0.00323", &sources::NEC_TABLE_8_NOTE),
        Conductor::SquareMillimetre(_) => {
            ("r20", 20.0, "0.00393", &sources::COPPER_TEMPERATURE_COEFFICIENT)
        }
        Conductor::PerLength { .. } => {
            return vec![Step::new(
                "Resistance of one conductor",
                "r as given",
                conductor.to_string(),
                result,
                conductor.resistance_source(),
            )];
        }
    };
    let table = conductor.ohm_per_m(table_c).unwrap_or(ohm_per_m);
    let table = ohms_per_length(table, style);
    vec![
        Step::new(
            text!("{} at {} °C", &conductor, &table_c),
            symbol,
            text!("{}, stranded", &conductor),
            table.clone(),
            conductor.resistance_source(),
        ),
        Step::new(
            text!("At {} °C", &warm),
            text!("r = {} · (1 + {} · (T − {} °C))", &symbol, &factor, &table_c),
            text!("{} · (1 + {} · ({} − {}))", &table, &factor, &warm, &table_c),
            result,
            note,
        ),
    ]
}

/// What a conductor may carry as it lies; nothing where no table has it.
pub fn ampacity_steps(conductor: Conductor, conditions: &Conditions) -> Vec<Step> {
    let Some(table) = table_ampacity(conductor, conditions.insulation) else { return Vec::new() };
    let mut steps = vec![Step::new(
        text!("{} may carry", &conductor),
        "Iz",
        text!("insulation {} °C, air {} °C", conditions.insulation.rating_c(), &TABLE_AMBIENT_C),
        amperes(table.amperes),
        table.source,
    )];
    let bundling = bundling_factor(conditions.bundled);
    let mut left = table.amperes;
    if bundling < 1.0 {
        steps.push(Step::new(
            "Lying together",
            "Iz = I · k",
            text!("{} · {} ({} conductors)", amperes(left), &bundling, &conditions.bundled),
            amperes(left * bundling),
            &sources::ABYC_BUNDLING,
        ));
        left *= bundling;
    }
    let warm = ambient_factor(conditions.insulation, conditions.ambient_c);
    if warm < 1.0 {
        let rating = plain(conditions.insulation.rating_c(), 0);
        steps.push(Step::new(
            "In warm air",
            "Iz = I · √((Tc − T) / (Tc − 30 °C))",
            text!(
                "{} · √(({} − {}) / ({} − 30))",
                amperes(left),
                &rating,
                plain(conditions.ambient_c, 1),
                &rating
            ),
            amperes(left * warm),
            &sources::AMBIENT,
        ));
    }
    steps
}

/// The fuse at the source.
pub fn fuse_steps(current_a: f64, continuous: bool, fuse: Option<&Fuse>) -> Vec<Step> {
    let needed_a = if continuous { 1.25 * current_a } else { current_a };
    let mut steps = vec![Step::new(
        "The fuse carries at least",
        if continuous { "If = 1.25 · I" } else { "If = I" },
        if continuous { text!("1.25 · {}", amperes(current_a)) } else { amperes(current_a) },
        amperes(needed_a),
        &sources::NEC_CONTINUOUS,
    )];
    if let Some((rating_a, source)) = fuse::next_rating(needed_a).filter(|_| fuse.is_some()) {
        steps.push(Step::new(
            "Next standard rating",
            "If ≤ rating ≤ Iz",
            amperes(needed_a),
            text!("{} A", plain(rating_a, 1)),
            source,
        ));
    }
    steps
}
