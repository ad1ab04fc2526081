//! A run in words: answers, remarks, the conductors beside each other, and the working.

use super::{Choice, Found, Inputs, Job};
use crate::electrical::conductor::Conductor;
use crate::electrical::drop::{Load, greatest_resistance_ohm};
use crate::electrical::run_formulas::{
    BothConductors, Drop, DropShare, LoadVoltage, LongestRun, Loss, MostBeforeCurrent,
    MostBeforePower, PowerCurrent,
};
use crate::electrical::{fuse, sources};
use crate::fault::Fault;
use crate::formula::step;
use crate::lists::BuyLine;
use crate::outcome::Outcome as _;
use crate::quantity::{Style, UnitSystem};
use crate::report::{Answer, Remark, Report, Step, Table, TableRow};
use crate::sheet::wiring::cautions::WIRING;
use crate::sheet::wiring::{
    ampacity_steps, amperes, drop_beside, drop_volts, fuse_line, fuse_steps, general_remarks,
    limit, percent, rating, resistance_steps, volts, watts, wire_line,
};
use crate::words::{Arg, Id, Msg, voltage_drop as words, wiring};

pub(super) fn show(job: &Job, found: &Found, style: Style) -> Report {
    let not_safe = found.not_safe(&job.run).map(|message| style.say(message));
    Report {
        answers: answers(job, found, style),
        remarks: remarks(job, found, style),
        tables: tables(found, style),
        drawings: found
            .fuse_a
            .map(|a| super::drawing::draw(job, found, a, style))
            .into_iter()
            .collect(),
        working: working(job, found, style.exact()),
        cautions: WIRING.to_vec(),
        buy: buy(job, found, style),
        gives: found.gives(),
        outcome: found.record(),
        faults: not_safe.map(|why| Fault::new(Inputs::CONDUCTOR.key, why)).into_iter().collect(),
        ..Report::default()
    }
}

fn buy(job: &Job, found: &Found, style: Style) -> Vec<BuyLine> {
    let Some(fuse_a) = found.fuse_a else { return Vec::new() };
    let mut fuses = fuse_line(fuse_a, job.supply.highest_v, style);
    if job.far_source {
        (fuses.quantity, fuses.needed) = (2.0, 2.0);
    }
    let metres = 2.0 * job.run.length_m;
    vec![wire_line(found.wired.conductor, metres, &job.run.conditions, style), fuses]
}

fn answers(job: &Job, found: &Found, style: Style) -> Vec<Answer> {
    let wired = &found.wired;
    let [awg, metric] = found.least.map(|size| size.map(|size| size.to_string()));
    let is_awg = matches!(wired.conductor, Conductor::Awg(_));
    let why: Msg = match (job.is_open(), is_awg, awg, metric) {
        (false, ..) => words::ANSWER_WIRE_GIVEN.into(),
        (true, true, _, Some(other)) => words::AnswerWireLeastMetric { other }.into(),
        (true, false, Some(other), _) => words::AnswerWireLeastAwg { other }.into(),
        (true, ..) => words::ANSWER_WIRE_LEAST.into(),
    };
    let conductor = wired.conductor.to_string();
    let drop = words::AnswerDropText {
        volts: drop_volts(wired.drop_v),
        percent: drop_beside(wired.drop_percent, job.run.drop_limit_percent),
    };
    let place = if job.far_source { words::ANSWER_FUSE_EACH_END } else { words::ANSWER_FUSE };
    let (fuse, note) = match found.fuse_a {
        Some(fuse_a) => (style.figure(rating(fuse_a)), fuse_note(job, found)),
        None => {
            let conductor = conductor.as_str();
            let draws = words::LoadDraws { current: amperes(wired.highest_a) };
            (style.say(words::AnswerFuseHidden { conductor }), draws.into())
        }
    };
    vec![
        Answer::new(style.say(words::ANSWER_WIRE), style.figure(conductor)).note(style.say(why)),
        Answer::new(style.say(words::ANSWER_DROP), style.say(drop))
            .note(style.say(words::AnswerDropArrives { volts: volts(wired.load_v) })),
        Answer::new(style.say(place), fuse).note(style.say(note)),
    ]
}

