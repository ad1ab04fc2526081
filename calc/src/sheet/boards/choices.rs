//! What joints save: a row for each number of joints worth having, and what is proved of the chosen one.

use super::found::Found;
use super::mm;
use crate::carpentry::joints::{JointPlan, LayoutChoice};
use crate::quantity::{Style, money, plain};
use crate::report::{Remark, Table, TableRow};
use crate::words::{Arg, Msg, boards as words};

/// Money, or a length of stock.
fn amount(joining: &JointPlan, value: f64) -> Arg {
    if joining.cut_plan.priced { money(value).into() } else { mm(value).into() }
}

fn joints(choice: &LayoutChoice) -> Msg {
    words::JointCount { joints: choice.joints }.into()
}

/// What each number of joints costs at least; none where there is nothing to choose.
pub(super) fn table(found: &Found, style: Style) -> Option<Table> {
    let joining = &found.layout.joining;
    let written = |value: f64| style.write(&amount(joining, value));
    let first = joining.choices.first().filter(|_| joining.choices.len() > 1)?;
    let rows = joining.choices.iter().enumerate().map(|(at, choice)| TableRow {
        cells: vec![
            choice.joints.to_string(),
            written(choice.cost),
            if at == 0 { String::new() } else { written(first.cost - choice.cost) },
            if choice.proved {
                style.say(words::LAYOUTS_PROVED)
            } else {
                style.say(words::LayoutsBound { bound: amount(joining, choice.bound) })
            },
        ],
        chosen: at == joining.chosen,
    });
    let stock =
        if joining.cut_plan.priced { words::LAYOUTS_STOCK } else { words::LAYOUTS_STOCK_LENGTH };
    let heads = [words::LAYOUTS_JOINTS, stock, words::LAYOUTS_SAVES, words::LAYOUTS_LEAST];
    Some(Table {
        title: style.say(words::LAYOUTS),
        heads: heads.map(|head| style.say(head)).into(),
        rows: rows.collect(),
    })
}

/// Whether the choice is the best there is, and what to enter for another one.
pub(super) fn remarks(found: &Found, joint_price: f64, style: Style) -> Vec<Remark> {
    let joining = &found.layout.joining;
    let Some(chosen) = joining.choices.get(joining.chosen) else { return Vec::new() };
    let counted = if joint_price > 0.0 {
        Msg::from(words::Counted { price: amount(joining, joint_price) }).into()
    } else {
        Arg::from("")
    };
    let total = chosen.cost + joint_price * f64::from(chosen.joints);
    let mut remarks = vec![match (joining.proved, joining.cut_plan.priced) {
        (true, true) => Remark::good(style.say(words::LayoutProvedCost { counted })),
        (true, false) => Remark::good(style.say(words::LayoutProvedStock { counted })),
        (false, _) => {
            let [total, bound] = [total, joining.bound].map(|value| amount(joining, value));
            Remark::note(style.say(words::LayoutBest { total, counted, bound }))
        }
    }];
    remarks.extend(fewer(joining, chosen).map(|said| Remark::note(style.say(said))));
    if joint_price > 0.0 {
        remarks.extend(more(joining, chosen).map(|said| Remark::note(style.say(said))));
    }
    remarks
}

/// What fewer joints cost, and from which worth of a joint on they are chosen.
fn fewer(joining: &JointPlan, chosen: &LayoutChoice) -> Option<Msg> {
    let each = |other: &LayoutChoice| {
        (other.cost - chosen.cost) / f64::from(chosen.joints.saturating_sub(other.joints).max(1))
    };
    let before = joining.choices.get(..joining.chosen)?;
    let next = before.iter().min_by(|a, b| each(a).total_cmp(&each(b)))?;
    let more = amount(joining, next.cost - chosen.cost);
    let (fewer, worth) = (joints(next), entered(joining, each(next)));
    Some(words::FewerJoints { fewer, more, joints: joints(chosen), worth }.into())
}

/// What more joints would save, where a joint has its price.
fn more(joining: &JointPlan, chosen: &LayoutChoice) -> Option<Msg> {
    let each = |other: &LayoutChoice| {
        (chosen.cost - other.cost) / f64::from(other.joints.saturating_sub(chosen.joints).max(1))
    };
    let after = joining.choices.get(joining.chosen + 1..)?;
    let next = after.iter().max_by(|a, b| each(a).total_cmp(&each(b)))?;
    let [saved, each] = [chosen.cost - next.cost, each(next)].map(|value| amount(joining, value));
    Some(words::MoreJoints { more: joints(next), saved, each }.into())
}

/// A little more than what makes two choices equal, as it is typed.
fn entered(joining: &JointPlan, each: f64) -> String {
    // Money is typed in hundredths, a length in whole millimetres.
    let parts = if joining.cut_plan.priced { 100.0 } else { 1.0 };
    plain(((each * parts).floor() + 1.0) / parts, 2)
}
