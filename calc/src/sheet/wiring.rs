//! What the wiring sheets share: inputs on how the wire lies, figures in print, steps, list lines.

use crate::ask::Ask;
use crate::electrical::ampacity::{
    Conditions, Insulation, Rated, TABLE_AMBIENT_C, ambient_factor, bundling_factor,
    insulation_factor, table_ampacity,
};
use crate::electrical::charging::{
    GREATEST_CHARGING_V, GREATEST_NOMINAL_V, fuse_voltage, highest_v,
};
use crate::electrical::conductor::Conductor;
use crate::electrical::fuse::{self, Fuse};
use crate::electrical::least_size::{is_thin, small_fuse};
use crate::electrical::sources;
use crate::electrical::wanted::Wanted;
use crate::lists::{BuyLine, LineId};
use crate::quantity::Mass;
use crate::quantity::{
    Length, Style, TEMPERATURE, UnitSystem, VOLTAGE, amount, plain, significant,
};
use crate::reader::Reader;
use crate::report::{Remark, Step};
use crate::source::Source;
use crate::text::text;
use uom::si::length::meter;
use uom::si::mass::kilogram;

pub static SOURCE_VOLTAGE: Ask =
    Ask::measure("source_voltage", "Source voltage", &VOLTAGE, ["V", "V"], (0.1, 1000.0))
        .usual("12.8 V", "12.8 V")
        .help("Measured at the battery or fuse block with the loads on. Lithium iron phosphate stands near 13.3 V at rest (its cathode at 3.45 V a cell after 24 h, J. Jpn. Soc. Powder Powder Metallurgy 57, 725; graphite takes 0.1 V of it, from memory) and nearer 12.8 V at work; a lead battery half empty at 12.2 V.");
pub static LOW_VOLTAGE: Ask =
    Ask::measure("low_voltage", "Battery at its lowest", &VOLTAGE, ["V", "V"], (0.1, 1000.0))
        .optional()
        .usual("10.5 V", "10.5 V")
        .help("Where the battery is switched off: a constant power draws most there, and wire and fuse are chosen for it.");
pub static CHARGING_VOLTAGE: Ask =
    Ask::measure("charging_voltage", "Highest charging voltage", &VOLTAGE, ["V", "V"], (0.1, 1000.0))
        .optional()
        .usual("14.6 V", "14.6 V")
        .help("Set on the charger or the alternator; fuse and holder must stand it. Left blank: 14.6 V for each 12.8 V of lithium iron phosphate (3.65 V a cell), 14.8 V for each 12 V of lead.");
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
.default("60 C")
.help(
    "Printed on the jacket: 105 °C on boat cable. Where nothing is printed leave 60 °C, the lowest column of 33 CFR 183.425 table 5: an unmarked automotive or speaker wire can be trusted with no more. Wire is bought by this rating.",
);
pub static IN_JACKET: Ask = Ask::flag("in_jacket", "Inside the jacket of a cable", false)
    .help("Several conductors in one jacket: then 18 AWG or 0.75 mm2 may be taken; single wires start at 16 AWG or 1 mm2.");
pub static IN_INSULATION: Ask = Ask::flag("in_insulation", "In thermal insulation", false)
    .help("Half a metre (20 in) or more of it: the wire may carry half (BS 7671 523.9). PVC touching polystyrene foam goes hard: sleeve it.");
pub static FAR_SOURCE: Ask = Ask::flag("far_source", "A source at the far end too", false)
    .help("An alternator, a DC-DC or shore charger, solar: then the wire has a fuse at both ends.");
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
        .unwrap_or(Insulation::C60);
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
    let in_insulation = reader.flag(&IN_INSULATION);
    let in_jacket = reader.flag(&IN_JACKET);
    (Conditions { insulation, bundled, ambient_c, in_insulation, in_jacket }, copper_c)
}

/// The voltages of a source.
pub struct Supply {
    /// As measured or nominal. [V]
    pub source_v: f64,
    /// The lowest, where it was given. [V]
    pub low_v: Option<f64>,
    /// The highest that stands on fuse and holder. [V]
    pub highest_v: f64,
    /// Where the highest comes from.
    pub highest_source: &'static Source,
}

