//! Where the heat goes: the table, the working, and the bars.

use uom::si::f64::Power;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::power::watt;

use super::super::bars::{self, Bar};
use super::{Case, Found, Typed};
use crate::drawing::{Drawing, Fill};
use crate::formula::{Formula, step};
use crate::quantity::Style;
use crate::report::{Step, Table, TableRow};
use crate::thermal::heat_loss::InBtu;
use crate::words::{Arg, Msg, heat_load as words};

pub(super) fn table(typed: &Typed, found: &Found, style: Style) -> Table {
    let cases = || std::iter::once(&found.night).chain(&found.at_noon);
    let mut heads = vec![
        style.say(words::BALANCE_PART),
        style.say(words::BALANCE_AREA),
        "U".to_owned(),
        style.say(words::BALANCE_NIGHT),
    ];
    heads.extend(found.at_noon.as_ref().map(|_| style.say(words::BALANCE_NOON)));
    let row = |start: [String; 3], of: &dyn Fn(&Case) -> Power| TableRow {
        cells: start.into_iter().chain(cases().map(|case| style.heat(of(case)))).collect(),
        chosen: false,
    };
    let parts = typed.parts.iter().enumerate().map(|(index, part)| {
        let start = [
            style.write(&part.name),
            style.area(part.surface.area),
            style.u_value(part.surface.u.get::<watt_per_square_meter_kelvin>()),
        ];
        row(start, &|case| case.load.surfaces.get(index).map_or(Power::default(), Formula::value))
    });
    let mut rows: Vec<TableRow> = parts.collect();
    let named = |name| [style.say(name), String::new(), String::new()];
    rows.push(row(named(words::AIR), &|case| case.load.fresh_air.value()));
    rows.push(row(named(words::GIVEN_OFF), &|case| -case.weather.gains));
    rows.push(row(named(words::TO_SUPPLY), &Case::total));
    Table { title: style.say(words::BALANCE), heads, rows }
}

pub(super) fn working(typed: &Typed, found: &Found, style: Style) -> Vec<Step> {
    let mut steps = one_case(typed, &found.night, |step| words::AtNight { step }.into(), style);
    if let Some(noon) = &found.at_noon {
        let sun = typed.sun.iter().filter(|(_, gain)| gain.value() > Power::default());
        steps.extend(
            sun.map(|(window, gain)| {
                step(words::SunThrough { window: window.clone() }, gain, style)
            }),
        );
        steps.extend(one_case(typed, noon, |step| words::AtNoon { step }.into(), style));
        let cooler = found.cooler.iter();
        steps.extend(cooler.map(|cooler| step(words::COOLER_DRAWS, cooler, style)));
    }
    steps
}

fn one_case(typed: &Typed, case: &Case, named: fn(Arg) -> Msg, style: Style) -> Vec<Step> {
    let load = &case.load;
    let parts = typed.parts.iter().zip(&load.surfaces);
    let mut steps: Vec<Step> =
        parts.map(|(part, heat)| step(named(part.name.clone()), heat, style)).collect();
    steps.push(step(named(words::AIR.into()), &load.fresh_air, style));
    steps.push(step(named(words::TO_SUPPLY.into()), &load.total, style));
    let in_btu = InBtu { power: case.total() };
    steps.push(step(named(words::OTHER_UNIT.into()), &in_btu, style));
    steps
}

pub(super) fn pictures(typed: &Typed, found: &Found, style: Style) -> Vec<Drawing> {
    let titled = |case: &Case, title: fn(Arg, Arg) -> Msg| {
        let [inside, outside] = [case.weather.inside_temperature, case.weather.outside_temperature]
            .map(Arg::typed_temperature);
        picture(typed, case, title(inside, outside), style)
    };
    match &found.at_noon {
        None => vec![titled(&found.night, |inside, outside| {
            words::OnlyPicture { inside, outside }.into()
        })],
        Some(noon) => vec![
            titled(&found.night, |inside, outside| words::NightPicture { inside, outside }.into()),
            titled(noon, |inside, outside| words::NoonPicture { inside, outside }.into()),
        ],
    }
}

fn picture(typed: &Typed, case: &Case, title: Msg, style: Style) -> Drawing {
    let words = words::PictureWords { heat: Arg::heat(case.total()) };
    let mut drawing = Drawing::new(style.say(title), style.say(words));
    let bar = |name: &Arg, power: Power, fill| Bar {
        text: [style.write(name), style.heat(power)].join(" · "),
        value: power.get::<watt>(),
        fill,
    };
    let parts = typed.parts.iter().zip(&case.load.surfaces);
    let mut bars: Vec<Bar> =
        parts.map(|(part, heat)| bar(&part.name, heat.value(), Fill::Level(2))).collect();
    bars.push(bar(&words::AIR.into(), case.load.fresh_air.value(), Fill::Level(1)));
    if case.weather.gains > Power::default() {
        bars.push(bar(&words::GIVEN_OFF.into(), -case.weather.gains, Fill::Waste));
    }
    let name = if case.cools() { words::TO_COOL } else { words::TO_HEAT };
    bars.push(bar(&name.into(), case.total(), Fill::Stock));
    bars::draw(&mut drawing, &bars, 0.0);
    drawing
}
