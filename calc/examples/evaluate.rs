//! Evaluates a project file: `cargo run -q --release -p calc --example evaluate -- FILE`,
//! with `--units imperial|metric` in other units than the file's, with `--language en|es` in another language.
//! Prints one JSON document. Exits 0 when the file could be read, 2 with one line on standard error when not.

use std::process::ExitCode;

use calc::project::{LoadError, MAX_BYTES, Project};
use calc::quantity::UnitSystem;
use calc::words::Words;

const USAGE: &str = "name one project file; --units imperial|metric and --language en|es say how results are written";

fn main() -> ExitCode {
    match run() {
        Ok(text) => {
            println!("{text}");
            ExitCode::SUCCESS
        }
        Err(message) => {
            eprintln!("evaluate: {message}");
            ExitCode::from(2)
        }
    }
}

fn run() -> Result<String, String> {
    let mut arguments = std::env::args_os().skip(1);
    let (mut path, mut system, mut words) = (None, None, Words::ENGLISH);
    while let Some(argument) = arguments.next() {
        let mut value = || {
            arguments
                .next()
                .and_then(|value| value.into_string().ok())
                .ok_or_else(|| USAGE.to_owned())
        };
        match argument.to_str() {
            Some("--units") => {
                system = Some(match value()?.as_str() {
                    "imperial" => UnitSystem::Imperial,
                    "metric" => UnitSystem::Metric,
                    other => {
                        return Err(format!(
                            "no units are called \"{other}\"; say imperial or metric"
                        ));
                    }
                });
            }
            Some("--language") => {
                let tag = value()?;
                words = Words::of(&tag)
                    .ok_or_else(|| format!("no words of the language \"{tag}\"; say en or es"))?;
            }
            Some(other) if other.starts_with("--") => {
                return Err(format!("no option is called {other}; {USAGE}"));
            }
            _ if path.is_none() => path = Some(argument),
            _ => return Err(USAGE.to_owned()),
        }
    }
    let mut project = read(&path.ok_or(USAGE)?)?;
    if let Some(system) = system {
        project.set_system(system);
    }
    project.set_words(words);
    Ok(format!("{:#}", calc::evaluate(&project).to_json()))
}

fn read(path: &std::ffi::OsStr) -> Result<Project, String> {
    let size = std::fs::metadata(path).map_err(|error| error.to_string())?.len();
    if size > MAX_BYTES as u64 {
        let bytes = usize::try_from(size).unwrap_or(usize::MAX);
        return Err(LoadError::TooLarge { bytes }.to_string());
    }
    let bytes = std::fs::read(path).map_err(|error| error.to_string())?;
    let text = String::from_utf8(bytes)
        .map_err(|_| "the file is not UTF-8 text, so it is no project file".to_owned())?;
    Project::from_text(&text).map_err(|error| error.to_string())
}
