//! Mixing at the bench: cup by cup, what is poured first and the level after the second part.

use uom::si::mass::gram;
use uom::si::volume::milliliter;

use super::found::Found;
use super::inputs::Job;
use super::shown::measured;
use crate::coating::mixing::{By, Parts};
use crate::quantity::{Pour, Style, plain};
use crate::report::{Figure, Task};
use crate::text::text;
use crate::words::{Id, gap_fill as words};

/// Nobody ticks off more cups than these; of more, the cup's marks and the table stand on the sheet. Our own rule.
const MOST_CUPS: u32 = 100;

/// Two figures for each cup.
pub fn of_cups(job: &Job, found: &Found, style: Style) -> Vec<Task> {
    let cups = found.all_cups;
    if cups > MOST_CUPS {
        return Vec::new();
    }
    let by = job.inputs.mix.by();
    let Pour { first, second, level } = measured(by, &found.in_cup, style);
    let (then, passes) = (words::BenchOnTop { second }, found.batches.passes);
    let then = style.say(then);
    let of_pass = (cups / passes.max(1)).max(1);
    let in_id = in_si(by, &found.in_cup);
    let mut tasks = Vec::with_capacity(2 * cups as usize);
    for cup in 1..=cups {
        let piece = style.say(words::BenchCup { cup, cups });
        let pass = (passes > 1).then(|| (cup - 1) / of_pass + 1);
        let pass = pass.map(|pass| style.say(words::BenchPass { pass, passes }));
        let mut task = |part: &str, what: Id, figure: &str, note: String| {
            tasks.push(Task {
                // Of another mix it is another cup.
                key: text!("cup/{}/{}/{}", &cup, part, &in_id),
                piece: piece.clone(),
                text: style.say(what),
                figure: Figure::Amount(figure.to_owned()),
                note,
            });
        };
        task("a", words::BENCH_FIRST, &first, pass.unwrap_or_default());
        task("b", words::BENCH_SECOND, &level, then.clone());
    }
    tasks
}

/// Both parts in grams or millilitres, for a tick.
fn in_si(by: By, parts: &Parts) -> String {
    let (a, b, unit) = match (by, parts.a_mass.zip(parts.b_mass)) {
        (By::Mass, Some((a, b))) => (a.get::<gram>(), b.get::<gram>(), "g"),
        _ => (parts.a.get::<milliliter>(), parts.b.get::<milliliter>(), "ml"),
    };
    text!("{}+{}{}", &plain(a, 1), &plain(b, 1), unit)
}
