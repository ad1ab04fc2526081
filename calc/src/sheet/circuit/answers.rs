//! Answers and list lines of a circuit.

use super::common::{amperes, drop_beside, limit, rating, volts, wire_id, wire_line, wire_name};
use super::findings::Findings;
use crate::electrical::conductor::{COPPER_KG_PER_M_MM2, Conductor};
use crate::lists::{BuyLine, CutLine, Piece};
use crate::quantity::{Length, Mass, Style};
use crate::report::Answer;
use crate::words::{Arg, Id, Msg, circuit as words};
use uom::si::length::meter;
use uom::si::mass::kilogram;

impl Findings<'_> {
    pub(super) fn answers(&self, style: Style) -> Vec<Answer> {
        let answer = |label: Id, text: Msg, note: Msg| {
            Answer::new(style.say(label), style.say(text)).note(style.say(note))
        };
        let worst = words::AnswerLowestText {
            volts: volts(self.node_v(self.worst)),
            percent: drop_beside(self.drop_percent(self.worst), self.inputs.drop_limit_percent),
        };
        let node = self.tree.name(self.worst);
        let limit = limit(self.inputs.drop_limit_percent);
        let note = words::AnswerLowestNote { node, limit };
        let lowest = answer(words::ANSWER_LOWEST, worst.into(), note.into());
        let current = amperes(self.wired.source_a);
        let branches: Vec<Arg> = self
            .fuses
            .branches
            .iter()
            .map(|(run, fuse)| {
                let (run, rating) = (self.run_name(*run), rating(fuse.rating_a));
                Msg::from(words::Branch { run, rating }).into()
            })
            .collect();
        let Some(fuse) = self.fuses.main.as_ref().filter(|_| self.is_safe()) else {
            let why = self.fuses.unsafe_for.first().map(|of| Arg::from(of.short.clone()));
            let why = words::AnswerFuseHidden { why: why.unwrap_or_else(|| "".into()) };
            let draws = words::Draws { current };
            return vec![lowest, answer(words::ANSWER_FUSE_WITH_WIRE, why.into(), draws.into())];
        };
        let (place, draws): (Id, Msg) = match branches.is_empty() {
            true => (words::ANSWER_FUSE, words::Draws { current }.into()),
            false => {
                let branches = self.in_a_row(branches, style);
                (words::ANSWER_FUSE_MAIN, words::DrawsBranches { current, branches }.into())
            }
        };
        let fuse = Answer::new(style.say(place), style.figure(rating(fuse.rating_a)))
            .note(style.say(draws));
        let sizes: Vec<String> = self.wire_m.iter().map(|(c, _)| c.to_string()).collect();
        let wire = Answer::new(style.say(words::ANSWER_WIRE), style.figure(sizes.join(", "))).note(
            style.say(match &self.wired.chosen {
                Some(chosen) if chosen.proved => words::ANSWER_WIRE_LEAST,
                Some(_) => words::ANSWER_WIRE_FOUND,
                None => words::ANSWER_WIRE_GIVEN,
            }),
        );
        vec![lowest, fuse, wire]
    }

    /// Several, with a comma between each and the next.
    pub(super) fn in_a_row(&self, several: Vec<Arg>, style: Style) -> String {
        several.iter().map(|one| style.write(one)).collect::<Vec<_>>().join(", ")
    }

    pub(super) fn buy(&self, style: Style) -> Vec<BuyLine> {
        let mut buy: Vec<BuyLine> = self
            .wire_m
            .iter()
            .filter(|(_, metres)| *metres > 0.0)
            .map(|(conductor, metres)| {
                wire_line(*conductor, *metres, &self.inputs.conditions, style)
            })
            .collect();
        buy.extend(self.fuse_lines(style));
        buy.extend(self.device_lines(style));
        buy.extend(self.connector_lines(style));
        buy
    }

    /// Two pieces of wire for each run, one of each polarity.
    pub(super) fn cut(&self, style: Style) -> Vec<CutLine> {
        let line = |(conductor, _): &(Conductor, f64)| CutLine {
            id: wire_id(*conductor, &self.inputs.conditions),
            stock: style
                .say(words::CutStock { wire: wire_name(*conductor, &self.inputs.conditions) }),
            count: 2,
            pieces: self
                .pairs
                .iter()
                .filter(|pair| pair.conductor == *conductor)
                .map(|pair| Piece {
                    id: self.run_key(pair.run),
                    label: style.write(&self.run_name(pair.run)),
                    length: Length::new::<meter>(pair.length_m),
                })
                .collect(),
            waste: Length::default(),
        };
        self.wire_m.iter().map(line).collect()
    }

    /// Drop along a run. [V]
    pub(super) fn run_drop(&self, run: usize, style: Style) -> String {
        let ohm = self.wired.run_ohm.get(run).copied().unwrap_or(0.0);
        style.write(&Arg::lost_volts(self.run_a(run) * ohm))
    }
}

/// Mass of so much copper, in print. A metre of 1 mm² is a cubic centimetre.
pub(super) fn copper_mass(cm3: f64, style: Style) -> String {
    style.mass(Mass::new::<kilogram>(cm3 * COPPER_KG_PER_M_MM2))
}
