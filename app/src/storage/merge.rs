//! Two windows' changes to one project, put together field by field.
//!
//! What only one of the two has changed is taken from that one. What was typed wins over what was
//! taken out. Rows that were added in both stay both. Only a field that both have changed, each in
//! its own way, cannot be put together.
//!
//! Two windows that type at once take each other's changes in at the same time, and then there is no
//! one state that both have come from: of the one window's fields the last state in common is
//! another than of the other's. So all states that both have come from are looked at, the last one
//! first: where a field stands in one window as in any of them, that window has not changed it since.

use calc::project::Node;
use serde_json::Map;

/// A field that both windows have changed, each in its own way: the keys that lead to it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Conflict(pub Vec<String>);

/// Puts `mine` and `theirs` together, which both came from each of `bases`, the last one first.
///
/// # Errors
/// `Conflict` with the first field that both have changed.
pub fn merge(bases: &[&Node], mine: &Node, theirs: &Node) -> Result<Node, Conflict> {
    let mut path = Vec::new();
    match both(bases, mine, theirs, &mut path) {
        Some(node) => Ok(node),
        None => Err(Conflict(path)),
    }
}

/// What stands for a part that is not there.
static NOTHING: Node = Node::Null;

/// As `merge`; where it fails, `path` leads to the field.
fn both(bases: &[&Node], mine: &Node, theirs: &Node, path: &mut Vec<String>) -> Option<Node> {
    let last = bases.first().copied().unwrap_or(&NOTHING);
    if mine == theirs || mine == last {
        return Some(theirs.clone());
    }
    if theirs == last {
        return Some(mine.clone());
    }
    match (mine, theirs) {
        (Node::Object(mine), Node::Object(theirs)) => {
            objects(bases, mine, theirs, path).map(Node::Object)
        }
        (Node::Array(mine_rows), Node::Array(their_rows)) => {
            match lists(bases, mine_rows, their_rows, path) {
                Some(list) => Some(Node::Array(list)),
                None => as_before(bases, mine, theirs).cloned(),
            }
        }
        _ => match as_before(bases, mine, theirs) {
            Some(kept) => Some(kept.clone()),
            // Taken out there, typed into here, or the other way round: nothing that was typed goes.
            None => match (mine, theirs) {
                (Node::Null, kept) | (kept, Node::Null) => Some(kept.clone()),
                _ => None,
            },
        },
    }
}

/// Of two that differ the later one, where the other is as both had it once; none where both are new.
fn as_before<'n>(bases: &[&Node], mine: &'n Node, theirs: &'n Node) -> Option<&'n Node> {
    bases.iter().find_map(|base| match () {
        () if *base == theirs => Some(mine),
        () if *base == mine => Some(theirs),
        () => None,
    })
}

type Fields = Map<String, Node>;

fn objects(
    bases: &[&Node],
    mine: &Fields,
    theirs: &Fields,
    path: &mut Vec<String>,
) -> Option<Fields> {
    let mut fields = Fields::new();
    let here = theirs.keys().chain(mine.keys().filter(|key| !theirs.contains_key(*key)));
    for key in here {
        let part = |fields: &'_ Fields| fields.get(key).cloned().unwrap_or(Node::Null);
        let of_bases: Vec<&Node> =
            bases.iter().map(|base| base.get(key.as_str()).unwrap_or(&NOTHING)).collect();
        path.push(key.clone());
        let value = both(&of_bases, &part(mine), &part(theirs), path)?;
        path.pop();
        // A field that was empty on purpose stays; one that was taken out does not come back as empty.
        let was_null = |fields: &Fields| fields.get(key).is_some_and(Node::is_null);
        if !value.is_null() || was_null(theirs) || was_null(mine) {
            fields.insert(key.clone(), value);
        }
    }
    Some(fields)
}