fn fuse_note(job: &Job, found: &Found) -> Msg {
    let wired = &found.wired;
    let draws: Msg = match job.run.low_v {
        Some(_) => words::LoadDrawsUpTo { current: amperes(wired.highest_a) }.into(),
        None => words::LoadDraws { current: amperes(wired.current_a) }.into(),
    };
    let limit_a = wired.rated.ok().map(|rated| rated.fuse_limit_a());
    match limit_a.and_then(fuse::greatest_rating) {
        Some(most) => words::LoadDrawsTakes { draws, most: rating(most) }.into(),
        None => draws,
    }
}

/// What would do in place of a conductor that loses too much.
fn instead(found: &Found) -> Msg {
    let conductor = found.wired.conductor.to_string();
    let size = found.would_do().map(|size| size.to_string());
    match (size, found.longest_run_m.map(Arg::run_at_most)) {
        (Some(size), Some(length)) => words::InsteadBoth { size, conductor, length }.into(),
        (Some(size), None) => words::Instead { size }.into(),
        (None, Some(length)) => words::InsteadShorter { conductor, length }.into(),
        (None, None) => words::INSTEAD_NONE.into(),
    }
}

fn remarks(job: &Job, found: &Found, style: Style) -> Vec<Remark> {
    let (wired, run) = (&found.wired, &job.run);
    let note = |message: Msg| Remark::note(style.say(message));
    let allowed = limit(run.drop_limit_percent);
    let mut remarks = Vec::new();
    if !wired.within_limit {
        let percent = drop_beside(wired.drop_percent, run.drop_limit_percent);
        let lost = words::Lost { percent, limit: allowed.as_str(), instead: instead(found) };
        remarks.push(Remark::warning(style.say(lost)));
    }
    if let Some(problem) = found.not_safe(run) {
        remarks.push(Remark::warning(style.say(words::NotShown { problem })));
    }
    if wired.within_limit && wired.is_protected() {
        let conductor = wired.conductor.to_string();
        let good: Msg = match wired.longest_run_m.map(Arg::run_at_most) {
            Some(length) => words::Good { conductor, limit: allowed, length }.into(),
            None => words::GoodAny { conductor, limit: allowed }.into(),
        };
        remarks.push(Remark::good(style.say(good)));
    }
    let used = [wired.conductor];
    let fuses_a: Vec<f64> = found.fuse_a.into_iter().collect();
    general_remarks(&job.supply, &used, &fuses_a, &run.conditions, style, &mut remarks);
    if job.far_source {
        remarks.push(note(wiring::FAR_FUSES.into()));
    }
    if let (Load::Power(_), None) = (run.load, run.low_v) {
        remarks.push(note(wiring::CONSTANT_POWER.into()));
    }
    if !fuses_a.is_empty() {
        remarks.push(note(words::MOTORS.into()));
        let length = Arg::run_meters(run.length_m);
        remarks.push(note(words::Heat { length, loss: watts(wired.loss_w) }.into()));
    }
    remarks
}

/// AWG and metric sizes, those of the style's system first.
fn tables(found: &Found, style: Style) -> Vec<Table> {
    let mut tables = vec![
        table(words::TABLE_AWG, true, found, style),
        table(words::TABLE_METRIC, false, found, style),
    ];
    if style.system == UnitSystem::Metric {
        tables.reverse();
    }
    tables
}

fn table(title: Id, awg: bool, found: &Found, style: Style) -> Table {
    let heads = [
        words::HEAD_WIRE,
        words::HEAD_DROP,
        words::HEAD_LONGEST,
        words::HEAD_CARRIES,
        words::HEAD_ENOUGH,
    ];
    let of = found.choices.iter().filter(|choice| matches!(choice.of, Conductor::Awg(_)) == awg);
    let rows = of.map(|choice| TableRow {
        cells: cells(choice, style),
        chosen: choice.of == found.wired.conductor,
    });
    Table {
        title: style.say(title),
        heads: heads.map(|head| style.say(head)).into(),
        rows: rows.collect(),
    }
}

