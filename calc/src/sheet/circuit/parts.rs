//! What is bought besides wire: fuses and their blocks, dimmers and switches, connectors, lugs.

use super::common::{amperes, fuse_id, fuse_line, fuse_spec, lug_line, rating, stud_id, watts};
use super::findings::Findings;
use crate::electrical::ampacity::listed_below;
use crate::electrical::charging::fuse_voltage;
use crate::electrical::conductor::Conductor;
use crate::electrical::splice::{Splice, is_for_lugs, stud};
use crate::lists::{BuyLine, LineId};
use crate::quantity::{Style, amount, plain};
use crate::sorting::sort_by;
use crate::text::text;
use crate::words::{Arg, Id, Msg, circuit as words, wiring};

fn each(id: String, item: Id, spec: impl Into<Msg>, count: f64, style: Style) -> BuyLine {
    BuyLine::pieces(LineId::shared(id), style.say(item), style.say(spec), count)
}

/// Adds to the line of the same thing, or begins one.
fn add(lines: &mut Vec<BuyLine>, line: BuyLine) {
    match lines.iter_mut().find(|known| known.id == line.id) {
        Some(known) => {
            known.quantity += line.quantity;
            known.needed += line.needed;
        }
        None => lines.push(line),
    }
}

impl Findings<'_> {
    /// Name of a run as it is shown.
    pub(super) fn run_name(&self, run: usize) -> Arg {
        self.inputs.runs.get(run).map_or_else(|| "".into(), |run| run.name.clone())
    }

    /// Name of a run in the outcome.
    pub(super) fn run_id(&self, run: usize) -> &str {
        self.inputs.runs.get(run).map_or("", |run| run.id.as_str())
    }

    /// Whether the fuse of a run sits in a fuse block.
    pub(super) fn is_in_block(&self, run: usize) -> bool {
        self.fuses.in_block.get(run) == Some(&true)
    }

    /// Runs that leave a node.
    fn leaving(&self, node: usize) -> impl Iterator<Item = usize> + '_ {
        (0..self.tree.runs()).filter(move |run| self.tree.ends(*run).0 == node)
    }

    /// The main fuse, fuse blocks with their fuses, fuses in line, and those at far sources.
    pub(super) fn fuse_lines(&self, style: Style) -> Vec<BuyLine> {
        let highest_v = self.inputs.supply.highest_v;
        let mut lines = Vec::new();
        for (run, fuse) in self.fuses.all() {
            let is_in_block = run.is_some_and(|run| self.is_in_block(run));
            let line = if is_in_block {
                each(
                    text!("block-fuse/{}", fuse_id(fuse.rating_a, highest_v)),
                    words::BUY_BLOCK_FUSE,
                    fuse_spec(fuse.rating_a, highest_v),
                    1.0,
                    style,
                )
            } else {
                fuse_line(fuse.rating_a, highest_v, style)
            };
            add(&mut lines, line);
        }
        for (run, typed) in self.inputs.runs.iter().enumerate() {
            let Some(fuse) = self.fuses.before(run) else { continue };
            if typed.far_source {
                add(&mut lines, fuse_line(fuse.rating_a, highest_v, style));
            }
            if typed.fuse_block {
                let ways = self.leaving(self.tree.ends(run).1).count();
                let spec = words::BuyBlockSpec {
                    ways,
                    rating: rating(fuse.rating_a),
                    volts: amount(fuse_voltage(highest_v, fuse.rating_a).0, 1, "V"),
                };
                let id = text!("fuse-block/{}/{}", &ways, fuse_id(fuse.rating_a, highest_v));
                add(&mut lines, each(id, words::BUY_BLOCK, spec, 1.0, style));
            }
        }
        lines
    }

    /// Dimmers and switches by what they carry.
    pub(super) fn device_lines(&self, style: Style) -> Vec<BuyLine> {
        let mut lines = Vec::new();
        for typed in &self.inputs.runs {
            let rated: Vec<String> = typed
                .device_rating_a
                .map(amperes)
                .into_iter()
                .chain(typed.device_rating_w.map(watts))
                .collect();
            if rated.is_empty() {
                continue;
            }
            let mut id = "dimmer".to_owned();
            for (value, unit) in [(typed.device_rating_a, "a"), (typed.device_rating_w, "w")] {
                if let Some(value) = value {
                    id.push_str(&text!("/{}{}", plain(value, 3), unit));
                }
            }
            if typed.self_protecting {
                id.push_str("/own");
            }
            let rated = rated.join(", ");
            let spec: Msg = match typed.self_protecting {
                true => words::BuyDeviceSpecOwn { rated }.into(),
                false => words::BuyDeviceSpec { rated }.into(),
            };
            add(&mut lines, each(id, words::BUY_DEVICE, spec, 1.0, style));
        }
        lines
    }

    /// Connectors of both polarities by their ways and the thickest wire that goes in; where that is
    /// thicker than connectors are made for, a stud or bus bar each, and a ring lug on every wire.
    pub(super) fn connector_lines(&self, style: Style) -> Vec<BuyLine> {
        let mut counts: Vec<(usize, BuyLine)> = Vec::new();
        for splice in self.splices.iter().filter(|splice| !self.needs_studs(splice)) {
            let thickest = self.thickest(splice);
            for ways in &splice.connectors {
                let (id, spec): (String, Msg) = match thickest {
                    Some(size) => (
                        text!("splice/{}/{}", &ways, size.id()),
                        words::BuySpliceSpec { ways: *ways, size: size.to_string() }.into(),
                    ),
                    None => (
                        text!("splice/{}", &ways),
                        words::BuySpliceSpecPlain { ways: *ways }.into(),
                    ),
                };
                let line = each(id, words::BUY_SPLICE, spec, 2.0, style);
                match counts.iter_mut().find(|(_, known)| known.id == line.id) {
                    Some((_, known)) => {
                        known.quantity += 2.0;
                        known.needed += 2.0;
                    }
                    None => counts.push((*ways, line)),
                }
            }
        }
        sort_by(&mut counts, |a, b| (a.0, &a.1.spec).cmp(&(b.0, &b.1.spec)));
        let mut lines: Vec<BuyLine> = counts.into_iter().map(|(_, line)| line).collect();
        for splice in self.splices.iter().filter(|splice| self.needs_studs(splice)) {
            let size = self.thickest(splice).map_or("", stud);
            let spec = words::BuyBusSpec { ways: splice.ways, stud: size };
            let stud_id = stud_id(size);
            let id = text!("bus-bar/{}/{}", &splice.ways, &stud_id);
            add(&mut lines, each(id, words::BUY_BUS, spec, 2.0, style));
            for run in std::iter::once(&splice.feed).chain(&splice.onward) {
                if let Some(conductor) = self.wired.conductors.get(*run) {
                    add(&mut lines, lug_line(*conductor, size, 2.0, style));
                }
            }
            let leads: u32 =
                splice.loads.iter().filter_map(|load| self.loads.get(*load)).map(|l| l.count).sum();
            if leads > 0 {
                let spec = words::BuyLeadLugSpec { stud: size };
                let id = text!("lug/lead/{}", &stud_id);
                add(&mut lines, each(id, wiring::BUY_LUG, spec, 2.0 * f64::from(leads), style));
            }
        }
        // At the source and at fuse blocks thick wire ends on studs too.
        for (run, conductor) in self.wired.conductors.iter().enumerate() {
            let (from, to) = self.tree.ends(run);
            let is_block = self.inputs.runs.get(run).is_some_and(|run| run.fuse_block);
            let ends = f64::from(u8::from(from == 0 || self.is_in_block(run)))
                + f64::from(u8::from(is_block && to != 0));
            if ends > 0.0 && is_for_lugs(*conductor) {
                add(&mut lines, lug_line(*conductor, stud(*conductor), 2.0 * ends, style));
            }
        }
        lines
    }

    /// Whether a splice is made on studs: a wire is thicker than connectors are made for.
    pub(super) fn needs_studs(&self, splice: &Splice) -> bool {
        self.thickest(splice).is_some_and(is_for_lugs)
    }

    fn thickest(&self, splice: &Splice) -> Option<Conductor> {
        let area = |conductor: &Conductor| {
            conductor.area_mm2().or_else(|| {
                let listed = listed_below(*conductor)?;
                Conductor::awg().find(|awg| awg.is_awg(listed))?.area_mm2()
            })
        };
        std::iter::once(&splice.feed)
            .chain(&splice.onward)
            .filter_map(|run| self.wired.conductors.get(*run))
            .filter_map(|conductor| Some((area(conductor)?, *conductor)))
            .max_by(|a, b| a.0.total_cmp(&b.0))
            .map(|(_, conductor)| conductor)
    }
}
