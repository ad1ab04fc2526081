//! What is found of a day's use: answers, remarks, tables and working.

use uom::si::energy::watt_hour;
use uom::si::f64::Energy;
use uom::si::power::watt;
use uom::si::time::hour;

use super::charging::{self, Brings};
use super::{Found, Job, Lasts};
use crate::formula::{Formula as _, step};
use crate::quantity::Style;
use crate::report::{Answer, Remark, Step, Table, TableRow, Weight};
use crate::sheet::solar::MONTHS;
use crate::sorting::{sort_by, sort_by_key};
use crate::words::{Arg, Msg, energy as words};

pub(super) fn answers(job: &Job, found: &Found, style: Style) -> Vec<Answer> {
    let budget = &found.budget;
    let volts = Arg::volts(job.voltage);
    let charge = Arg::ampere_hours(budget.day_charge.value());
    let energy = Arg::day_energy(budget.needed.value());
    let mut answers = vec![
        Answer::new(style.say(words::USED), style.write(&Arg::day_energy(budget.day)))
            .note(style.say(words::UsedNote { charge, volts: volts.clone() })),
        Answer::new(
            style.say(words::Needed { days: Arg::days(job.days) }),
            style.write(&Arg::ampere_hours(budget.needed_charge.value())),
        )
        .note(style.say(words::NeededNote { energy, volts })),
    ];
    if let Some(lasts) = &found.lasts {
        let time = style.write(&Arg::spell(lasts.time()));
        let note = style.say(words::LASTS_NOTE);
        answers.push(Answer::new(style.say(words::LASTS), time).note(note));
    }
    answers
}

pub(super) fn remarks(job: &Job, found: &Found, style: Style) -> Vec<Remark> {
    let note = |message: Msg| Remark::note(style.say(message));
    let mut remarks = Vec::new();
    if let (Some(battery), Some(lasts)) = (&job.battery, &found.lasts) {
        let days = Arg::days(job.days);
        remarks.push(if lasts.time().get::<hour>() + 1e-6 < job.days * 24.0 {
            let (has, needed) = (battery.energy, found.budget.needed.value());
            let (has, needed) = (Arg::day_energy(has), Arg::day_energy(needed));
            Remark::warning(style.say(words::TooSmall { days, has, needed }))
        } else {
            Remark::good(style.say(words::Carries { days }))
        });
        match lasts {
            Lasts::BelowRating(_) => remarks.push(note(words::BELOW_RATING.into())),
            Lasts::Plain(_) if job.usable <= 0.6 => {
                remarks.push(note(words::ENTER_EXPONENT.into()));
            }
            _ => {}
        }
    }
    let inverter = job.inverter.as_ref();
    match inverter.zip(found.inverter.as_ref()) {
        Some((inverter, asked)) => asked.remarks(inverter, style, &mut remarks),
        None if job.has_mains() => {
            remarks.push(Remark::warning(style.say(words::NEEDS_INVERTER)));
        }
        None => {}
    }
    let (power, volts) = (Arg::lamp_watts(found.all_on.get::<watt>()), Arg::volts(job.voltage));
    let current = Arg::tenth_amperes(found.all_on / job.voltage);
    if job.cable.is_some() {
        remarks.push(note(words::AllOn { power, current, volts }.into()));
    } else {
        remarks.push(note(words::AllOnNoCable { power, current, volts }.into()));
    }
    let name = Msg::from(words::BATTERY_CABLE);
    if let Some(cable) = &found.cable {
        cable.remarks(&name, true, style, &mut remarks);
        if let Some(inverter) = inverter {
            cable.inverter_remarks(inverter, style, &mut remarks);
        }
    } else if let Some(why) = found.why_no_cable.clone() {
        remarks.push(Remark::warning(style.say(words::CableNotShown { cable: name, why })));
    }
    let battery = job.battery.as_ref();
    charging::remarks(battery, &job.chargers, &found.charging, style, &mut remarks);
    remarks.extend(brought(job, found, style));
    sort_by_key(&mut remarks, |remark| remark.weight != Weight::Warning);
    remarks
}

