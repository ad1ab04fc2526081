//! What came from elsewhere: whose copy a received project is, and codes of a sequence that is not complete.

use calc::sorting;

use super::{Store, key};

/// The kind of key that says that a project was received, and beside which one it was put.
pub(super) const RECEIVED: &str = "received";

/// The kind of key that keeps a part of a sequence: `part SET COUNT NUMBER`.
const PART: &str = "part";

/// The most sequences that wait for their parts; of more, the one begun first is dropped.
pub const MOST_SETS: usize = 3;

/// A sequence of which not all parts have come.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PartSet {
    /// Its id: parts of different sequences never have the same.
    pub id: String,
    /// How many parts make it complete.
    pub count: usize,
    /// The parts that are here, in order: number from 1, and text.
    pub parts: Vec<(usize, String)>,
    /// When the last of them came. [ms since 1970]
    changed: u64,
}

impl PartSet {
    /// The numbers that have not come yet.
    pub fn missing(&self) -> Vec<usize> {
        let here = |number: &usize| self.parts.iter().any(|(known, _)| known == number);
        (1..=self.count).filter(|number| !here(number)).collect()
    }
}

impl Store {
    /// The share of the browser's room for this page's host that a project's text uses, kept twice as
    /// projects are: 0 to 1 and more.
    pub fn room_for(&self, text: &str) -> f64 {
        2.0 * super::shelf::room_of(text) as f64 / super::ROOM_CHARS as f64
    }

    /// Notes that a project was received: beside the one with the other id, or beside none.
    pub fn set_received(&self, id: &str, beside: &str) {
        // Where there is no room for the note the project is a project like any other.
        let _ = self.shelf.write(&key(RECEIVED, id), beside);
    }

    /// The id of the project beside which this one was put when it was received; empty where there
    /// was none, none where it was not received or has been looked at.
    pub fn received(&self, id: &str) -> Option<String> {
        self.shelf.read(&key(RECEIVED, id))
    }

    /// Makes a received project one like any other.
    pub fn settle_received(&self, id: &str) {
        self.shelf.remove(&key(RECEIVED, id));
    }

    /// Keeps a part of a sequence until the others have come. The same part again changes nothing.
    /// False where it could not be kept.
    pub fn keep_part(&self, set: &str, count: usize, number: usize, text: &str) -> bool {
        let own = key(PART, &[set, " ", &count.to_string(), " ", &number.to_string()].concat());
        let mut others = self.part_sets();
        others.retain(|other| other.id != set || other.count != count);
        while others.len() >= MOST_SETS {
            if let Some(oldest) = others.pop() {
                self.forget_parts(&oldest.id, oldest.count);
            }
        }
        let now = (js_sys::Date::now() as u64).to_string();
        self.shelf.write(&own, &[&now, " ", text].concat()).is_ok()
    }

    /// The sequences that wait for parts, the one that last got a part first.
    pub fn part_sets(&self) -> Vec<PartSet> {
        let mut sets: Vec<PartSet> = Vec::new();
        for whole in self.shelf.keys() {
            let mut words = whole.split(' ');
            let (Some(PART), Some(id), Some(count), Some(number), None) =
                (words.next(), words.next(), words.next(), words.next(), words.next())
            else {
                continue;
            };
            let (Ok(count), Ok(number)) = (count.parse(), number.parse()) else { continue };
            let Some(value) = self.shelf.read(&whole) else { continue };
            let Some((changed, text)) = value.split_once(' ') else { continue };
            let changed: u64 = changed.parse().unwrap_or(0);
            let index = match sets.iter().position(|set| set.id == id && set.count == count) {
                Some(index) => index,
                None => {
                    sets.push(PartSet { id: id.to_owned(), count, parts: Vec::new(), changed });
                    sets.len() - 1
                }
            };
            sets[index].parts.push((number, text.to_owned()));
            sets[index].changed = sets[index].changed.max(changed);
        }
        for set in &mut sets {
            sorting::sort_by_key(&mut set.parts, |(number, _)| *number);
        }
        sorting::sort_by_key(&mut sets, |set| u64::MAX - set.changed);
        sets
    }

    /// Drops the parts of a sequence.
    pub fn forget_parts(&self, set: &str, count: usize) {
        let begin = key(PART, &[set, " ", &count.to_string(), " "].concat());
        for key in self.shelf.keys().iter().filter(|key| key.starts_with(&begin)) {
            self.shelf.remove(key);
        }
    }
}