fn lists(
    bases: &[&Node],
    mine: &[Node],
    theirs: &[Node],
    path: &mut Vec<String>,
) -> Option<Vec<Node>> {
    let mut rows: Vec<&[Node]> =
        bases.iter().map(|base| base.as_array().map_or(&[][..], Vec::as_slice)).collect();
    if rows.is_empty() {
        rows.push(&[]);
    }
    if let Some(list) = by_id(&rows, mine, theirs, path) {
        return list;
    }
    if mine.len() == theirs.len() && rows[0].len() == mine.len() {
        // A state with other rows says nothing of each of these.
        rows.retain(|base| base.len() == mine.len());
        let mut list = Vec::new();
        for (index, here) in mine.iter().enumerate() {
            let of_bases: Vec<&Node> = rows.iter().map(|base| &base[index]).collect();
            path.push(index.to_string());
            list.push(both(&of_bases, here, &theirs[index], path)?);
            path.pop();
        }
        return Some(list);
    }
    rows.iter().find_map(|base| stretches(base, mine, theirs))
}

/// Rows have come or gone. Each side has changed one stretch of the base; stretches that do not touch
/// can both be changed.
fn stretches(base: &[Node], mine: &[Node], theirs: &[Node]) -> Option<Vec<Node>> {
    let (my_start, my_end) = changed(base, mine);
    let (their_start, their_end) = changed(base, theirs);
    let my_rows = &mine[my_start..mine.len() - (base.len() - my_end)];
    let their_rows = &theirs[their_start..theirs.len() - (base.len() - their_end)];
    let (first, second) = if their_end <= my_start && their_start <= my_start {
        ((their_start, their_end, their_rows), (my_start, my_end, my_rows))
    } else if my_end <= their_start {
        ((my_start, my_end, my_rows), (their_start, their_end, their_rows))
    } else {
        return None;
    };
    let mut list = base[..first.0].to_vec();
    list.extend_from_slice(first.2);
    list.extend_from_slice(&base[first.1..second.0]);
    list.extend_from_slice(second.2);
    list.extend_from_slice(&base[second.1..]);
    Some(list)
}

/// The stretch of `base` that is another one in `now`.
fn changed(base: &[Node], now: &[Node]) -> (usize, usize) {
    let shorter = base.len().min(now.len());
    let start = (0..shorter).take_while(|at| base[*at] == now[*at]).count();
    let end = (0..shorter - start)
        .take_while(|at| base[base.len() - 1 - at] == now[now.len() - 1 - at])
        .count();
    (start, base.len() - end)
}

/// Lists whose items all have ids of their own, as sheets have; none where they have not.
fn by_id(
    bases: &[&[Node]],
    mine: &[Node],
    theirs: &[Node],
    path: &mut Vec<String>,
) -> Option<Option<Vec<Node>>> {
    for list in bases.iter().copied().chain([mine, theirs]) {
        for (index, item) in list.iter().enumerate() {
            let id = id_of(item)?;
            if list[..index].iter().any(|other| id_of(other) == Some(id)) {
                return None;
            }
        }
    }
    fn find<'n>(list: &'n [Node], id: &str) -> &'n Node {
        list.iter().find(|item| id_of(item) == Some(id)).unwrap_or(&NOTHING)
    }
    // In their order; what they have not stands behind what it stands behind here.
    let mut order: Vec<&str> = theirs.iter().filter_map(id_of).collect();
    let mut place = 0;
    for id in mine.iter().filter_map(id_of) {
        match order.iter().position(|known| *known == id) {
            Some(at) => place = at + 1,
            None => {
                order.insert(place, id);
                place += 1;
            }
        }
    }
    let mut list = Vec::new();
    for id in order {
        let of_bases: Vec<&Node> = bases.iter().map(|base| find(base, id)).collect();
        path.push(id.to_owned());
        let Some(item) = both(&of_bases, find(mine, id), find(theirs, id), path) else {
            return Some(None);
        };
        path.pop();
        if !item.is_null() {
            list.push(item);
        }
    }
    Some(Some(list))
}

