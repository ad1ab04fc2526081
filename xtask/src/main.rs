//! `cargo xtask …`: builds, serves, tests and measures Battenbook, and installs what that needs.

mod bench;
mod bless;
mod build;
mod bytes;
mod page;
mod serve;
mod style;
mod test;
mod tools;

use anyhow::{Result, bail};
use std::process::ExitCode;

const USAGE: &str = "\
cargo xtask build                      the release site in dist/
cargo xtask serve [--port N] [--dev]   build, serve on this machine, rebuild and reload when a source changes
                                       (--dev: quicker to build, bigger and slower to run)
cargo xtask test [--only native|unit|e2e] [--engine chromium|firefox|webkit] [--filter NAME]
                 [--without chromium|firefox|webkit|axe|print]
                                       every check; what is missing here and not named as left out is a failure
cargo xtask bench                      the budgets beside what was measured
cargo xtask bless                      accept the reports as they are now as the golden ones; review the diff";

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    match run(&words) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("error: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn run(words: &[String]) -> Result<()> {
    let (task, rest) = words.split_first().map_or(("help", words), |(task, rest)| (&**task, rest));
    match task {
        "build" => {
            no_more(rest)?;
            let site = build::site(&build::Options::release())?;
            bytes::print_table(&site)
        }
        "serve" => serve::serve(&serve::Options::parse(rest)?),
        "test" => test::test(&test::Options::parse(rest)?),
        "bench" => no_more(rest).and_then(|()| bench::bench()),
        "bless" => no_more(rest).and_then(|()| bless::bless()),
        "help" | "--help" | "-h" => {
            println!("{USAGE}");
            Ok(())
        }
        other => bail!("no task {other:?}; these are the tasks:\n{USAGE}"),
    }
}

fn no_more(rest: &[String]) -> Result<()> {
    match rest.first() {
        None => Ok(()),
        Some(word) => bail!("{word:?} is not known here; the tasks and their options:\n{USAGE}"),
    }
}
