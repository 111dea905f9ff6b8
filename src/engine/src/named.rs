//! Stored names of lists of things: one table each, and one small reader for all.
//!
//! A derived reader would be compiled anew for every list; on a phone's download that counts.

use serde::de::{Deserializer, Error};
use serde::{Deserialize, Serializer};

/// A closed list of things, each with the name under which job files keep it.
pub trait Named: Copy + PartialEq + 'static {
    const ALL: &'static [Self];
    fn name(self) -> &'static str;
}

/// The thing with this name.
pub fn find<T: Named>(name: &str) -> Option<T> {
    T::ALL.iter().copied().find(|thing| thing.name() == name)
}

pub(crate) fn write<T: Named, S: Serializer>(thing: T, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.serialize_str(thing.name())
}

pub(crate) fn read<'de, T: Named, D: Deserializer<'de>>(deserializer: D) -> Result<T, D::Error> {
    let name = String::deserialize(deserializer)?;
    find(&name).ok_or_else(|| D::Error::custom(format_args!("unknown name `{name}`")))
}

/// Stores a type by its names.
macro_rules! stored_by_name {
    ($type:ty) => {
        impl serde::Serialize for $type {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                $crate::named::write(*self, serializer)
            }
        }

        impl<'de> serde::Deserialize<'de> for $type {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                $crate::named::read(deserializer)
            }
        }
    };
}
pub(crate) use stored_by_name;

/// Gives a list its names, and stores it by them.
macro_rules! names {
    ($type:ident { $($variant:ident = $text:literal),+ $(,)? }) => {
        impl $crate::named::Named for $type {
            const ALL: &'static [Self] = &[$($type::$variant),+];
            fn name(self) -> &'static str {
                match self { $($type::$variant => $text),+ }
            }
        }
        $crate::named::stored_by_name!($type);
    };
}
pub(crate) use names;
