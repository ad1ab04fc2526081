//! A virtual display for the engine that has no headless mode.

use std::io::{BufRead, BufReader};
use std::process::{Command, Stdio};
use std::sync::OnceLock;
use std::sync::mpsc::channel;

/// The display to draw on: the one of this session, or a virtual one that lives as long as the tests.
pub fn display() -> Option<String> {
    static VIRTUAL: OnceLock<Option<String>> = OnceLock::new();
    std::env::var("DISPLAY").ok().or_else(|| VIRTUAL.get_or_init(start).clone())
}

fn start() -> Option<String> {
    let (sender, receiver) = channel();
    // The display ends with the thread that started it, so that thread stays.
    std::thread::spawn(move || {
        let child = Command::new("setpriv")
            .args(["--pdeathsig", "TERM", "--", "Xvfb", "-displayfd", "1", "-screen", "0"])
            .args(["1280x1024x24", "-nolisten", "tcp"])
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn();
        let Ok(mut child) = child else { return };
        let mut number = String::new();
        if let Some(output) = child.stdout.take() {
            let _ = BufReader::new(output).read_line(&mut number);
        }
        let _ = sender.send(format!(":{}", number.trim()));
        let _ = child.wait();
    });
    receiver.recv().ok()
}
