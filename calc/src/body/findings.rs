//! What the measures say about the body: how square it is, how wide, and what the sheets take of it.

use uom::si::length::millimeter;

use super::{Body, Diagonals};
use crate::carpentry::courses::SHOWN_MM;
use crate::carpentry::squareness::{
    BOTH_DIAGONALS, DIAGONALS, SLIP, SLIP_SHARE, Squareness, diagonal_mm, misfit_mm, squareness,
};
use crate::carpentry::stations::{BETWEEN, range_mm};
use crate::outcome::Record;
use crate::quantity::{Length, Style, plain};
use crate::report::{Answer, Remark, Report, Step};
use crate::source::Source;
use crate::text::text;
use crate::words::{Arg, Msg, body as words};

/// The rear against the front.
static DRIFT: Source = Source::identity_of(words::SOURCE_DRIFT);
/// Diagonals that miss their sides by more than this share belong to another body.
const NO_FIGURE: f64 = 0.05;

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

/// A rectangle with both its diagonals. [mm]
struct Check {
    length: f64,
    width: f64,
    first: f64,
    second: f64,
    found: Squareness,
}

impl Check {
    fn diagonal(&self) -> f64 {
        diagonal_mm(self.length, self.width)
    }

    fn misfit(&self) -> f64 {
        misfit_mm(self.length, self.width, self.first, self.second)
    }

    fn drift(&self) -> f64 {
        self.found.drift_mm(self.length, self.width)
    }
}

impl Body {
    /// What the measures say: squareness, widths, and which of them the sheets take.
    pub fn findings(&self, style: Style) -> Report {
        let mut report = Report::default();
        if let Some(check) = self.diagonals.and_then(|diagonals| self.check_of(&diagonals)) {
            square(&mut report, &check, style);
        } else if self.diagonals.is_some() {
            report.remarks.push(Remark::note(style.say(words::DIAGONALS_EARLY)));
        }
        self.stations_found(&mut report, style);
        report
    }

    /// How far the right wall stands further to the rear than the left one, by the diagonals of
    /// the body's own corners. [mm]
    pub fn shear_mm(&self) -> Option<f64> {
        let own = self.diagonals.filter(|own| own.length.is_none() && own.width.is_none())?;
        Some(self.check_of(&own)?.found.shear_mm)
    }

    /// What is wrong with diagonals that no body of these sides can have.
    pub(super) fn no_figure(&self, diagonals: &Diagonals) -> Option<Msg> {
        let (length, width) = self.sides(diagonals)?;
        let (first, second) =
            (diagonals.first.get::<millimeter>(), diagonals.second.get::<millimeter>());
        let right = diagonal_mm(length, width);
        let off = misfit_mm(length, width, first, second).abs() > NO_FIGURE * right;
        (off || squareness(length, width, first, second).is_none()).then(|| {
            words::NoFigure { length: mm(length), width: mm(width), diagonal: mm(right) }.into()
        })
    }

    /// Sides of the rectangle that the diagonals belong to. [mm]
    fn sides(&self, diagonals: &Diagonals) -> Option<(f64, f64)> {
        let length = diagonals.length.or(self.length)?;
        let width = match diagonals.width {
            Some(width) => width,
            None => (self.width_at(mm(0.0))? + self.width_at(length)?) / 2.0,
        };
        Some((length.get::<millimeter>(), width.get::<millimeter>()))
    }

    fn check_of(&self, diagonals: &Diagonals) -> Option<Check> {
        let (length, width) = self.sides(diagonals)?;
        let (first, second) =
            (diagonals.first.get::<millimeter>(), diagonals.second.get::<millimeter>());
        let found = squareness(length, width, first, second)?;
        Some(Check { length, width, first, second, found })
    }