fn id_of(item: &Node) -> Option<&str> {
    item.get("id")?.as_str()
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn merged(base: Node, mine: Node, theirs: Node) -> Node {
        let one = merge(&[&base], &mine, &theirs).unwrap();
        // Whichever window comes later, the same fields are kept.
        assert_eq!(merge(&[&base], &theirs, &mine).unwrap(), one);
        one
    }

    #[test]
    fn fields_that_only_one_has_changed_are_taken_from_that_one() {
        let base = json!({"a": "1", "b": "1", "c": {"d": "1", "e": "1"}, "gone": "1"});
        let mine = json!({"a": "2", "b": "1", "c": {"d": "2", "e": "1"}});
        let theirs =
            json!({"a": "1", "b": "3", "c": {"d": "1", "e": "3", "new": "3"}, "gone": "1"});
        let both = merged(base, mine, theirs);
        assert_eq!(both, json!({"a": "2", "b": "3", "c": {"d": "2", "e": "3", "new": "3"}}));
    }

    #[test]
    fn one_field_changed_by_both_is_named() {
        let base = json!({"sheets": [{"id": "s1", "inputs": {"coats": "1", "sizes": ["1", "2"]}}]});
        let with = |coats: &str, size: &str| json!({"sheets": [{"id": "s1", "inputs": {"coats": coats, "sizes": ["1", size]}}]});
        let conflict = merge(&[&base], &with("2", "2"), &with("3", "2")).unwrap_err();
        assert_eq!(conflict.0, ["sheets", "s1", "inputs", "coats"]);
        let conflict = merge(&[&base], &with("2", "3"), &with("2", "4")).unwrap_err();
        assert_eq!(conflict.0, ["sheets", "s1", "inputs", "sizes", "1"]);
        assert_eq!(merged(base, with("2", "2"), with("2", "2")), with("2", "2"));
    }

    #[test]
    fn what_was_typed_wins_over_what_was_taken_out() {
        let base = json!({"sheets": [{"id": "s1", "coats": "1"}, {"id": "s2"}], "note": "old"});
        let mine = json!({"sheets": [{"id": "s2"}]});
        let theirs = json!({"sheets": [{"id": "s1", "coats": "2"}, {"id": "s2"}], "note": "new"});
        assert_eq!(merged(base, mine, theirs.clone()), theirs);
    }

    #[test]
    fn sheets_are_told_apart_by_their_ids() {
        let base = json!([{"id": "s1", "a": "1"}, {"id": "s2", "a": "1"}]);
        let mine = json!([{"id": "s2", "a": "2"}, {"id": "s3", "a": "mine"}]);
        let theirs = json!([{"id": "s1", "a": "1"}, {"id": "s2", "a": "1", "b": "3"}]);
        assert_eq!(
            merge(&[&base], &mine, &theirs).unwrap(),
            json!([{"id": "s2", "a": "2", "b": "3"}, {"id": "s3", "a": "mine"}])
        );
        // Two new sheets of one id are not one sheet.
        let other = json!([{"id": "s1", "a": "1"}, {"id": "s2", "a": "1"}, {"id": "s3", "a": "x"}]);
        assert_eq!(merge(&[&base], &mine, &other).unwrap_err().0, ["s3", "a"]);
    }

    #[test]
    fn rows_that_come_or_go_in_both_stay_apart() {
        let base = json!(["1", "2", "3", "4"]);
        let added = json!(["1", "2", "3", "4", "mine"]);
        let first = json!(["theirs", "1", "2", "3", "4"]);
        assert_eq!(
            merged(base.clone(), added.clone(), first),
            json!(["theirs", "1", "2", "3", "4", "mine"])
        );
        let changed = json!(["1", "2", "9", "4"]);
        assert_eq!(
            merged(base.clone(), added.clone(), changed),
            json!(["1", "2", "9", "4", "mine"])
        );
        let gone = json!(["1", "3", "4"]);
        assert_eq!(
            merged(base.clone(), added.clone(), gone.clone()),
            json!(["1", "3", "4", "mine"])
        );
        // Both add at the end: both stay, theirs first.
        let theirs = json!(["1", "2", "3", "4", "theirs"]);
        assert_eq!(
            merge(&[&base], &added, &theirs).unwrap(),
            json!(["1", "2", "3", "4", "theirs", "mine"])
        );
        // A row changed that the other took out.
        let typed = json!(["1", "2 and more", "3", "4"]);
        assert!(merge(&[&base], &typed, &gone).is_err());
    }

    /// Two windows that take each other in at the same time: the last state of the one that the other has
    /// seen is not the last one of the other that the one has seen.
    #[test]
    fn windows_that_take_each_other_in_at_once_are_put_together() {
        let state = |mine: &str, theirs: &str| json!({"mine": mine, "theirs": theirs});
        // Here: typed 1, 2, 3, and took in what was there when that window had typed 7.
        let (first, here) = (state("0", "0"), state("3", "7"));
        let taken_in = state("0", "7");
        // There: took in what was here when 2 was typed, and typed on.
        let (seen, there) = (state("2", "0"), state("2", "9"));
        for bases in [[&taken_in, &seen, &first], [&seen, &taken_in, &first]] {
            assert_eq!(merge(&bases, &here, &there).unwrap(), state("3", "9"));
            assert_eq!(merge(&bases, &there, &here).unwrap(), state("3", "9"));
        }
        // One of the two states alone does not tell it.
        assert!(merge(&[&taken_in, &first], &here, &there).is_err());
        // One field that is new in both is still told.
        assert!(merge(&[&taken_in, &seen, &first], &here, &state("4", "9")).is_err());
        // What one typed back to what it was is the last thing typed in it.
        assert_eq!(
            merge(&[&seen, &first], &state("0", "0"), &state("2", "9")).unwrap(),
            state("0", "9")
        );
    }

    /// Every pair of small edits: what one window typed is in the merged project or a conflict is told.
    #[test]
    fn nothing_that_was_typed_is_ever_dropped() {
        let base = json!({"a": "1", "list": ["1", "2"], "rows": [{"x": "1"}, {"x": "2"}], "o": {"p": "1"}});
        let edits: [fn(&mut Node, &str); 9] = [
            |doc, typed| doc["a"] = json!(typed),
            |doc, typed| doc["list"][0] = json!(typed),
            |doc, typed| doc["list"].as_array_mut().unwrap().push(json!(typed)),
            |doc, typed| doc["list"].as_array_mut().unwrap().insert(0, json!(typed)),
            |doc, typed| doc["rows"][1]["x"] = json!(typed),
            |doc, typed| doc["rows"].as_array_mut().unwrap().push(json!({"x": typed})),
            |doc, typed| {
                doc["rows"].as_array_mut().unwrap().remove(0);
                doc["rows"][0]["y"] = json!(typed);
            },
            |doc, typed| doc["o"] = json!({"q": typed}),
            |doc, typed| doc["new"] = json!({"deep": [typed]}),
        ];
        let mut put_together = 0;
        for mine_edit in edits {
            for theirs_edit in edits {
                let (mut mine, mut theirs) = (base.clone(), base.clone());
                mine_edit(&mut mine, "typed here");
                theirs_edit(&mut theirs, "typed there");
                if let Ok(both) = merge(&[&base], &mine, &theirs) {
                    let text = both.to_string();
                    assert!(text.contains("typed here"), "{mine} {theirs} {text}");
                    assert!(text.contains("typed there"), "{mine} {theirs} {text}");
                    put_together += 1;
                }
            }
        }
        assert!(put_together > 50, "only {put_together} of 81 put together");
    }
}
