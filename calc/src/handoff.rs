//! What one sheet hands to another: values of types of their own, never looked up by a name.

use std::any::Any;
use std::fmt::Debug;
use std::sync::Arc;

use crate::words::{Id, common};

/// A value that sheets hand to each other.
pub trait HandOff: Any + Clone + Debug + PartialEq + Send + Sync {
    /// What is said where a sheet has none to give.
    const LACKING: Id = common::NOT_GIVEN;
}

/// A value as it is kept, whatever its type.
trait Given: Debug + Send + Sync {
    fn any(&self) -> &dyn Any;
    fn equals(&self, other: &dyn Any) -> bool;
}

impl<T: HandOff> Given for T {
    fn any(&self) -> &dyn Any {
        self
    }

    fn equals(&self, other: &dyn Any) -> bool {
        other.downcast_ref::<Self>() == Some(self)
    }
}

/// All that a sheet hands over: one value of a type at most.
#[derive(Clone, Debug, Default)]
pub struct Handed(Vec<Arc<dyn Given>>);

impl Handed {
    /// One value.
    pub fn of(value: impl HandOff) -> Self {
        Self::default().with(value)
    }

    /// One value more.
    #[must_use]
    pub fn with(mut self, value: impl HandOff) -> Self {
        self.0.push(Arc::new(value));
        self
    }

    /// The value of this type, where there is one.
    pub fn get<T: HandOff>(&self) -> Option<&T> {
        self.0.iter().find_map(|value| value.any().downcast_ref())
    }
}

impl PartialEq for Handed {
    fn eq(&self, other: &Self) -> bool {
        self.0.len() == other.0.len()
            && self.0.iter().zip(&other.0).all(|(one, other)| one.equals(other.any()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[derive(Clone, Debug, PartialEq)]
    struct Draw(f64);
    impl HandOff for Draw {}

    #[derive(Clone, Debug, PartialEq)]
    struct Yield(f64);
    impl HandOff for Yield {}

    #[test]
    fn a_value_is_found_by_its_type_and_by_nothing_else() {
        let handed = Handed::of(Draw(3.0));
        assert_eq!(handed.get(), Some(&Draw(3.0)));
        assert_eq!(handed.get::<Yield>(), None);
        assert_eq!(handed, Handed::of(Draw(3.0)));
        assert_ne!(handed, Handed::of(Draw(4.0)));
        assert_ne!(handed, Handed::of(Yield(3.0)));
        assert_ne!(handed, Handed::default());
    }
}
