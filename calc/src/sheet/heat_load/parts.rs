//! The parts of the body that heat goes through: those typed, those of the measured body, the windows.

use uom::si::area::square_meter;
use uom::si::f64::{Area, HeatTransfer, Power};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;

use crate::ask::{Ask, BodyPart};
use crate::quantity::{AREA, LENGTH, Length, U_VALUE};
use crate::reader::Reader;
use crate::source::Source;
use crate::text::text;
use crate::thermal::heat_loss::{Surface, solar_gain};

static LABEL: Ask = Ask::words("label", "Part of the body").usual("rear doors", "rear doors");
static PART_AREA: Ask = Ask::measure("area", "Area", &AREA, ["ft2", "m2"], (0.0, 10_000.0))
    .usual("120 ft2", "11 m2")
    .help("Length times height or width, inside.");
static U: Ask = Ask::measure("u", "U value", &U_VALUE, ["Btu/(h ft2 F)", "W/m2/K"], (0.0, 20.0))
    .usual("0.16 Btu/(h ft2 F)", "0.9 W/m2/K")
    .help(
        "From an insulation sheet or a data sheet; single glass about 5.6 W/m2/K, bare steel 5.9.",
    );
static SHEET_ASK: Ask = Ask::sheet_of("sheet", "Insulation sheet", "insulation")
    .help("Takes the U value from there and follows it.");
static U_OR_SHEET: Ask = Ask::either("U value", &[&U, &SHEET_ASK]);
pub(super) static PARTS: Ask =
    Ask::rows("parts", "Parts that you add", "part", 0, &[&LABEL, &PART_AREA, &U_OR_SHEET])
        .optional()
        .help(
            "Added to the body's surfaces where those are given; else all that heat goes through.",
        );

static BODY_LENGTH: Ask =
    Ask::measure("length", "Length inside", &LENGTH, ["in", "mm"], (0.2, 30.0))
        .from_body(BodyPart::Length)
        .help("Front wall to rear wall.");
static BODY_WIDTH: Ask = Ask::measure("width", "Width inside", &LENGTH, ["in", "mm"], (0.2, 10.0))
    .from_body(BodyPart::Width)
    .help("Left wall to right wall.");
static BODY_HEIGHT: Ask =
    Ask::measure("height", "Height inside", &LENGTH, ["in", "mm"], (0.2, 10.0))
        .from_body(BodyPart::Height)
        .help("Floor to ceiling.");
static WALLS: Ask = Ask::sheet_of("walls", "Insulation of the walls", "insulation")
    .help("The insulation sheet of all four walls; the windows below are taken off.");
static ROOF: Ask = Ask::sheet_of("roof", "Insulation of the roof", "insulation")
    .optional()
    .help("Left blank: built as the walls.");
static FLOOR: Ask = Ask::sheet_of("floor", "Insulation of the floor", "insulation")
    .optional()
    .help("Left blank: built as the walls.");
static OPENINGS_U: Ask = Ask::measure(
    "openings_u",
    "U value of roof openings",
    &U_VALUE,
    ["Btu/(h ft2 F)", "W/m2/K"],
    (0.0, 20.0),
)
.default("6 W/m2/K")
.usual("1 Btu/(h ft2 F)", "6 W/m2/K")
.help("The body's hatches and vents: a single sheet of plastic about 6 W/m2/K, a double dome 3.");
pub(super) static SURFACES: Ask = Ask::group(
    "surfaces",
    "The body's surfaces",
    &[&WALLS, &ROOF, &FLOOR, &BODY_LENGTH, &BODY_WIDTH, &BODY_HEIGHT, &OPENINGS_U],
)
.default("")
.help("Floor, roof and walls as measured on the body page. Leave blank where you add all parts yourself.");

static WINDOW_LABEL: Ask = Ask::words("label", "Window").usual("windshield", "windshield");
static WINDOW_U: Ask =
    Ask::measure("u", "U value", &U_VALUE, ["Btu/(h ft2 F)", "W/m2/K"], (0.0, 20.0))
        .usual("1 Btu/(h ft2 F)", "5.6 W/m2/K")
        .help("Single glass about 5.6 W/m2/K, double acrylic 3, with a thick cover 2.");
static SUN_SHARE: Ask = Ask::percent("sun_percent", "Share of the sun let in", (0.0, 100.0))
    .default("85")
    .usual("85", "85")
    .help("g or SHGC of the glass: clear 85, tinted 60, behind a bright cover outside 15.");
static LIT_SHARE: Ask = Ask::percent("lit_percent", "Share of it in the sun", (0.0, 100.0))
    .default("50")
    .usual("50", "50")
    .help("At the hottest noon; windows on the shaded side count nothing.");
pub(super) static WINDOWS: Ask = Ask::rows(
    "windows",
    "Windows",
    "window",
    0,
    &[&WINDOW_LABEL, &PART_AREA, &WINDOW_U, &SUN_SHARE, &LIT_SHARE],
)
.optional()
.help("Taken off the walls of the body; the sun through them counts at noon.");
pub(super) static SUN: Ask =
    Ask::number_in("sun_w_m2", "Sun on the glass at noon", "W/m²", (0.0, 1400.0))
        .default("600")
        .usual("600", "600")
        .help("600 on glass that faces a summer's sun; a roof window sees up to 950.");

