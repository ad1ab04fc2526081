//! Version 1 named lines, marks and cuts by the words they were shown in. What such a file keeps under those words is carried over
//! to the ids of version 2.
//!
//! The words hung on the unit system and on the rounding, so the project is worked out in each of them until all is found: the
//! file's own first. What is found in none is kept under [`KEPT`] as it was, and looked for again whenever the file is opened.
//! The words here are those of version 1, whatever lines are called today: they are never changed.

use serde_json::{Map, Value as Node, json};
use uom::si::length::millimeter;

use super::super::{CutBar, Evaluation, Project, evaluate, shopping, system_key};
use crate::lists::{EACH, MergedBuyLine, in_si};
use crate::quantity::{Length, Rounding, Style, from_digits, plain};
use crate::report::CheckLine;
use crate::sorting::sort_by;

/// What of a version 1 file has not been found yet: `lines` and `ticked`, as they stood there.
pub(super) const KEPT: &str = "version_1";

/// The step itself: sets aside what is kept under words.
pub(super) fn set_aside(document: &mut Map<String, Node>) {
    keep_joints(document);
    let mut kept = Map::new();
    if let Some(ticked) = document.shift_remove("ticked") {
        kept.insert("ticked".into(), ticked);
    }
    let shopping = document.get_mut(shopping::KEY).and_then(Node::as_object_mut);
    if let Some(lines) = shopping.and_then(|all| all.shift_remove("lines")) {
        kept.insert("lines".into(), lines);
    }
    // Lines of a person's own that had the words of a sheet's line were added to it.
    kept.insert("own".into(), json!(true));
    document.insert(KEPT.into(), Node::Object(kept));
}

/// Version 1 laid boards with the fewest joints. A ceiling that is marked or cut in part stays as it was laid: its sheet is given a
/// joint price that no stock saves.
fn keep_joints(document: &mut Map<String, Node>) {
    let begun = |sheet: &str| {
        let of_sheet = |key: &String| key.split('|').next() == Some(sheet);
        ["marks", "boards"].iter().any(|list| {
            let ticks = document.get("ticked").and_then(|all| all.get(list)?.as_object());
            ticks.is_some_and(|ticks| ticks.keys().any(of_sheet))
        })
    };
    let text = |sheet: &Node, key: &str| sheet.get(key).and_then(Node::as_str).map(str::to_owned);
    let sheets = document.get("sheets").and_then(Node::as_array).cloned().unwrap_or_default();
    let laid: Vec<bool> = sheets
        .iter()
        .map(|sheet| {
            text(sheet, "kind").as_deref() == Some("boards")
                && text(sheet, "id").is_some_and(|id| begun(&id))
        })
        .collect();
    let Some(sheets) = document.get_mut("sheets").and_then(Node::as_array_mut) else { return };
    for (sheet, laid) in sheets.iter_mut().zip(laid) {
        if let Some(inputs) = sheet.get_mut("inputs").and_then(Node::as_object_mut).filter(|_| laid)
        {
            inputs.entry("joint_price").or_insert_with(|| json!(FEWEST_JOINTS));
        }
    }
}

/// More than any joint saves, in any currency.
const FEWEST_JOINTS: u32 = 100_000;

/// Carries over what can be found.
pub(crate) fn settle(project: &mut Project) {
    let Some(Node::Object(mut kept)) = project.document.shift_remove(KEPT) else { return };
    let own = kept.shift_remove("own").is_some()
        && project.extra(shopping::KEY).is_some_and(|all| all.get("own").is_some());
    for style in styles(project.style()) {
        if kept.is_empty() && !own {
            break;
        }
        let mut shown = project.clone();
        shown.set_extra("units", json!(system_key(style.system)));
        shown.set_extra("rounding", json!(style.rounding.name()));
        let all = evaluate(&shown);
        if own {
            add_to_like_lines(project, &all);
        }
        settle_lines(project, &mut kept, &all);
        settle_ticks(project, &mut kept, &all);
    }
    if !kept.is_empty() {
        project.document.insert(KEPT.into(), Node::Object(kept));
    }
}

