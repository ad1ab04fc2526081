//! A schedule in words: answers, remarks and tables.

use uom::si::temperature_interval::kelvin;

use super::clock::moment;
use super::dial::Dial;
use super::found::{Found, StepAir, in_the_night};
use super::inputs::{Job, Planned};
use crate::coating::air::Margin;
use crate::coating::verdict::{Verdict, When};
use crate::quantity::{Style, minutes_down, span};
use crate::report::{Answer, Remark, Table, TableRow, Weight};
use crate::words::{Arg, Id, Msg, schedule as words, wet};

pub(super) fn answers(job: &Job, found: &Found, style: Style) -> Vec<Answer> {
    let (slots, dial) = (&found.schedule.slots, Dial::of(job, found));
    let done = slots.iter().fold(0.0_f64, |done, slot| done.max(slot.end_min));
    let done = dial.from(done);
    let mut answers = vec![match found.walk_on_min {
        Some(walk_on) => {
            Answer::new(style.say(words::READY), style.write(&moment(dial.from(walk_on))))
                .note(style.say(words::ReadyNote { time: moment(done) }))
        }
        None => Answer::new(style.say(words::DONE), style.write(&moment(done)))
            .note(style.say(words::DONE_NOTE)),
    }];
    // The last batch that is mixed at all, not that of a step of work alone.
    let last = found.all().zip(&job.steps).rev().find(|((step, ..), _)| step.is_mixed());
    if let Some(((_, slot, _), planned)) = last {
        let step = planned.name.clone();
        let note: Msg = match slot.mix_by_min {
            Some(by) if by > slot.last_mix_min + 0.5 => {
                words::MixLastNoteBy { step, time: moment(dial.by(by)) }.into()
            }
            _ => words::MixLastNote { step }.into(),
        };
        let time = style.write(&moment(dial.from(slot.last_mix_min)));
        answers.push(Answer::new(style.say(words::MIX_LAST), time).note(style.say(note)));
    }
    answers.push(works(job, found, style));
    answers
}

/// Yes only where times, labels, air and nights are known and fit.
fn works(job: &Job, found: &Found, style: Style) -> Answer {
    let may = |verdict: &Verdict| verdict.may_coat();
    let barred = found.verdicts.iter().flatten().filter(|v| may(v) == Some(false)).count();
    let problems = found.schedule.breaches.len() + barred;
    let answer = |said: Msg| Answer::new(style.say(words::WORKS), style.say(said));
    if problems > 0 {
        return answer(words::WorksProblems { count: problems }.into());
    }
    let wet = || job.steps.iter().zip(&found.verdicts).filter(|(planned, _)| !planned.dry);
    let unknown = wet().find_map(|(planned, verdict)| match verdict {
        None => Some((planned, Arg::from(wet::MISSING_AIR))),
        Some(verdict) => may(verdict).is_none().then(|| (planned, verdict.unknown())),
    });
    match unknown {
        None => answer(words::WORKS_YES.into()),
        Some((planned, missing)) => {
            let enter = words::WorksEnter { step: planned.name.clone(), missing };
            answer(words::WORKS_TIMES_ALONE.into()).note(style.say(enter))
        }
    }
}

pub(super) fn remarks(job: &Job, found: &Found, style: Style) -> Vec<Remark> {
    let note = |message: Msg| Remark::note(style.say(message));
    let warning = |message: Msg| Remark::warning(style.say(message));
    let (mut remarks, dial) = (Vec::new(), Dial::of(job, found));
    for breach in &found.schedule.breaches {
        let Some(planned) = job.steps.get(breach.step) else { continue };
        let (step, problem) = (planned.name.clone(), Msg::from(breach.kind));
        remarks.push(warning(words::Problem { step, problem }.into()));
    }
    for (((_, slot, air), planned), verdict) in found.all().zip(&job.steps).zip(&found.verdicts) {
        if in_the_night(slot) {
            let (from, to) = (moment(dial.from(slot.start_min)), moment(dial.from(slot.end_min)));
            let step = planned.name.clone();
            remarks.push(warning(words::InTheNight { step, from, to }.into()));
        }
        if let (Some(air), Some(verdict)) = (air, verdict) {
            remarks.extend(barred(planned, &air, verdict, &dial).into_iter().map(warning));
            if verdict.may_coat().is_none() {
                let (step, missing) = (planned.name.clone(), verdict.unknown());
                remarks.push(note(words::NotShown { step, missing }.into()));
            }
        }
    }
    remarks.extend(put_off(job, found, &dial).into_iter().map(note));
    if found.steps.iter().any(|step| step.pace.at(0.0) != 1.0) {
        remarks.push(note(words::RULE_OF_THUMB.into()));
    }
    if remarks.iter().all(|remark| remark.weight == Weight::Note) {
        remarks.insert(0, Remark::good(style.say(words::ALL_WELL)));
    }
    remarks
}

