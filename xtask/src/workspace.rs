//! Where things lie in this checkout.

use std::path::PathBuf;

/// The folder of the workspace.
pub fn root() -> PathBuf {
    let xtask = std::env::var_os("CARGO_MANIFEST_DIR")
        .map_or_else(|| PathBuf::from(env!("CARGO_MANIFEST_DIR")), PathBuf::from);
    xtask.parent().map_or_else(|| PathBuf::from("."), PathBuf::from)
}

/// Cargo's target folder.
pub fn target() -> PathBuf {
    std::env::var_os("CARGO_TARGET_DIR")
        .map_or_else(|| root().join("target"), |folder| root().join(folder))
}

/// Where `cargo xtask build` puts the site.
pub fn dist() -> PathBuf {
    root().join("dist")
}

/// Where the tools live that the tasks install.
pub fn tools() -> PathBuf {
    target().join("tools")
}

/// Where the end-to-end tests leave their pictures and printed pages.
pub fn evidence() -> PathBuf {
    target().join("e2e")
}

/// Where the end-to-end tests name what passed only at the second try, a line each.
pub fn second_tries() -> PathBuf {
    evidence().join("second-tries.txt")
}