/// All ways in which results can be written, the file's own first.
fn styles(own: Style) -> Vec<Style> {
    let all = Rounding::ALL.into_iter();
    let mut styles: Vec<Style> = all.map(Style::rounded).collect();
    let far = |style: &Style| (*style != own, style.system != own.system);
    sort_by(&mut styles, |a, b| far(a).cmp(&far(b)));
    styles
}

/// The words of version 1: item, spec and unit of a line as it was shown.
fn line_keys(project: &Project, merged: &MergedBuyLine) -> Vec<String> {
    let line = &merged.line;
    let mut keys = vec![format!("{}|{}|{}", line.item, line.spec, line.unit)];
    // Battery fuses were listed by what they break.
    if line.spec.contains(", interrupt rating ") {
        let spec = line.spec.replace(", interrupt rating ", ", breaks ");
        keys.push(format!("{}|{}|{}", line.item, spec, line.unit));
    }
    let parts: Vec<&str> = merged.id.split('/').collect();
    match *parts.as_slice() {
        ["wire", size, ..] => {
            let spec = match conductor(size) {
                Some(size) if size.ends_with("ohm/m") => size,
                Some(size) => format!("{size} stranded copper"),
                None => return keys,
            };
            keys.push(format!("wire|{spec}, half positive, half negative|{}", line.unit));
        }
        ["fuse", rating, volts, ..] => {
            let rating = rating.strip_suffix('a').unwrap_or(rating);
            let class = line.item.split(" with holder").next().unwrap_or("fuse");
            for item in ["fuse", class] {
                for volts in ["32", volts.strip_suffix('v').unwrap_or(volts)] {
                    keys.push(format!("{item} with holder|{rating} A, {volts} V DC or more|each"));
                }
            }
        }
        ["splice", ways, size] => {
            if let Some(size) = conductor(size) {
                keys.push(format!("splice connector|{ways} ways, takes {size}|each"));
            }
        }
        ["splice", ways] => keys.push(format!("splice connector|{ways} ways|each")),
        ["lamp", ..] => {
            // The hole's size stood behind its word.
            if let Some((lamp, hole)) =
                line.spec.strip_suffix(" hole").and_then(|spec| spec.rsplit_once(", "))
            {
                keys.push(format!("{}|{lamp}, hole {hole}|each", line.item));
            }
        }
        // The boards' screw was listed as it was typed, whatever is known of its length today.
        [sheet, "screw"] => {
            let typed = project.sheet(sheet).and_then(|sheet| sheet.inputs().get("screw").cloned());
            if let Some(typed) = typed.as_ref().and_then(Node::as_str) {
                keys.push(format!("screw|{}|each", typed.trim()));
            }
        }
        _ => {}
    }
    keys
}

/// `awg1_0` as it was written: `1/0 AWG`.
fn conductor(id: &str) -> Option<String> {
    if let Some(size) = id.strip_prefix("awg") {
        return Some(format!("{} AWG", size.replace('_', "/")));
    }
    match id.strip_suffix("mm2") {
        Some(size) => Some(format!("{size} mm2")),
        None => Some(format!("{} ohm/m", id.strip_suffix("ohm_m")?)),
    }
}

/// Takes the entry of the first of these names out of a set of fields; capitals, spaces and × make no difference.
fn take(fields: &mut Map<String, Node>, names: &[String]) -> Option<(String, Node)> {
    let found = names.iter().find_map(|name| {
        let folded = fold(name);
        fields.keys().find(|key| **key == *name || fold(key) == folded).cloned()
    })?;
    let node = fields.shift_remove(&found)?;
    Some((found, node))
}

fn fold(name: &str) -> String {
    let words: Vec<&str> = name.split_whitespace().collect();
    words.join(" ").replace('×', "x").to_ascii_lowercase()
}