/// Whether what charges on an ordinary day makes up for the day.
fn brought(job: &Job, found: &Found, style: Style) -> Option<Remark> {
    let battery = job.battery.as_ref()?;
    let drawn = found.budget.day / job.efficiency;
    let days = found.charging.iter().filter_map(|charged| charged.day);
    let mut brought = days.fold(Energy::default(), |a, b| a + b);
    let panels = job.chargers.iter().filter_map(|charger| match &charger.brings {
        Brings::Months(months) if months.len() == 12 => Some(months),
        _ => None,
    });
    let mut months = [0.0; 12];
    let mut any = false;
    for yields in panels {
        any = true;
        for (month, wh) in months.iter_mut().zip(yields) {
            *month += wh;
        }
    }
    let darkest = months.iter().zip(MONTHS).min_by(|a, b| a.0.total_cmp(b.0)).filter(|_| any);
    if let Some((wh, _)) = darkest {
        brought += Energy::new::<watt_hour>(*wh) * battery.kept();
    } else if brought <= Energy::default() {
        return None;
    }
    let is_enough = brought >= drawn;
    let enough = if is_enough { "yes" } else { "no" };
    let (brought, drawn) = (Arg::day_energy(brought), Arg::day_energy(drawn));
    let said = match darkest {
        Some((_, month)) => style.say(words::DarkestDay { enough, month, brought, drawn }),
        None => style.say(words::OrdinaryDay { enough, brought, drawn }),
    };
    Some(if is_enough { Remark::good(said) } else { Remark::warning(said) })
}

pub(super) fn tables(job: &Job, found: &Found, style: Style) -> Vec<Table> {
    let budget = &found.budget;
    let day = budget.day.get::<watt_hour>();
    let mut rows: Vec<_> = found.loads.iter().zip(&budget.loads).collect();
    sort_by(&mut rows, |a, b| b.1.value.total_cmp(&a.1.value));
    let rows = rows.into_iter().map(|((name, _), energy)| {
        let part = if day > 0.0 { energy.get::<watt_hour>() / day } else { 0.0 };
        let cells = [name.clone(), Arg::day_energy(*energy), Arg::share(part)];
        TableRow { cells: cells.iter().map(|cell| style.write(cell)).collect(), chosen: false }
    });
    let heads = [words::GOES_TO_LOAD, words::GOES_TO_DAY, words::GOES_TO_SHARE];
    let mut tables = vec![Table {
        title: style.say(words::GOES_TO),
        heads: heads.map(|head| style.say(head)).into(),
        rows: rows.collect(),
    }];
    if let Some(cable) = &found.cable {
        let heads = [
            words::CHARGERS_TABLE_CABLE,
            words::CHARGERS_TABLE_WAY,
            words::CHARGERS_TABLE_CURRENT,
            words::CHARGERS_TABLE_DROP,
            words::CHARGERS_TABLE_FUSE,
        ];
        tables.push(Table {
            title: style.say(words::CABLE_TABLE),
            heads: heads.map(|head| style.say(head)).into(),
            rows: vec![TableRow { cells: cable.cells(style), chosen: false }],
        });
    }
    tables.extend(charging::tables(&job.chargers, &found.charging, style));
    tables
}

pub(super) fn working(job: &Job, found: &Found, style: Style) -> Vec<Step> {
    let budget = &found.budget;
    let day = style.write(&Arg::day_energy(budget.day));
    let loads = found.loads.iter();
    let mut steps: Vec<Step> = loads.map(|(name, day)| step_named(name, day, style)).collect();
    steps.push(Step::new(
        style.say(words::STEP_DAY),
        "Σ E",
        style.say(words::STEP_DAY_NUMBERS),
        day,
        &crate::energy::budget::BUDGET,
    ));
    steps.push(step(words::STEP_CHARGE, &budget.day_charge, style));
    steps.push(step(words::STEP_BATTERY, &budget.needed, style));
    steps.push(step(words::STEP_BATTERY_CHARGE, &budget.needed_charge, style));
    if let Some(asked) = &found.inverter {
        steps.extend(asked.steps(style));
    }
    if let Some(cable) = &found.cable {
        cable.steps(style, &mut steps);
    }
    match &found.lasts {
        Some(Lasts::Lead(current, lasts)) => {
            steps.push(step(words::STEP_AVERAGE, current, style));
            steps.push(step(words::STEP_LASTS_LEAD, lasts, style));
        }
        Some(Lasts::Plain(lasts) | Lasts::BelowRating(lasts)) => {
            steps.push(step(words::STEP_LASTS, lasts, style));
        }
        None => {}
    }
    steps.extend(charging::steps(&job.chargers, &found.charging, style));
    steps
}

/// The step of a load, under its name.
fn step_named(name: &Arg, day: &crate::energy::budget::DayUse, style: Style) -> Step {
    Step { name: style.write(name), ..step(words::LABEL, day, style) }
}
