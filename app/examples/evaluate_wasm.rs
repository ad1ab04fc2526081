//! The demo project evaluated in a wasm engine, for `cargo xtask bench` to time: `load` once, then `evaluate`; and `layout`, the joints
//! of a ceiling.
#![allow(unsafe_code, reason = "a wasm engine calls these by their names")]

#[path = "../../calc/examples/ceiling/mod.rs"]
mod ceiling;

use std::cell::{Cell, OnceCell};

use calc::carpentry::joints::plan_joints;
use calc::project::Project;

thread_local! {
    static PROJECT: OnceCell<Project> = const { OnceCell::new() };
    static LAYOUTS: Cell<u32> = const { Cell::new(0) };
}

/// Reads the demo project; says how many sheets it has, 0 where it could not be read.
#[unsafe(no_mangle)]
pub extern "C" fn load() -> usize {
    PROJECT.with(|kept| {
        let read = Project::from_text(include_str!("../../shared/demo.json"));
        read.map_or(0, |project| kept.get_or_init(|| project).sheets().count())
    })
}

/// Evaluates the whole project; says how many sheets have a result.
#[unsafe(no_mangle)]
pub extern "C" fn evaluate() -> usize {
    PROJECT.with(|kept| {
        let Some(project) = kept.get() else { return 0 };
        calc::forget_plans();
        let all = calc::evaluate(project);
        // The lists are made when they are looked at: they count.
        std::hint::black_box(all.buy_list.len() + all.cut_list.len());
        all.sheets.iter().filter(|(_, result)| result.is_ok()).count()
    })
}

/// Lays out the joints of a ceiling, with a little more stagger each time since the last plans are kept; says how many layouts there
/// are to choose from.
#[unsafe(no_mangle)]
pub extern "C" fn layout() -> usize {
    let before = LAYOUTS.replace(LAYOUTS.get() + 1);
    let mut task = ceiling::ceiling();
    task.stagger_mm += 0.01 * f64::from(before);
    plan_joints(&task).map_or(0, |plan| plan.choices.len())
}
