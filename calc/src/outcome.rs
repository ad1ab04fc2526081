//! A sheet's outcome: plain named numbers for other sheets, for tests and for scripts.

use std::borrow::Cow;

/// A node of an outcome.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// A number in the unit that ends its name (`_mm`, `_l`, …).
    Number(f64),
    /// A whole number.
    Whole(i64),
    /// A name, a conductor, a choice.
    Text(String),
    /// Yes or no.
    Flag(bool),
    /// Values in order.
    List(Vec<Value>),
    /// Named values.
    Record(Record),
}

/// Named values, in the order they were put in.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Record(Vec<(Cow<'static, str>, Value)>);

impl Record {
    /// An empty record.
    pub const fn new() -> Self {
        Self(Vec::new())
    }

    /// Adds a value under `name`.
    #[must_use]
    pub fn with(mut self, name: impl Into<Cow<'static, str>>, value: impl Into<Value>) -> Self {
        self.0.push((name.into(), value.into()));
        self
    }

    /// Adds a value under `name` where there is one.
    #[must_use]
    pub fn maybe(self, name: &'static str, value: Option<impl Into<Value>>) -> Self {
        match value {
            Some(value) => self.with(name, value),
            None => self,
        }
    }

    /// The value at a dotted path: `months.0.wh_day`.
    pub fn get(&self, path: &str) -> Option<&Value> {
        let (head, rest) = match path.split_once('.') {
            Some((head, rest)) => (head, Some(rest)),
            None => (path, None),
        };
        let value = &self.0.iter().find(|(name, _)| name == head)?.1;
        match rest {
            None => Some(value),
            Some(rest) => value.get(rest),
        }
    }

    /// The number at a dotted path.
    pub fn number(&self, path: &str) -> Option<f64> {
        match self.get(path)? {
            Value::Number(number) => Some(*number),
            Value::Whole(number) => Some(*number as f64),
            _ => None,
        }
    }

    /// The list at a dotted path; empty where there is none.
    pub fn list(&self, path: &str) -> &[Value] {
        match self.get(path) {
            Some(Value::List(values)) => values,
            _ => &[],
        }
    }

    /// The names and values in order.
    pub fn entries(&self) -> impl Iterator<Item = (&str, &Value)> {
        self.0.iter().map(|(name, value)| (name.as_ref(), value))
    }

    /// The path of the first number that is not finite, if there is one.
    pub fn not_finite(&self) -> Option<String> {
        self.0.iter().find_map(|(name, value)| value.not_finite(name))
    }
}

impl Value {
    /// The value at a dotted path below this one.
    pub fn get(&self, path: &str) -> Option<&Value> {
        match self {
            Self::Record(record) => record.get(path),
            Self::List(values) => {
                let (head, rest) = match path.split_once('.') {
                    Some((head, rest)) => (head, Some(rest)),
                    None => (path, None),
                };
                let value = values.get(head.parse::<usize>().ok()?)?;
                match rest {
                    None => Some(value),
                    Some(rest) => value.get(rest),
                }
            }
            _ => None,
        }
    }

    /// The number at a dotted path below this one.
    pub fn number(&self, path: &str) -> Option<f64> {
        match self.get(path)? {
            Self::Number(number) => Some(*number),
            Self::Whole(number) => Some(*number as f64),
            _ => None,
        }
    }

    fn not_finite(&self, path: &str) -> Option<String> {
        match self {
            Self::Number(number) => (!number.is_finite()).then(|| path.to_owned()),
            Self::List(values) => values
                .iter()
                .enumerate()
                .find_map(|(index, value)| value.not_finite(&format!("{path}.{index}"))),
            Self::Record(record) => record.not_finite().map(|below| format!("{path}.{below}")),
            Self::Whole(_) | Self::Text(_) | Self::Flag(_) => None,
        }
    }
}

impl From<f64> for Value {
    fn from(number: f64) -> Self {
        // No minus zero in a file that people read.
        Self::Number(if number == 0.0 { 0.0 } else { number })
    }
}

impl From<usize> for Value {
    fn from(number: usize) -> Self {
        Self::Whole(i64::try_from(number).unwrap_or(i64::MAX))
    }
}

impl From<u32> for Value {
    fn from(number: u32) -> Self {
        Self::Whole(i64::from(number))
    }
}

impl From<bool> for Value {
    fn from(flag: bool) -> Self {
        Self::Flag(flag)
    }
}

impl From<String> for Value {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}

impl From<&str> for Value {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl From<Record> for Value {
    fn from(record: Record) -> Self {
        Self::Record(record)
    }
}

impl<T: Into<Value>> From<Vec<T>> for Value {
    fn from(values: Vec<T>) -> Self {
        Self::List(values.into_iter().map(Into::into).collect())
    }
}

#[cfg(feature = "json")]
mod json {
    use super::{Record, Value};
    use serde_json::Value as Json;

    impl From<&Record> for Json {
        fn from(record: &Record) -> Self {
            Self::Object(record.entries().map(|(k, v)| (k.to_owned(), v.into())).collect())
        }
    }

    impl From<&Value> for Json {
        fn from(value: &Value) -> Self {
            match value {
                Value::Number(number) => Self::from(*number),
                Value::Whole(number) => Self::from(*number),
                Value::Text(text) => Self::from(text.as_str()),
                Value::Flag(flag) => Self::from(*flag),
                Value::List(values) => Self::Array(values.iter().map(Self::from).collect()),
                Value::Record(record) => record.into(),
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_reaches_into_lists_and_records() {
        let record = Record::new()
            .with("volume_l", 2.5)
            .with("containers", vec![Record::new().with("size_l", 0.75).with("count", 2_usize)]);
        assert_eq!(record.number("volume_l"), Some(2.5));
        assert_eq!(record.number("containers.0.size_l"), Some(0.75));
        assert_eq!(record.number("containers.0.count"), Some(2.0));
        assert_eq!(record.number("containers.1.count"), None);
    }

    #[test]
    fn a_number_that_is_not_finite_is_found() {
        let record = Record::new().with("a", vec![Record::new().with("b", f64::NAN)]);
        assert_eq!(record.not_finite().as_deref(), Some("a.0.b"));
        assert_eq!(Record::new().with("a", 1.0).not_finite(), None);
    }
}