/// Reads the voltages of a source; from 50 V on is a fault, save a 48 V battery's own charging.
pub fn read_supply(reader: &Reader<'_>) -> Supply {
    let source_v = reader.si(&SOURCE_VOLTAGE);
    let low_v = reader.maybe_si(&LOW_VOLTAGE);
    let charging_v = reader.maybe_si(&CHARGING_VOLTAGE);
    let beyond = "from 50 V on this is no longer low voltage: it can kill, and other rules hold; \
                  leave it to a licensed electrician";
    if reader.given(&SOURCE_VOLTAGE) {
        if source_v > GREATEST_NOMINAL_V * (1.0 + 1e-9) {
            let message = text!(
                "{}. A 48 V battery is entered by its nominal voltage, up to {}",
                &beyond,
                volts(GREATEST_NOMINAL_V)
            );
            reader.fault_at(&SOURCE_VOLTAGE, message);
        }
        if low_v.is_some_and(|low| low > source_v) {
            reader.fault_at(&LOW_VOLTAGE, "the lowest voltage cannot lie above the source voltage");
        }
        if charging_v.is_some_and(|charging| charging < source_v * (1.0 - 1e-9)) {
            reader.fault_at(
                &CHARGING_VOLTAGE,
                "charging raises the voltage: give at least the source voltage",
            );
        }
    }
    if charging_v.is_some_and(|charging| charging > GREATEST_CHARGING_V * (1.0 + 1e-9)) {
        let message = text!(
            "{}; these rules end where a 48 V battery is charged to {}",
            &beyond,
            volts(GREATEST_CHARGING_V)
        );
        reader.fault_at(&CHARGING_VOLTAGE, message);
    }
    let (highest_v, highest_source) = highest_v(source_v, charging_v);
    Supply { source_v, low_v, highest_v, highest_source }
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
pub fn wire_name(conductor: Conductor, conditions: &Conditions) -> String {
    let jacket = if is_jacketed(conductor, conditions) { ", in a jacket" } else { "" };
    text!("{}, insulation {} °C{}", &conductor, plain(conditions.insulation.rating_c(), 0), jacket)
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
    let spec = text!(
        "{}{}, insulation rated {} °C or more{}, half positive, half negative",
        &conductor,
        if matches!(conductor, Conductor::PerLength { .. }) { "" } else { " stranded copper" },
        plain(conditions.insulation.rating_c(), 0),
        if is_jacketed(conductor, conditions) { ", several conductors in a jacket" } else { "" }
    );
    // Its copper alone.
    let mass = |mm2: f64| Mass::new::<kilogram>(mm2 * 1e-6 * metres * COPPER_KG_M3);
    let id = wire_id(conductor, conditions);
    BuyLine::amount(id, "wire", spec, metres / metres_each, unit)
        .mass(conductor.area_mm2().map(mass))
}

/// A fuse with its holder for the buy list, rated for the highest voltage that stands on it.
pub fn fuse_line(rating_a: f64, highest_v: f64) -> BuyLine {
    let id = text!("fuse/{}", fuse_id(rating_a, highest_v));
    BuyLine::pieces(LineId::shared(id), "fuse with holder", fuse_spec(rating_a, highest_v), 1.0)
}

/// Ring lugs for a wire, each for the stud that is usual for it, or for another one that it shares.
pub fn lug_line(conductor: Conductor, on: &str, count: f64) -> BuyLine {
    let id = text!("lug/{}/{}", conductor.id(), stud_id(on));
    let spec = text!("{}, {} stud", &conductor, on);
    BuyLine::pieces(LineId::shared(id), "ring lug", spec, count)
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
pub fn fuse_spec(rating_a: f64, highest_v: f64) -> String {
    text!(
        "{} A, {} V DC or more",
        plain(rating_a, 1),
        plain(fuse_voltage(highest_v, rating_a).0, 1)
    )
}

/// What has to be said of the voltage of fuses, of small wire and of the insulation.
pub fn general_remarks(
    supply: &Supply,
    used: &[Conductor],
    fuses_a: &[f64],
    conditions: &Conditions,
    remarks: &mut Vec<Remark>,
) {
    if let Some(most_a) = fuses_a.iter().copied().reduce(f64::max) {
        let (rated_v, source) = fuse_voltage(supply.highest_v, most_a);
        remarks.push(Remark::note(text!(
            "Fuse and holder: made for {} V DC or more ({}). Up to {} stand on them, and on every load, \
             while charging ({}): a lamp or device whose label does not go so far needs a regulator.",
            plain(rated_v, 1),
            source,
            volts(supply.highest_v),
            supply.highest_source
        )));
    }
    if let Some(wire) = used.iter().find(|wire| is_thin(**wire) && !conditions.in_jacket) {
        remarks.push(Remark::note(text!(
            "{} is too thin to be run on its own: it is listed as a cable with several conductors in \
             a jacket, and nothing else will do. On boats single wires start at 16 AWG ({}) or 1 mm2 ({}); park trailers \
             begin with 18 AWG ({}). auto takes the stricter.",
            &wire,
            &sources::CFR_LEAST_SIZE,
            &sources::ISO_10133_LEAST_SIZE,
            &sources::NEC_552_FUSE
        )));
    }
    let weakest = used
        .iter()
        .filter_map(|wire| Rated::new(*wire, conditions).ok())
        .min_by(|a, b| a.fuse_limit_a().total_cmp(&b.fuse_limit_a()));
    if let Some((wire, small)) =
        weakest.and_then(|wire| Some((wire, small_fuse(wire.conductor())?)))
    {
        remarks.push(Remark::note(text!(
            "{} stands no fuse above {} here, the strictest of: {} A in vehicles ({}), {} A for small \
             conductors ({}), and what it may carry as it lies; boats may go to {} ({}).",
            &wire.conductor(),
            amperes(wire.fuse_limit_a()),
            plain(small.most_a, 1),
            small.source,
            plain(small.other_a, 1),
            small.other,
            amperes(1.5 * wire.ampacity_a()),
            &sources::CFR_BOAT_FUSE
        )));
    }
    for wire in used.iter().filter_map(|wire| Rated::new(*wire, conditions).ok()) {
        if let (Some(listed), Conductor::PerLength { .. }) = (wire.stands_in(), wire.conductor()) {
            remarks.push(Remark::note(text!(
                "No table lists {}: it is taken to carry what {} AWG does, the nearest listed size \
                 that resists at least as much at 20 °C.",
                &wire.conductor(),
                &listed
            )));
        }
    }
    let rating = plain(conditions.insulation.rating_c(), 0);
    remarks.push(Remark::note(text!(
        "What the wire may carry holds for insulation rated {} °C, with {} lying together in air \
         of {} °C. {}",
        &rating,
        match conditions.bundled {
            0..=2 => "no more than two conductors".to_owned(),
            more => text!("{} conductors", &more),
        },
        plain(conditions.ambient_c, 1),
        if conditions.insulation == Insulation::C60 {
            "Wire with nothing printed on it can be trusted with 60 °C; where the jacket says \
             105 °C, enter it: such wire may carry more."
                .to_owned()
        } else {
            text!("Look at the jacket: it must say {} °C or more.", &rating)
        }
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
    let listed = match table.stands_in {
        Some(listed) => text!("{} may carry, as {} AWG", &conductor, &listed),
        None => text!("{} may carry", &conductor),
    };
    let mut steps = vec![Step::new(
        listed,
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
        left *= warm;
    }
    let buried = insulation_factor(conditions.in_insulation);
    if buried < 1.0 {
        steps.push(Step::new(
            "In thermal insulation",
            "Iz = I · k",
            text!("{} · {}", amperes(left), &buried),
            amperes(left * buried),
            &sources::BS_7671_INSULATION,
        ));
    }
    if let Some((wire, rule)) =
        Rated::new(conductor, conditions).ok().and_then(|wire| Some((wire, wire.fuse_rule()?)))
    {
        steps.push(Step::new(
            "Greatest fuse before small wire",
            "If ≤ I(size)",
            conductor.to_string(),
            amperes(wire.fuse_limit_a()),
            rule,
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
