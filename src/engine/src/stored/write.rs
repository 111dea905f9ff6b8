//! The one writer of stored things.

use super::{Stored, View};
use serde::ser::{SerializeMap, SerializeSeq};
use serde::{Serialize, Serializer};

pub(crate) fn write<S: Serializer>(thing: &dyn Stored, to: S) -> Result<S::Ok, S::Error> {
    Written(thing).serialize(to)
}

/// A thing whose type is no longer known, so that serde's code is compiled for one type only.
struct Written<'a>(&'a dyn Stored);

impl Serialize for Written<'_> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        match self.0.view() {
            View::Nothing => to.serialize_none(),
            View::Number(number) => to.serialize_i64(number),
            View::Text(text) => to.serialize_str(text),
            View::Tagged(name, thing) => {
                let mut map = to.serialize_map(Some(1))?;
                map.serialize_entry(name, &Written(thing))?;
                map.end()
            }
            View::List(list) => {
                let mut items = to.serialize_seq(None)?;
                let mut at = 0;
                while let Some(item) = list.item(at) {
                    items.serialize_element(&Written(item))?;
                    at += 1;
                }
                items.end()
            }
            View::Record(record) => {
                let mut map = to.serialize_map(None)?;
                let mut at = 0;
                while let Some(member) = record.member(at) {
                    if let Some(part) = record.part(at) {
                        map.serialize_entry(member.name, &Written(part))?;
                    }
                    at += 1;
                }
                map.end()
            }
        }
    }
}
