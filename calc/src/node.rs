//! A node of the project file, as JSON knows it, and what its rows are known by.

pub use serde_json::Value as Node;

use crate::text::text;

/// Under which key a row keeps what it is known by.
pub(crate) const KEY: &str = "key";
/// The longest key that is taken. [characters]
const LONGEST: usize = 40;

/// What stands under a key. Objects have few keys: looking through them is quicker than hashing the key.
pub(crate) fn member<'a>(node: &'a Node, key: &str) -> Option<&'a Node> {
    node.as_object()?.iter().find(|(known, _)| *known == key).map(|(_, value)| value)
}

/// What each row of a list is known by. No two are the same.
pub(crate) fn keys(rows: &[Node]) -> Vec<String> {
    let mut keys: Vec<String> = Vec::with_capacity(rows.len());
    for (at, row) in rows.iter().enumerate() {
        let own = own_of(row).filter(|key| !keys.iter().any(|known| known == key));
        // What has no key of its own gives way to what has.
        let is_taken = |key: &String| {
            keys.contains(key) || rows.iter().any(|row| key_of(row) == Some(key.as_str()))
        };
        let key = own.map_or_else(
            || {
                let place = (at + 1).to_string();
                let more = (2..).map(|copy| text!("{}-{}", &place, &copy));
                let free = std::iter::once(place.clone()).chain(more).find(|key| !is_taken(key));
                free.unwrap_or_default()
            },
            str::to_owned,
        );
        keys.push(key);
    }
    keys
}

/// The key that a row keeps. Nothing that separates the parts of a tick is taken.
pub(crate) fn key_of(row: &Node) -> Option<&str> {
    let key = row.get(KEY)?.as_str()?.trim();
    let fits = |sign: char| !sign.is_control() && !"/|+@#.".contains(sign);
    (!key.is_empty() && key.chars().count() <= LONGEST && key.chars().all(fits)).then_some(key)
}

/// The name that a run is known by until it is given another.
pub(crate) fn id_of(row: &Node) -> Option<&str> {
    row.get("id")?.as_str().map(str::trim).filter(|id| !id.is_empty())
}

/// What a row itself says that it is known by.
pub(crate) fn own_of(row: &Node) -> Option<&str> {
    key_of(row).or_else(|| id_of(row))
}
