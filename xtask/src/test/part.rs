//! One part of the checks: run in view, its totals counted, its outcome kept for the summary.

use crate::tools;
use std::io::{BufRead, BufReader, Read};
use std::process::{Command, Stdio};
use std::sync::Mutex;
use std::time::{Duration, Instant};

/// How a part ended.
pub enum Outcome {
    /// As it should.
    Passed,
    /// Not as it should; says how.
    Failed(String),
    /// Not at all; says why.
    NotTested(String),
}

/// A part that has ended.
pub struct Part {
    name: String,
    /// How it ended.
    pub outcome: Outcome,
    totals: Option<Totals>,
    time: Duration,
}

/// Tests that ran, by how they ended.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Totals {
    passed: usize,
    failed: usize,
    ignored: usize,
}

impl Part {
    /// A check that says no more than passed or failed.
    pub fn command(name: &str, command: &mut Command) -> Self {
        let (outcome, _, time) = watch(name, command);
        Self { name: name.to_owned(), outcome, totals: None, time }
    }

    /// Tests; that none ran is a failure, since it would pass for any fault.
    pub fn tests(name: &str, command: &mut Command) -> Self {
        let mut part = Self::tests_if_any(name, command);
        let ran = part.totals.unwrap_or_default();
        if matches!(part.outcome, Outcome::Passed) && ran.passed + ran.failed == 0 {
            part.outcome = Outcome::Failed("no test ran".to_owned());
        }
        part
    }

    /// Tests, of which there may be none.
    pub fn tests_if_any(name: &str, command: &mut Command) -> Self {
        let (outcome, totals, time) = watch(name, command);
        Self { name: name.to_owned(), outcome, totals: Some(totals), time }
    }

    /// A part that could not begin.
    pub fn failed(name: &str, why: &str) -> Self {
        Self::without_run(name, Outcome::Failed(why.to_owned()))
    }

    /// A part that this machine cannot run.
    pub fn not_tested(name: &str, why: &str) -> Self {
        println!("\n== {name}: not tested: {why}");
        Self::without_run(name, Outcome::NotTested(why.to_owned()))
    }

    fn without_run(name: &str, outcome: Outcome) -> Self {
        Self { name: name.to_owned(), outcome, totals: None, time: Duration::ZERO }
    }
}

/// Prints one line a part, and the totals of all tests.
pub fn print_summary(parts: &[Part]) {
    println!(
        "\n{:<40} {:<12} {:>8} {:>8} {:>8} {:>8}",
        "part", "outcome", "passed", "failed", "ignored", "time"
    );
    let mut sum = Totals::default();
    for part in parts {
        let (outcome, why) = match &part.outcome {
            Outcome::Passed => ("passed", None),
            Outcome::Failed(why) => ("FAILED", Some(why)),
            Outcome::NotTested(why) => ("NOT TESTED", Some(why)),
        };
        let counts = part.totals.map_or_else(
            || format!("{:>8} {:>8} {:>8}", "", "", ""),
            |totals| format!("{:>8} {:>8} {:>8}", totals.passed, totals.failed, totals.ignored),
        );
        println!("{:<40} {outcome:<12} {counts} {:>6.0} s", part.name, part.time.as_secs_f64());
        if let Some(why) = why {
            println!("    {why}");
        }
        sum = sum.plus(part.totals.unwrap_or_default());
    }
    println!(
        "{:<40} {:<12} {:>8} {:>8} {:>8}",
        "all tests", "", sum.passed, sum.failed, sum.ignored
    );
    println!("\n{}", closing_line(parts, sum));
}

/// The totals of all parts in the words of cargo's own test runner; parts that are no tests count by their outcome.
fn closing_line(parts: &[Part], sum: Totals) -> String {
    let failed = parts.iter().any(|part| matches!(part.outcome, Outcome::Failed(_)));
    format!(
        "test result: {}. {} passed; {} failed; {} ignored",
        if failed || sum.failed > 0 { "FAILED" } else { "ok" },
        sum.passed,
        sum.failed,
        sum.ignored
    )
}

impl Totals {
    fn plus(self, other: Self) -> Self {
        Self {
            passed: self.passed + other.passed,
            failed: self.failed + other.failed,
            ignored: self.ignored + other.ignored,
        }
    }
}

/// The totals in a command's output.
#[derive(Default)]
struct Tally {
    /// Of lines as cargo's and the browsers' test runners write them, summed over the binaries.
    results: Totals,
    /// Of nextest, which also repeats the result lines of tests that failed.
    summary: Option<Totals>,
}