/// Sun on glass.
pub(super) static SUN_ON_GLASS: Source =
    Source::common_practice("600 W/m² on upright glass in the summer sun");
/// U values of glass and hatches.
pub(super) static GLASS: Source =
    Source::common_practice("U 5.6 W/m²K for single glass, 6 for a single plastic hatch");

/// A part of the body.
pub(super) struct Part {
    pub label: String,
    /// Paths of its area and its U value.
    pub fields: [String; 2],
    pub surface: Surface,
}

/// All parts, and the sun through the windows at noon.
pub(super) fn read(reader: &Reader<'_>) -> (Vec<Part>, Power) {
    let sun_w_m2 = reader.number(&SUN);
    let windows = reader.rows(&WINDOWS, |row| {
        let area: Area = row.measure(&PART_AREA);
        let share = row.number(&SUN_SHARE) * row.number(&LIT_SHARE) / 1e4;
        let surface = Surface { area, u: row.measure(&WINDOW_U) };
        let part = Part::typed("window", row.words(&WINDOW_LABEL), row, WINDOW_U.key, surface);
        (part, solar_gain(area, share, sun_w_m2))
    });
    let sun = windows.iter().fold(Power::default(), |sum, (_, gain)| sum + *gain);
    let mut windows: Vec<Part> = windows.into_iter().map(|(part, _)| part).collect();
    let glass: Area = windows.iter().fold(Area::default(), |sum, part| sum + part.surface.area);
    let mut parts = Vec::new();
    if reader.given(&SURFACES) || !reader.given(&PARTS) {
        parts = reader.group(&SURFACES, |group| of_body(group, reader, glass));
    }
    parts.append(&mut windows);
    parts.append(&mut reader.rows(&PARTS, |row| {
        let area = row.measure(&PART_AREA);
        let (u, key) = match row.which(&U_OR_SHEET) {
            Some(0) => (row.measure(&U), U.key),
            Some(_) => (u_of(row, &SHEET_ASK).unwrap_or_default(), SHEET_ASK.key),
            None => (HeatTransfer::default(), U.key),
        };
        Part::typed("part", row.words(&LABEL), row, key, Surface { area, u })
    }));
    (parts, sun)
}

impl Part {
    /// The part of a row; one without a name is called by its number.
    fn typed(noun: &str, label: String, row: &Reader<'_>, key: &str, surface: Surface) -> Self {
        let number = row.path().rsplit('.').next().and_then(|at| at.parse::<usize>().ok());
        Self {
            label: match number {
                Some(at) if label.is_empty() => text!("{} {}", &noun, at + 1),
                _ => label,
            },
            fields: [text!("{}.area", row.path()), text!("{}.{}", row.path(), &key)],
            surface,
        }
    }
}

/// The U value of another sheet.
fn u_of(reader: &Reader<'_>, ask: &Ask) -> Option<HeatTransfer> {
    let outcome = reader.sheet(ask)?;
    let u = outcome.number("u_w_m2k");
    if u.is_none() {
        reader.fault_at(ask, "this sheet gives no U value; choose another");
    }
    u.map(HeatTransfer::new::<watt_per_square_meter_kelvin>)
}

/// Floor, roof, walls and roof openings of a body with upright walls.
fn of_body(group: &Reader<'_>, reader: &Reader<'_>, glass: Area) -> Vec<Part> {
    let walls = u_of(group, &WALLS).unwrap_or_default();
    let other = |ask: &Ask| {
        if group.given(ask) { u_of(group, ask).unwrap_or_default() } else { walls }
    };
    let (roof, floor) = (other(&ROOF), other(&FLOOR));
    let [length, width, height] =
        [&BODY_LENGTH, &BODY_WIDTH, &BODY_HEIGHT].map(|ask| group.measure::<Length>(ask));
    let openings_u = group.measure(&OPENINGS_U);
    let plan = length * width;
    let openings: Area = reader
        .body()
        .openings
        .iter()
        .fold(Area::default(), |sum, opening| sum + opening.length * opening.width);
    let around = (length + width) * 2.0 * height;
    let slack = Area::new::<square_meter>(1e-9);
    if glass > around + slack && !reader.has_faults() {
        reader.note(
            "windows.0.area",
            text!(
                "the windows are larger than all four walls ({} m²); check their areas",
                crate::quantity::plain(around.get::<square_meter>(), 1)
            ),
        );
    }
    let none = Area::default();
    let less = |whole: Area, part: Area| if part < whole { whole - part } else { none };
    let part = |label: &str, area: Area, u, key: &str| Part {
        label: label.to_owned(),
        fields: [text!("surfaces.{}", BODY_LENGTH.key), text!("surfaces.{}", &key)],
        surface: Surface { area, u },
    };
    let mut parts = vec![
        part("floor", plan, floor, FLOOR.key),
        part("roof", less(plan, openings), roof, ROOF.key),
        part("walls", less(around, glass), walls, WALLS.key),
    ];
    if openings > none {
        parts.push(part("roof openings", openings.min(plan), openings_u, OPENINGS_U.key));
    }
    parts
}