fn cells(choice: &Choice, style: Style) -> Vec<String> {
    let none = || String::from("–");
    let size = style.figure(choice.conductor.clone());
    let Some(wired) = &choice.wired else {
        let why = style.say(words::ENOUGH_UNSTEADY);
        return vec![size, none(), none(), none(), why];
    };
    let enough = match (wired.within_limit, wired.is_protected()) {
        (true, true) => words::ENOUGH,
        (false, false) => words::ENOUGH_BOTH,
        (false, true) => words::ENOUGH_DROP,
        _ if wired.ampacity_a.is_none() => words::ENOUGH_UNKNOWN,
        _ => words::ENOUGH_CURRENT,
    };
    vec![
        size,
        style.figure(percent(wired.drop_percent)),
        wired.longest_run_m.map_or_else(none, |metres| style.run_at_most(metres)),
        style.figure(wired.ampacity_a.map_or_else(none, amperes)),
        style.say(enough),
    ]
}

fn working(job: &Job, found: &Found, style: Style) -> Vec<Step> {
    let (run, wired) = (&job.run, &found.wired);
    let Ok(ohm_per_m) = wired.conductor.ohm_per_m(run.temperature_c) else {
        return Vec::new();
    };
    let (source_v, length_m) = (run.source_v, run.length_m);
    let (current_a, drop_v) = (wired.current_a, wired.drop_v);
    let resistance_ohm = wired.resistance_ohm;
    let mut steps = resistance_steps(wired.conductor, run.temperature_c, ohm_per_m, style);
    steps.push(step(words::STEP_BOTH, &BothConductors { length_m, ohm_per_m }, style));
    if let Load::Power(power_w) = run.load {
        let voltage = LoadVoltage { source_v, resistance_ohm, power_w };
        steps.push(step(words::STEP_LOAD, &voltage, style));
        let current = PowerCurrent { power_w, load_v: wired.load_v };
        steps.push(step(words::STEP_CURRENT, &current, style));
    }
    steps.push(step(words::STEP_DROP, &Drop { current_a, resistance_ohm }, style));
    steps.push(step(words::STEP_SHARE, &DropShare { drop_v, source_v }, style));
    steps.push(step(words::STEP_LOSS, &Loss { current_a, drop_v }, style));
    steps.extend(longest_run_steps(job, found, ohm_per_m, style));
    steps.extend(ampacity_steps(wired.conductor, &run.conditions, style));
    if let (Some(low_v), Load::Power(_)) = (run.low_v, run.load) {
        steps.push(Step::new(
            style.say(words::STEP_LOW),
            "I = P / V",
            style.figure(volts(low_v)),
            style.figure(amperes(wired.highest_a)),
            &sources::CONSTANT_POWER,
        ));
    }
    let fuse = wired.fuse.as_ref().ok().filter(|_| wired.carries());
    steps.extend(fuse_steps(wired.highest_a, run.continuous, fuse, style));
    steps
}

fn longest_run_steps(job: &Job, found: &Found, ohm_per_m: f64, style: Style) -> Vec<Step> {
    let run = &job.run;
    let most = greatest_resistance_ohm(run.source_v, run.load, run.drop_limit_percent);
    let (Ok(Some(most_ohm)), Some(_)) = (most, found.longest_run_m) else {
        return Vec::new();
    };
    let (source_v, share) = (run.source_v, run.drop_limit_percent / 100.0);
    let most = match run.load {
        Load::Power(power_w) => {
            let of = MostBeforePower { source_v, share: share.min(0.5), power_w };
            step(words::STEP_MOST, &of, style)
        }
        _ => {
            let of = MostBeforeCurrent { share, source_v, current_a: found.wired.current_a };
            step(words::STEP_MOST, &of, style)
        }
    };
    vec![most, step(words::STEP_LONGEST, &LongestRun { most_ohm, ohm_per_m }, style)]
}
