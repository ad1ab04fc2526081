//! Evaluates a project file: `cargo run -q --release -p calc --example evaluate -- FILE`.
//! Prints one JSON document. Exits 0 when the file could be read, 2 with one line on standard error when not.

use std::process::ExitCode;

use calc::project::{LoadError, MAX_BYTES, Project};

fn main() -> ExitCode {
    let mut arguments = std::env::args_os().skip(1);
    let (Some(path), None) = (arguments.next(), arguments.next()) else {
        eprintln!("evaluate: name one project file");
        return ExitCode::from(2);
    };
    match read(&path) {
        Ok(project) => {
            println!("{:#}", calc::evaluate(&project).to_json());
            ExitCode::SUCCESS
        }
        Err(message) => {
            eprintln!("evaluate: {message}");
            ExitCode::from(2)
        }
    }
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