    fn stations_found(&self, report: &mut Report, style: Style) {
        let Some((low, high)) = range_mm(&self.stations()) else { return };
        let mark = |value: f64| Arg::mark(mm(value));
        if high - low > 1e-3 {
            let range = words::WidthsRange { low: mark(low), high: mark(high) };
            let apart = style.say(words::WidthsApart { apart: mark(high - low) });
            report
                .answers
                .push(Answer::new(style.say(words::WIDTHS_FOUND), style.say(range)).note(apart));
        }
        let used = words::WidthsUsed { narrowest: mark(low) };
        report.remarks.push(Remark::note(style.say(used)));
        let mut pairs = self.widths.windows(2);
        if let Some([front, next]) = pairs.next() {
            let middle = (front.x + next.x) / 2.0;
            let width = self.width_at(middle).unwrap_or(front.width);
            let [middle, front, next] = [middle, front.width, next.width].map(Arg::mark);
            report.working.push(Step::new(
                style.say(words::STEP_BETWEEN),
                "w = w₁ + (w₂ − w₁) · (x − x₁) / (x₂ − x₁)",
                style.say(words::StepBetweenNumbers { middle, front, next }),
                style.mark(width).text,
                &BETWEEN,
            ));
        }
        report.outcome =
            std::mem::take(&mut report.outcome).with("narrowest_mm", low).with("widest_mm", high);
    }
}

/// The diagonal check.
fn square(report: &mut Report, check: &Check, style: Style) {
    let error = |value: f64| Arg::error(mm(value.abs()));
    let (shear, drift) = (check.found.shear_mm, check.drift());
    // What a tape cannot show is no lean.
    let shown = style.mark(mm(drift.abs())).rounded.value > 0.0;
    let label = style.say(words::OUT_OF_SQUARE);
    report.answers.push(if shown {
        Answer::new(label, style.error(mm(drift.abs()))).note(style.say(words::Leans {
            side: if drift > 0.0 { "right" } else { "left" },
            length: mm(check.length),
            angle: plain(check.found.angle_deg.abs(), 2),
        }))
    } else {
        Answer::new(label, style.say(words::SQUARE)).note(style.say(words::SQUARE_NOTE))
    });
    report.answers.push(
        Answer::new(style.say(words::TRUE_DIAGONAL), style.length(mm(check.diagonal()))).note(
            style.say(words::MeasuredDiagonals {
                first: mm(check.first),
                second: mm(check.second),
                apart: error(check.found.difference_mm),
            }),
        ),
    );
    if check.misfit().abs() > SLIP_SHARE * check.diagonal() {
        let which = if check.misfit() > 0.0 { "long" } else { "short" };
        let slip = words::Slip { which, by: error(check.misfit()) };
        report.remarks.push(Remark::warning(style.say(slip)));
    }
    let off = error(shear);
    report.remarks.push(if shear.abs() <= SHOWN_MM {
        Remark::good(style.say(words::NotSeen { off }))
    } else {
        Remark::note(style.say(words::Seen { off }))
    });
    report.remarks.push(Remark::note(style.say(words::EQUAL_SIDES)));
    report.working.extend(square_working(check, style.exact()));
    report.outcome = Record::new()
        .with("true_diagonal_mm", check.diagonal())
        .with("diagonal_difference_mm", check.found.difference_mm)
        .with("shear_mm", shear)
        .with("out_of_square_mm", drift)
        .with("out_of_square_deg", check.found.angle_deg)
        .with("misfit_mm", check.misfit());
}

