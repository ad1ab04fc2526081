//! A sheet's outcome: plain named numbers for other sheets, for tests and for scripts.

use std::borrow::Cow;

use uom::si::area::square_meter;
use uom::si::electric_charge::ampere_hour;
use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::energy::watt_hour;
use uom::si::f64::{
    Area, ElectricCharge, ElectricCurrent, ElectricPotential, Energy, Force, Length, Mass, Power,
    ReciprocalLength, ThermodynamicTemperature, Time, Volume,
};
use uom::si::force::newton;
use uom::si::length::millimeter;
use uom::si::mass::kilogram;
use uom::si::power::watt;
use uom::si::reciprocal_length::reciprocal_meter;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::hour;
use uom::si::volume::liter;

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
///
/// A chain of `with` is written in every sheet; one pointer that goes from call to call keeps each
/// link of it down to a few bytes.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Record(Option<Box<Entries>>);

type Entries = Vec<(Cow<'static, str>, Value)>;

impl Record {
    /// An empty record.
    pub const fn new() -> Self {
        Self(None)
    }

    /// Adds a value under `name`.
    #[must_use]
    #[inline(always)]
    pub fn with(self, name: &'static str, value: impl Entry) -> Self {
        value.put(self, name)
    }

    /// Adds a value under a name that someone typed.
    #[must_use]
    pub fn with_typed(self, name: String, value: impl Into<Value>) -> Self {
        self.push(Cow::Owned(name), value.into())
    }

    /// Adds a value under `name` where there is one.
    #[must_use]
    #[inline(always)]
    pub fn maybe<E: Entry>(self, name: &'static str, value: Option<E>) -> Self {
        E::put_where(value, self, name)
    }

    /// Adds all values of another record.
    #[must_use]
    pub fn with_all(self, other: Self) -> Self {
        let entries = other.0.into_iter().flat_map(|entries| *entries);
        entries.fold(self, |record, (name, value)| record.push(name, value))
    }

    #[inline(never)]
    fn push(mut self, name: Cow<'static, str>, value: Value) -> Self {
        self.0.get_or_insert_default().push((name, value));
        self
    }

    fn fields(&self) -> &[(Cow<'static, str>, Value)] {
        self.0.as_ref().map_or(&[], |entries| entries.as_slice())
    }

    /// The value at a dotted path: `months.0.wh_day`.
    pub fn get(&self, path: &str) -> Option<&Value> {
        let (head, rest) = match path.split_once('.') {
            Some((head, rest)) => (head, Some(rest)),
            None => (path, None),
        };
        let value = &self.fields().iter().find(|(name, _)| name == head)?.1;
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
        self.fields().iter().map(|(name, value)| (name.as_ref(), value))
    }

    /// The path of the first number that is not finite, if there is one.
    pub fn not_finite(&self) -> Option<String> {
        self.fields().iter().find_map(|(name, value)| value.not_finite(name))
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

/// What can be put into a record.
pub trait Entry: Sized {
    /// Puts it at the end of a record.
    fn put(self, record: Record, name: &'static str) -> Record;

    /// Puts it at the end of a record where there is one.
    fn put_where(this: Option<Self>, record: Record, name: &'static str) -> Record {
        match this {
            Some(value) => value.put(record, name),
            None => record,
        }
    }
}

/// An entry is put in by functions of its type alone, which are called with it as it is.
macro_rules! entry {
    ($($of:ty: $this:ident => $value:expr;)+) => {$(
        impl From<$of> for Value {
            fn from($this: $of) -> Self {
                $value
            }
        }

        impl Entry for $of {
            #[inline(never)]
            fn put(self, record: Record, name: &'static str) -> Record {
                record.push(Cow::Borrowed(name), self.into())
            }

            #[inline(never)]
            fn put_where(this: Option<Self>, record: Record, name: &'static str) -> Record {
                match this {
                    Some(value) => value.put(record, name),
                    None => record,
                }
            }
        }
    )+};
}

entry! {
    // No minus zero in a file that people read.
    f64: number => Self::Number(if number == 0.0 { 0.0 } else { number });
    usize: number => Self::Whole(i64::try_from(number).unwrap_or(i64::MAX));
    u32: number => Self::Whole(i64::from(number));
    bool: flag => Self::Flag(flag);
    String: text => Self::Text(text);
    &str: text => Self::Text(text.to_owned());
    Record: record => Self::Record(record);
    Vec<Record>: records => list(records);
    Vec<f64>: numbers => list(numbers);
    Vec<usize>: numbers => list(numbers);
    Vec<u32>: numbers => list(numbers);
    Vec<String>: texts => list(texts);
    Vec<&str>: texts => list(texts);
}

/// What comes to an outcome: a struct of results that derives it.
pub trait Outcome {
    /// Its fields as named values.
    fn record(&self) -> Record;
}

/// A field of a result: a plain number in a unit that its name ends in.
pub trait Item {
    /// What the name ends in: `_mm`; nothing where there is no unit.
    const UNIT: &'static str = "";

    /// Puts it at the end of a record.
    fn put(&self, record: Record, name: &'static str) -> Record {
        match self.value() {
            Some(value) => record.push(Cow::Borrowed(name), value),
            None => record,
        }
    }

    /// Its value; none where it is left out.
    fn value(&self) -> Option<Value>;
}

/// Joins two texts when the program is built: a field's name and its unit.
macro_rules! joined {
    ($first:expr, $last:expr) => {{
        const BYTES: [u8; $first.len() + $last.len()] = $crate::outcome::join($first, $last);
        match std::str::from_utf8(&BYTES) {
            Ok(text) => text,
            Err(_) => "",
        }
    }};
}
pub(crate) use joined;

/// Two texts one behind the other, of so many bytes in all.
pub(crate) const fn join<const BYTES: usize>(first: &str, last: &str) -> [u8; BYTES] {
    let (first, last) = (first.as_bytes(), last.as_bytes());
    let (mut joined, mut at) = ([0; BYTES], 0);
    while at < first.len() {
        joined[at] = first[at];
        at += 1;
    }
    while at < first.len() + last.len() {
        joined[at] = last[at - first.len()];
        at += 1;
    }
    joined
}

macro_rules! items {
    ($($of:ty, $unit:literal: $this:ident => $value:expr;)+) => {
        $(impl Item for $of {
            const UNIT: &'static str = $unit;

            fn value(&self) -> Option<Value> {
                let $this = self;
                Some($value.into())
            }
        })+
    };
}

items! {
    f64, "": number => *number;
    usize, "": number => *number;
    u32, "": number => *number;
    bool, "": flag => *flag;
    String, "": text => text.as_str();
    &'static str, "": text => *text;
    Length, "_mm": length => length.get::<millimeter>();
    Area, "_m2": area => area.get::<square_meter>();
    Volume, "_l": volume => volume.get::<liter>();
    ReciprocalLength, "_m2_per_l": rate => rate.get::<reciprocal_meter>() / 1000.0;
    Mass, "_kg": mass => mass.get::<kilogram>();
    Force, "_n": force => force.get::<newton>();
    Power, "_w": power => power.get::<watt>();
    ElectricPotential, "_v": voltage => voltage.get::<volt>();
    Energy, "_wh": energy => energy.get::<watt_hour>();
    ElectricCharge, "_ah": charge => charge.get::<ampere_hour>();
    ElectricCurrent, "_a": current => current.get::<ampere>();
    Time, "_h": time => time.get::<hour>();
    ThermodynamicTemperature, "_c": temperature => temperature.get::<degree_celsius>();
}

impl<T: Item> Item for Option<T> {
    const UNIT: &'static str = T::UNIT;

    fn value(&self) -> Option<Value> {
        self.as_ref().and_then(Item::value)
    }
}

impl<T: Item> Item for Vec<T> {
    const UNIT: &'static str = T::UNIT;

    fn value(&self) -> Option<Value> {
        Some(Value::List(self.iter().filter_map(Item::value).collect()))
    }
}

/// Several under names that someone typed, in order.
pub struct Named<T>(pub Vec<(String, T)>);

impl<T: Outcome> Item for Named<T> {
    fn value(&self) -> Option<Value> {
        let named = self.0.iter().map(|(name, of)| (name.clone(), of.record()));
        Some(Value::Record(named.fold(Record::new(), |all, (name, of)| all.with_typed(name, of))))
    }
}

impl<T: Outcome> Item for T {
    fn value(&self) -> Option<Value> {
        Some(Value::Record(self.record()))
    }
}

fn list<T: Into<Value>>(values: Vec<T>) -> Value {
    Value::List(values.into_iter().map(Into::into).collect())
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
