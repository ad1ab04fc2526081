//! Battenbook from outside: a server, a phone-sized page in a real browser, and one test per engine.

mod app;
mod display;
mod driver;
mod import;
mod kept;
mod killed;
mod page;
mod run;
mod site;

pub use anyhow::{Context, Error, Result, anyhow, bail, ensure};
pub use app::{Shown, answers, answers_in, answers_of, field};
pub use calc::quantity::UnitSystem::{self, Imperial, Metric};
pub use driver::PHONE;
pub use import::{DEMO, project_with_cut_plans, project_with_every_sheet, project_with_ribs};
pub use killed::Killable;
pub use page::Page;
pub use run::run;
pub use site::{Site, copy_of_dist, next_version};
pub use xtask::engine::Engine;
pub use xtask::server::{Request, Response};

/// Makes each named check, an `async fn(&mut Page) -> Result<()>`, a test in each engine: `name::chromium`,
/// `name::firefox`, `name::webkit`. An engine that is missing fails its tests; `cargo xtask test` leaves them out and says so.
#[macro_export]
macro_rules! in_each_engine {
    ($($name:ident),+ $(,)?) => {$(
        mod $name {
            #[test]
            fn chromium() {
                $crate::run($crate::Engine::Chromium, stringify!($name), super::$name);
            }
            #[test]
            fn firefox() {
                $crate::run($crate::Engine::Firefox, stringify!($name), super::$name);
            }
            #[test]
            fn webkit() {
                $crate::run($crate::Engine::WebKit, stringify!($name), super::$name);
            }
        }
    )+};
}