fn square_working(check: &Check, style: Style) -> Vec<Step> {
    let error = |value: f64| style.error(mm(value));
    let length = |value: f64| style.length(mm(value));
    let squares = text!("{}² − {}²", length(check.first), length(check.second));
    vec![
        Step::new(
            style.say(words::TRUE_DIAGONAL),
            "d = √(l² + w²)",
            text!("√({}² + {}²)", length(check.length), length(check.width)),
            length(check.diagonal()),
            &BOTH_DIAGONALS,
        ),
        Step::new(
            style.say(words::STEP_BOTH),
            "√((d₁² + d₂²) / 2) − d",
            text!(
                "√(({}² + {}²) / 2) − {}",
                length(check.first),
                length(check.second),
                length(check.diagonal())
            ),
            style.say(words::StepBothResult {
                misfit: Arg::error(mm(check.misfit())),
                slip: Arg::error(mm(SLIP_SHARE * check.diagonal())),
            }),
            &SLIP,
        ),
        Step::new(
            style.say(words::STEP_SHIFT),
            "s = (d₁² − d₂²) / (4 · l)",
            text!("({}) / (4 · {})", &squares, length(check.length)),
            error(check.found.shear_mm),
            &DIAGONALS,
        ),
        Step::new(
            style.say(words::STEP_REAR),
            "s · l / w",
            text!(
                "{} · {} / {}",
                error(check.found.shear_mm),
                length(check.length),
                length(check.width)
            ),
            error(check.drift()),
            &DRIFT,
        ),
        Step::new(
            style.say(words::STEP_ANGLE),
            "arcsin(s / w)",
            text!("arcsin({} / {})", error(check.found.shear_mm), length(check.width)),
            text!("{}°", plain(check.found.angle_deg, 2)),
            &DIAGONALS,
        ),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::node::Node;
    use crate::quantity::UnitSystem;
    use serde_json::json;

    fn body(node: &Node) -> Body {
        Body::read(node, Style::new(UnitSystem::Metric))
    }

    fn found(node: &Node, name: &str) -> f64 {
        let report = body(node).findings(Style::new(UnitSystem::Metric));
        report.outcome.number(name).unwrap_or_else(|| panic!("no {name}"))
    }

    /// Identity s = (d1^2 - d2^2) / (4 l), worked out independently: 4270 x 1830 mm sheared by
    /// 10 mm has diagonals 18.3829 mm apart, and a true rectangle 4645.62 mm.
    #[test]
    fn diagonals_say_how_far_out_of_square() {
        let node = json!({ "length": "4270 mm", "width": "1830 mm",
            "diagonals": { "first": "4654.812 mm", "second": "4636.429 mm" } });
        assert!((found(&node, "true_diagonal_mm") - 4645.62).abs() < 5e-3);
        assert!((found(&node, "shear_mm") - 10.0).abs() < 2e-3);
        assert!((found(&node, "out_of_square_mm") - 10.0 * 4270.0 / 1830.0).abs() < 5e-3);
        assert!((found(&node, "out_of_square_deg") - 0.3131).abs() < 1e-3);
        assert!(found(&node, "misfit_mm").abs() < 0.05);
        let words = body(&node).findings(Style::new(UnitSystem::Metric)).answers[0].note.clone();
        assert!(words.contains("to the right"), "{words}");
    }

    /// A body that narrows evenly to the rear is square when its diagonals are equal.
    #[test]
    fn a_tapered_body_with_equal_diagonals_is_square() {
        let diagonal = format!("{} mm", libm::hypot(4000.0, 1950.0));
        let node = json!({ "length": "4 m",
            "widths": [{ "x": "0 mm", "width": "2 m" }, { "x": "4 m", "width": "1.9 m" }],
            "diagonals": { "first": diagonal, "second": diagonal } });
        assert!(found(&node, "out_of_square_mm").abs() < 1e-9);
        assert!(found(&node, "misfit_mm").abs() < 1e-6);
        assert_eq!(found(&node, "narrowest_mm").round(), 1900.0);
    }

    #[test]
    fn diagonals_of_another_body_are_a_fault_and_a_slip_is_a_warning() {
        let with = |first: &str, second: &str| json!({ "length": "4 m", "width": "2 m", "diagonals": { "first": first, "second": second } });
        let wrong = body(&with("5 m", "5 m"));
        assert_eq!(wrong.faults[0].field, "diagonals.second");
        assert!(wrong.diagonals.is_none() && wrong.length.is_some());
        assert_eq!(body(&with("4.47 m", "")).faults[0].field, "diagonals.second");
        let slip = body(&with("4500 mm", "4500 mm")).findings(Style::new(UnitSystem::Metric));
        assert!(slip.remarks[0].text.contains("slip"), "{:?}", slip.remarks);
        // Without length and width nothing is wrong yet.
        let early = json!({ "diagonals": { "first": "4 m", "second": "4 m" } });
        assert_eq!(body(&early).faults, []);
    }

    /// Diagonals of a smaller rectangle inside the body have their own sides.
    #[test]
    fn a_smaller_rectangle_serves() {
        let node = json!({ "length": "9 m", "width": "3 m", "diagonals": {
            "first": "1500 mm", "second": "1500 mm", "length": "1200 mm", "width": "900 mm" } });
        assert!(found(&node, "misfit_mm").abs() < 1e-6);
        assert!((found(&node, "true_diagonal_mm") - 1500.0).abs() < 1e-6);
    }
}