/// Steps that wait for the working hours, or for the sake of a later one.
fn put_off(job: &Job, found: &Found, dial: &Dial) -> Vec<Msg> {
    let mut notes = Vec::new();
    for (index, ((step, slot, _), planned)) in found.all().zip(&job.steps).enumerate() {
        let from = if index == 0 { job.start_min } else { slot.earliest_min };
        if slot.start_min > from + 0.5 && step.starts_min.is_none() {
            let (from, to) = (moment(dial.from(from)), moment(dial.from(slot.start_min)));
            notes.push(words::PutOff { step: planned.name.clone(), from, to }.into());
        }
    }
    notes
}

/// What its label or the dew point forbids.
fn barred(planned: &Planned, air: &StepAir, verdict: &Verdict, dial: &Dial) -> Vec<Msg> {
    let why = |when: When, worst: &(f64, Margin)| {
        let why = verdict.why(when, &planned.limits)?;
        Some(if worst.1.far_enough { why } else { with_dew(why, worst, dial) })
    };
    let step = || planned.name.clone();
    let now = why(When::Now, &air.worst);
    let later = why(When::Later, &air.drying);
    let now = now.map(|why| words::BarredNow { step: step(), why }.into());
    let later = later.map(|why| words::BarredLater { step: step(), why }.into());
    now.into_iter().chain(later).collect()
}

/// With where the surface stands to the dew point at its worst.
fn with_dew(why: Arg, (time, margin): &(f64, Margin), dial: &Dial) -> Arg {
    let above = margin.margin.get::<kelvin>();
    let (time, by) = (moment(dial.from(*time)), Arg::kelvin(above.abs()));
    match above < 0.0 {
        true => Msg::from(words::WhyBelow { why, time, by }).into(),
        false => Msg::from(words::WhyAbove { why, time, by }).into(),
    }
}

fn heads(of: &[Id], style: Style) -> Vec<String> {
    of.iter().map(|head| style.say(*head)).collect()
}

/// Windows, step by step.
pub(super) fn windows(job: &Job, found: &Found, style: Style) -> Table {
    let dial = Dial::of(job, found);
    let or_dash =
        |of: Option<f64>| of.map_or_else(|| "–".to_owned(), |time| style.write(&moment(time)));
    let rows =
        found.all().zip(&job.steps).enumerate().map(|(index, ((step, slot, _), planned))| {
            let breaks = found.schedule.breaches.iter().any(|breach| breach.step == index);
            let pace = step.pace.least(slot.start_min, slot.end_min);
            let name = planned.name.clone();
            TableRow {
                cells: vec![
                    match breaks {
                        true => style.say(words::WindowsBroken { step: name }),
                        false => style.write(&name),
                    },
                    or_dash(Some(dial.from(slot.offer_from_min))),
                    or_dash(slot.offer_until_min.map(|time| dial.by(time))),
                    span(step.work_min),
                    step.workable_min
                        .map_or_else(|| "–".to_owned(), |min| span(minutes_down(min * pace))),
                    or_dash(Some(dial.from(slot.last_mix_min)).filter(|_| step.is_mixed())),
                    or_dash(slot.mix_by_min.filter(|_| step.is_mixed()).map(|time| dial.by(time))),
                    or_dash(slot.traffic_from_min.map(|time| dial.from(time))),
                ],
                chosen: false,
            }
        });
    let of = [
        words::WINDOWS_STEP,
        words::WINDOWS_FROM,
        words::WINDOWS_UNTIL,
        words::WINDOWS_WORK,
        words::WINDOWS_BATCH,
        words::WINDOWS_MIX,
        words::WINDOWS_MIX_BY,
        words::WINDOWS_WALK,
    ];
    Table { title: style.say(words::WINDOWS), heads: heads(&of, style), rows: rows.collect() }
}

/// Air, step by step; none where none is known.
pub(super) fn air(job: &Job, found: &Found, style: Style) -> Option<Table> {
    let dial = Dial::of(job, found);
    let steps = found.all().zip(&job.steps).zip(&found.verdicts);
    let rows = steps.filter_map(|(((_, slot, air), planned), verdict)| {
        // All digits where the air forbids it: whole degrees might show none too few.
        let barred = verdict.as_ref().and_then(Verdict::may_coat) == Some(false);
        let style = if barred { style.exact() } else { style };
        let StepAir { weather, worst: (_, worst), drying: (_, drying) } = air?;
        let above = |margin: Margin| style.temperature_difference(margin.margin.get::<kelvin>());
        Some(TableRow {
            cells: vec![
                style.write(&planned.name),
                style.write(&moment(dial.from(slot.start_min))),
                style.temperature(weather.temperature),
                style.write(&Arg::ratio(weather.humidity)),
                style.temperature(weather.surface),
                above(worst),
                above(drying),
            ],
            chosen: false,
        })
    });
    let rows: Vec<TableRow> = rows.collect();
    let of = [
        words::AIRS_STEP,
        words::AIRS_START,
        words::AIRS_AIR,
        words::AIRS_HUMIDITY,
        words::AIRS_SURFACE,
        words::AIRS_WORK,
        words::AIRS_DRYING,
    ];
    let (title, heads) = (style.say(words::AIRS), heads(&of, style));
    (!rows.is_empty()).then_some(Table { title, heads, rows })
}