/// What was typed for lines of the list. Where a line of version 1 is several now, each takes over what was typed.
fn settle_lines(project: &mut Project, kept: &mut Map<String, Node>, all: &Evaluation) {
    let Some(Node::Object(old)) = kept.get_mut("lines") else {
        return;
    };
    let mut taken: Vec<(String, Node)> = Vec::new();
    for merged in &all.buy_list {
        let names = line_keys(project, merged);
        let again =
            taken.iter().find(|(name, _)| names.iter().any(|n| fold(n) == fold(name))).cloned();
        let Some((name, said)) = again.or_else(|| take(old, &names)) else { continue };
        let unit = name.rsplit('|').next().unwrap_or(EACH).to_owned();
        keep_said(project, &merged.id, said.clone(), &unit);
        taken.push((name, said));
    }
    if old.is_empty() {
        kept.shift_remove("lines");
    }
}

/// Keeps what was typed under a line's id; what stands there already goes before it.
fn keep_said(project: &mut Project, id: &str, mut said: Node, unit: &str) {
    pin(&mut said, unit);
    let shopping = project.document.entry(shopping::KEY).or_insert_with(|| json!({}));
    let Some(shopping) = shopping.as_object_mut() else { return };
    let lines = shopping.entry("lines").or_insert_with(|| json!({}));
    let Some(lines) = lines.as_object_mut() else { return };
    match (lines.get_mut(id), said) {
        (Some(Node::Object(there)), Node::Object(said)) => {
            for (key, value) in said {
                there.entry(key).or_insert(value);
            }
        }
        (_, said) => drop(lines.insert(id.to_owned(), said)),
    }
}

/// A pack, a price and a mass were of the unit that the line was counted in then: it is written beside them.
pub(in crate::project) fn pin(said: &mut Node, unit: &str) {
    let Some(said) = said.as_object_mut().filter(|_| unit != EACH) else { return };
    let pack = said.get("pack").map(|pack| match pack {
        Node::String(text) => text.trim().to_owned(),
        other => other.to_string(),
    });
    match pack {
        Some(text) if from_digits(&text).is_some() => {
            said.insert("pack".into(), json!(format!("{text} {unit}")));
        }
        None if said.contains_key("price") || said.contains_key("mass") => {
            said.insert("pack".into(), json!(format!("1 {unit}")));
        }
        _ => {}
    }
}

/// Own lines with the words of a sheet's line were added to it, and still are.
fn add_to_like_lines(project: &mut Project, all: &Evaluation) {
    let of_sheets = all.buy_list.iter().filter(|merged| merged.sheets().next().is_some());
    let known: Vec<(&str, Vec<String>)> =
        of_sheets.map(|merged| (merged.id.as_str(), line_keys(project, merged))).collect();
    let Some(rows) = project
        .document
        .get_mut(shopping::KEY)
        .and_then(|all| all.get_mut("own"))
        .and_then(Node::as_array_mut)
    else {
        return;
    };
    for row in rows.iter_mut().filter_map(Node::as_object_mut) {
        let text = |key: &str, default: &str| {
            row.get(key).and_then(Node::as_str).unwrap_or(default).trim().to_owned()
        };
        let name = format!("{}|{}|{}", text("item", ""), text("spec", ""), text("unit", EACH));
        let like = known.iter().find(|(_, keys)| keys.iter().any(|key| fold(key) == fold(&name)));
        if let (Some((id, _)), false) = (like, row.contains_key("adds_to")) {
            row.insert("adds_to".into(), json!(id));
        }
    }
}

