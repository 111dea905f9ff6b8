//! The one reader of stored things.

use super::{Choice, List, Record, Slot, Stored, View};
use serde::Deserializer;
use serde::de::{DeserializeSeed, Error, MapAccess, SeqAccess, Visitor};
use std::fmt;

/// Reads over `into`. An error names the place: ``rooms[2].surfaces[0].kind: unknown name `x` ``.
pub(crate) fn read<'de, D: Deserializer<'de>>(
    into: &mut dyn Stored,
    from: D,
) -> Result<(), D::Error> {
    Fill { into: Into::Thing(into), at: &Place::Top }.deserialize(from)
}

/// Takes what comes. One type for every thing, so that serde's code is compiled once.
struct Fill<'a> {
    into: Into<'a>,
    at: &'a Place<'a>,
}

enum Into<'a> {
    /// To be passed over.
    Nothing,
    Thing(&'a mut dyn Stored),
    /// A further item, if there is one: that shows only as it comes.
    Next(&'a mut dyn List),
}

/// Where a thing stands in the file.
enum Place<'a> {
    Top,
    Field(&'a Place<'a>, &'a str),
    Item(&'a Place<'a>, usize),
}

impl<'a> Into<'a> {
    fn slot(self) -> Option<Slot<'a>> {
        match self {
            Into::Nothing => None,
            Into::Thing(thing) => Some(thing.slot()),
            Into::Next(list) => Some(list.push().slot()),
        }
    }
}

impl<'a> Fill<'a> {
    /// Where anything but `null` goes.
    fn slot(self) -> Option<Slot<'a>> {
        match self.into.slot() {
            Some(Slot::Maybe(maybe)) => Some(maybe.open().slot()),
            slot => slot,
        }
    }

    fn unfit<E: Error>(self) -> Result<(), E> {
        let at = self.at;
        at.unfit(self.slot())
    }
}

