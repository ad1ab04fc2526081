//! The demo: the project's own rig, filled in.

use calc::project::Project;
use calc::quantity::UnitSystem;

use crate::route::{Route, go};
use crate::storage::{Store, new_id};
use crate::words::say;

/// The demo's project file.
const DEMO: &str = include_str!("../../../shared/demo.json");

/// The demo's id is kept on this device under this name: it is there once, however often it is asked for.
const ID: &str = "demo";

/// Opens the demo, as it was left where it was opened before; gives its id.
///
/// # Errors
/// Why it cannot be kept.
pub fn open(store: Store, system: UnitSystem) -> Result<String, String> {
    if let Some(kept) = store.setting(ID).and_then(|id| store.load(&id).ok()) {
        let mut project = kept.project;
        if project.system() != system {
            project.set_system(system);
            store.save(&project, kept.revision).map_err(|error| error.to_string())?;
        }
        go(&Route::Project(project.id().to_owned()));
        return Ok(project.id().to_owned());
    }
    let mut demo = Project::from_text(DEMO).map_err(|error| say(error.message()))?;
    demo.set_id(&new_id());
    demo.set_system(system);
    super::start::begin(store, &demo)?;
    store.set_setting(ID, demo.id());
    Ok(demo.id().to_owned())
}