fn settle_ticks(project: &mut Project, kept: &mut Map<String, Node>, all: &Evaluation) {
    let Some(Node::Object(old)) = kept.get_mut("ticked") else {
        return;
    };
    let mut found: Vec<(String, String, Node)> = Vec::new();
    let mut settle = |list: &str, names: &[String], id: String| {
        let Some(Node::Object(ticks)) = old.get_mut(list) else { return };
        let Some((name, mut tick)) = take(ticks, names) else { return };
        if list == "buy" {
            let unit = name.rsplit('|').next().unwrap_or(EACH);
            if let Some(quantity) = tick.as_f64() {
                tick = json!(in_si(quantity, unit));
            }
        }
        found.push((list.to_owned(), id, tick));
    };
    for merged in &all.buy_list {
        settle("buy", &line_keys(project, merged), merged.id.clone());
    }
    let mut copies = Copies::default();
    for bar in all.cut_list.iter().flat_map(|group| &group.bars) {
        for _ in 0..bar.count {
            let name = copies.next(&bar_key(bar));
            let id = copies.next(&bar.key());
            settle("cuts", &[name], id);
        }
    }
    for (sheet, result) in &all.sheets {
        let Ok(report) = result.as_ref() else { continue };
        let mut names = Copies::default();
        for strip in &report.marks {
            // What stood in front of the first comma of all of its words.
            let name = strip.label.split(", ").next().unwrap_or_default();
            let name = match names.next(name).rsplit_once('|') {
                Some((name, "1")) => format!("{sheet}|{name}"),
                Some((name, copy)) => format!("{sheet}|{name} {copy}"),
                None => continue,
            };
            let id = format!("{sheet}|{}", strip.id);
            settle("boards", std::slice::from_ref(&name), id.clone());
            for mark in &strip.marks {
                let mm = plain(mark.at.get::<millimeter>(), 1);
                let old = format!("{name}|{}|{mm}", mark.label);
                settle("marks", &[old], format!("{id}|{}|{mm}", mark.id));
            }
        }
        let list = format!("sheet {sheet}");
        for line in report.checks.iter().flat_map(|checks| &checks.lines) {
            if let Some(name) = check_key(line) {
                settle(&list, &[name], line.key.clone());
            }
        }
    }
    old.retain(|_, ticks| ticks.as_object().is_none_or(|ticks| !ticks.is_empty()));
    if old.is_empty() {
        kept.shift_remove("ticked");
    }
    for (list, id, tick) in found {
        let all = project.document.entry("ticked").or_insert_with(|| json!({}));
        let Some(all) = all.as_object_mut() else { return };
        let ticks = all.entry(list).or_insert_with(|| json!({}));
        if let Some(ticks) = ticks.as_object_mut() {
            ticks.entry(id).or_insert(tick);
        }
    }
}

/// Counts equal names: `name|1`, `name|2`.
#[derive(Default)]
struct Copies(Vec<(String, usize)>);

impl Copies {
    fn next(&mut self, name: &str) -> String {
        match self.0.iter_mut().find(|(known, _)| known == name) {
            Some((_, count)) => {
                *count += 1;
                format!("{name}|{count}")
            }
            None => {
                self.0.push((name.to_owned(), 1));
                format!("{name}|1")
            }
        }
    }
}

/// A bar by its material, its length, and its pieces by label and length. [mm]
fn bar_key(bar: &CutBar) -> String {
    let mm = |length: Length| plain(length.get::<millimeter>(), 1);
    let plain = |text: &str| text.replace(['|', '+', '@'], "/");
    let pieces: Vec<String> = bar
        .pieces
        .iter()
        .map(|piece| format!("{}@{}", plain(&piece.label), mm(piece.length)))
        .collect();
    let material = bar.stock.rsplit_once(", ").map_or(bar.stock.as_str(), |(name, _)| name);
    format!("{}|{}|{}", plain(material), bar.length.map_or(String::new(), mm), pieces.join("+"))
}

/// A line to tick off by its words: `cut r1: 12 AWG 3048`, `splice panel: 4 ways: colours`.
fn check_key(line: &CheckLine) -> Option<String> {
    let (kind, rest) = line.key.split_once('/')?;
    match kind {
        "cut" => {
            let (rest, mm) = rest.rsplit_once('/')?;
            let (_, wire) = rest.split_once("/wire/")?;
            let size = wire.split('/').next()?;
            let (run, _) = line.text.split_once(": ")?;
            Some(format!("cut {run}: {} {}", conductor(size)?, mm.strip_suffix("mm")?))
        }
        "splice" => {
            let (node, ways) = line.text.split_once(": ")?;
            let ways = ways.split(' ').next()?;
            let colours: Vec<&str> = line.note.split("; ").skip(1).collect();
            Some(format!("splice {node}: {ways} {}", colours.join(",")))
        }
        _ => None,
    }
}