impl<'de> DeserializeSeed<'de> for Fill<'_> {
    type Value = ();

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<(), D::Error> {
        from.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Fill<'_> {
    type Value = ();

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a part of a job")
    }

    fn visit_bool<E: Error>(self, _: bool) -> Result<(), E> {
        self.unfit()
    }

    fn visit_f64<E: Error>(self, _: f64) -> Result<(), E> {
        self.unfit()
    }

    fn visit_unit<E: Error>(self) -> Result<(), E> {
        match self.into.slot() {
            Some(Slot::Maybe(maybe)) => {
                maybe.clear();
                Ok(())
            }
            slot => self.at.unfit(slot),
        }
    }

    fn visit_u64<E: Error>(self, value: u64) -> Result<(), E> {
        // So large a number is out of every range.
        self.visit_i64(i64::try_from(value).unwrap_or(i64::MAX))
    }

    fn visit_i64<E: Error>(self, value: i64) -> Result<(), E> {
        let at = self.at;
        match self.slot() {
            Some(Slot::Number(number)) => match number.set(value) {
                true => Ok(()),
                false => Err(at.refuse("number out of range", "")),
            },
            slot => at.unfit(slot),
        }
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<(), E> {
        let at = self.at;
        match self.slot() {
            Some(Slot::Text(into)) => {
                into.clear();
                into.push_str(text);
                Ok(())
            }
            Some(Slot::Choice(choice)) => choose(choice, text, false, at),
            slot => at.unfit(slot),
        }
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<(), A::Error> {
        let at = self.at;
        let mut list = match self.slot() {
            None => None,
            Some(Slot::List(list)) => Some(list),
            slot => return at.unfit(slot),
        };
        let mut count = 0;
        loop {
            let into = match &mut list {
                Some(list) => Into::Next(&mut **list),
                None => Into::Nothing,
            };
            if items.next_element_seed(Fill { into, at: &Place::Item(at, count) })?.is_none() {
                return Ok(());
            }
            count += 1;
        }
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<(), A::Error> {
        let at = self.at;
        let mut onto = match self.slot() {
            None => Onto::Nothing,
            Some(Slot::Record(record)) => Onto::Record(record, Vec::new()),
            Some(Slot::Choice(choice)) => Onto::Choice(choice, false),
            slot => return at.unfit(slot),
        };
        while let Some(name) = map.next_key::<String>()? {
            let into = onto.part(&name, at)?;
            map.next_value_seed(Fill { into, at: &Place::Field(at, &name) })?;
        }
        onto.close(at)
    }
}

/// What values with names are read into.
enum Onto<'a> {
    Nothing,
    /// With the places of the members that came.
    Record(&'a mut dyn Record, Vec<usize>),
    /// And whether it is made.
    Choice(&'a mut dyn Choice, bool),
}

impl Onto<'_> {
    fn part<E: Error>(&mut self, name: &str, at: &Place<'_>) -> Result<Into<'_>, E> {
        let part = match self {
            Onto::Nothing => None,
            Onto::Record(record, came) => {
                let Some(place) = place_of(&**record, name) else {
                    return match record.lenient() {
                        true => Ok(Into::Nothing),
                        false => Err(at.refuse("unknown field ", name)),
                    };
                };
                if came.contains(&place) {
                    return Err(at.refuse("duplicate field ", name));
                }
                came.push(place);
                record.part_mut(place)
            }
            Onto::Choice(choice, made) => {
                if *made {
                    return Err(at.refuse("second choice ", name));
                }
                *made = true;
                choose(&mut **choice, name, true, at)?;
                choice.within()
            }
        };
        Ok(part.map_or(Into::Nothing, Into::Thing))
    }

    /// Says what did not come.
    fn close<E: Error>(self, at: &Place<'_>) -> Result<(), E> {
        match self {
            Onto::Nothing | Onto::Choice(_, true) => Ok(()),
            Onto::Choice(_, false) => Err(at.refuse("missing choice", "")),
            Onto::Record(record, came) => {
                let mut place = 0;
                while let Some(member) = record.member(place) {
                    if member.needed && !came.contains(&place) {
                        return Err(at.refuse("missing field ", member.name));
                    }
                    place += 1;
                }
                record.close();
                Ok(())
            }
        }
    }
}

fn place_of(record: &dyn Record, name: &str) -> Option<usize> {
    let mut place = 0;
    while record.member(place)?.name != name {
        place += 1;
    }
    Some(place)
}

/// Turns to the choice of this name, of those that hold something or of those that do not.
fn choose<E: Error>(
    choice: &mut dyn Choice,
    name: &str,
    holds: bool,
    at: &Place<'_>,
) -> Result<(), E> {
    let mut nth = 0;
    while choice.turn(nth) {
        match choice.view() {
            View::Text(known) if !holds && known == name => return Ok(()),
            View::Tagged(known, _) if holds && known == name => return Ok(()),
            _ => nth += 1,
        }
    }
    Err(at.refuse("unknown name ", name))
}

impl Place<'_> {
    fn refuse<E: Error>(&self, what: &str, name: &str) -> E {
        let (before, after) = if name.is_empty() { ("", "") } else { ("`", "`") };
        match self {
            Place::Top => E::custom(format_args!("{what}{before}{name}{after}")),
            _ => E::custom(format_args!("{self}: {what}{before}{name}{after}")),
        }
    }

    /// What cannot go there; where nothing goes it is passed over.
    fn unfit<E: Error>(&self, slot: Option<Slot<'_>>) -> Result<(), E> {
        let what = match slot {
            None => return Ok(()),
            Some(Slot::Number(_)) => "not a whole number",
            Some(Slot::Text(_)) => "not text",
            Some(Slot::Choice(_)) => "not a name",
            // Never met: `Fill::slot` opens it.
            Some(Slot::Maybe(_)) => "not a part",
            Some(Slot::List(_)) => "not a list",
            Some(Slot::Record(_)) => "not fields by name",
        };
        Err(self.refuse(what, ""))
    }
}

impl fmt::Display for Place<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Place::Top => Ok(()),
            Place::Field(Place::Top, name) => f.write_str(name),
            Place::Field(before, name) => write!(f, "{before}.{name}"),
            Place::Item(before, at) => write!(f, "{before}[{at}]"),
        }
    }
}