impl Tally {
    fn count(&mut self, line: &str) {
        let line = line.trim_start();
        let words: Vec<&str> = line
            .split(|c: char| c.is_whitespace() || matches!(c, ',' | ';'))
            .filter(|word| !word.is_empty())
            .collect();
        let before = |word: &str| {
            let pair = words.windows(2).find(|pair| pair[1] == word);
            pair.and_then(|pair| pair[0].parse().ok()).unwrap_or(0_usize)
        };
        let totals = Totals {
            passed: before("passed"),
            failed: before("failed") + before("timed"),
            ignored: before("ignored") + before("skipped"),
        };
        if line.starts_with("test result:") {
            self.results = self.results.plus(totals);
        } else if line.starts_with("Summary [") {
            self.summary = Some(totals);
        }
    }

    fn totals(self) -> Totals {
        self.summary.unwrap_or(self.results)
    }
}

/// Runs a command, shows what it prints as it comes, and adds up the totals in it.
fn watch(name: &str, command: &mut Command) -> (Outcome, Totals, Duration) {
    println!("\n== {name}: {}", tools::show(command));
    let begun = Instant::now();
    let tally = Mutex::new(Tally::default());
    let count = |line: &str| {
        if let Ok(mut tally) = tally.lock() {
            tally.count(line);
        }
    };
    let child = command.stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn();
    let outcome = match child {
        Err(error) => Outcome::Failed(format!("cannot be started: {error}")),
        Ok(mut child) => {
            let (out, err) = (child.stdout.take(), child.stderr.take());
            std::thread::scope(|scope| {
                scope.spawn(|| err.map(|err| pass_on(err, |line| eprintln!("{line}"), count)));
                scope.spawn(|| out.map(|out| pass_on(out, |line| println!("{line}"), count)));
            });
            match child.wait() {
                Ok(status) if status.success() => Outcome::Passed,
                Ok(status) => Outcome::Failed(format!("see above ({status})")),
                Err(error) => Outcome::Failed(error.to_string()),
            }
        }
    };
    (outcome, tally.into_inner().unwrap_or_default().totals(), begun.elapsed())
}

fn pass_on(from: impl Read, show: impl Fn(&str), count: impl Fn(&str)) {
    let mut lines = BufReader::new(from);
    let mut bytes = Vec::new();
    while lines.read_until(b'\n', &mut bytes).is_ok_and(|length| length > 0) {
        let line = String::from_utf8_lossy(&bytes);
        show(line.trim_end());
        count(&line);
        drop(line);
        bytes.clear();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tallied(lines: &[&str]) -> (usize, usize, usize) {
        let mut tally = Tally::default();
        lines.iter().for_each(|line| tally.count(line));
        let Totals { passed, failed, ignored } = tally.totals();
        (passed, failed, ignored)
    }

    #[test]
    fn totals_are_read_from_each_runner() {
        let first = "test result: ok. 2 passed; 0 failed; 0 ignored; 0 measured; 7 filtered out; finished in 0.10s";
        let second = "test result: FAILED. 12 passed; 3 failed; 1 ignored; 0 measured; 7 filtered out; finished in 0.10s";
        assert_eq!(tallied(&[first, "test a::b ... ok", second]), (14, 3, 1));
        let repeated =
            "    test result: FAILED. 0 passed; 1 failed; 0 ignored; 0 measured; 0 filtered out";
        let summary = "     Summary [   0.182s] 19 tests run: 17 passed, 2 failed, 4 skipped";
        assert_eq!(tallied(&[repeated, summary, repeated]), (17, 2, 4));
    }

    #[test]
    fn the_closing_line_is_read_as_a_runner_s_own() {
        let sum = Totals { passed: 14, failed: 0, ignored: 1 };
        let line = closing_line(&[Part::not_tested("x", "left out")], sum);
        assert_eq!(line, "test result: ok. 14 passed; 0 failed; 1 ignored");
        assert_eq!(tallied(&[&line]), (14, 0, 1));
        // A part that could not begin is no pass, though no test failed.
        let line = closing_line(&[Part::failed("end to end, webkit", "missing")], sum);
        assert!(line.starts_with("test result: FAILED."), "{line}");
    }

    #[test]
    fn a_part_that_runs_nothing_has_not_passed() {
        let part = Part::tests(
            "empty",
            Command::new("echo").arg("test result: ok. 0 passed; 0 failed; 0 ignored"),
        );
        assert!(matches!(part.outcome, Outcome::Failed(_)));
        let part = Part::tests(
            "one",
            Command::new("echo").arg("test result: ok. 1 passed; 0 failed; 0 ignored"),
        );
        assert!(matches!(part.outcome, Outcome::Passed));
        let part = Part::tests("false", &mut Command::new("false"));
        assert!(matches!(part.outcome, Outcome::Failed(_)));
    }
}
