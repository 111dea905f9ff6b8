//! What is typed into the fields of one thing.

use super::field::Family;
use crate::quantity::Unit;
use crate::stored::{Member, Record, Slot, Stored, View, stored};
use std::fmt;
use std::marker::PhantomData;

/// A field's text exactly as typed, and the unit that stood beside the box.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    pub text: String,
    pub unit: Unit,
}

stored!(Entry { text, unit });

/// The fields of one thing that hold text, in the order of the fields; a blank field has no entry.
#[derive(Clone, PartialEq, Eq)]
pub struct Entries<F> {
    typed: Typed,
    family: PhantomData<F>,
}

/// The same without the family, so that its code is compiled once: each entry with its field's
/// place in the family.
#[derive(Clone, PartialEq, Eq)]
struct Typed(Vec<(u8, Entry)>);

impl<F> Default for Entries<F> {
    fn default() -> Self {
        Entries { typed: Typed(Vec::new()), family: PhantomData }
    }
}

impl<F: Family> Entries<F> {
    pub fn get(&self, field: F) -> Option<&Entry> {
        self.typed.get(field.place())
    }

    /// How many of the fields hold text.
    pub fn len(&self) -> usize {
        self.typed.0.len()
    }

    pub fn is_empty(&self) -> bool {
        self.typed.0.is_empty()
    }

    /// Keeps `entry`, or forgets the field when only spaces are left.
    pub fn set(&mut self, field: F, entry: Entry) {
        self.typed.set(field.place(), entry);
    }

    /// For building a draft in code: `entries.with(RoomField::Height, "8", Unit::Foot)`.
    #[must_use]
    pub fn with(mut self, field: F, text: &str, unit: Unit) -> Self {
        self.set(field, Entry { text: text.to_string(), unit });
        self
    }
}

impl Typed {
    fn get(&self, place: u8) -> Option<&Entry> {
        self.0.iter().find(|(at, _)| *at == place).map(|(_, entry)| entry)
    }

    fn set(&mut self, place: u8, entry: Entry) {
        *self.open(place) = entry;
        self.forget_blanks();
    }

    /// The entry at this place, a blank one if there was none.
    fn open(&mut self, place: u8) -> &mut Entry {
        let before = self.0.iter().position(|(at, _)| *at >= place).unwrap_or(self.0.len());
        if self.0.get(before).is_none_or(|(at, _)| *at != place) {
            self.0.insert(before, (place, Entry::blank()));
        }
        &mut self.0[before].1
    }

    fn forget_blanks(&mut self) {
        self.0.retain(|(_, entry)| !entry.text.trim().is_empty());
    }
}

impl<F: Family> fmt::Debug for Entries<F> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let name = |at: u8| F::ALL.get(usize::from(at)).map(|field| field.name());
        f.debug_map().entries(self.typed.0.iter().map(|(at, entry)| (name(*at), entry))).finish()
    }
}

impl<F: Family> Stored for Entries<F> {
    fn blank() -> Self {
        Entries::default()
    }
    fn view(&self) -> View<'_> {
        View::Record(self)
    }
    fn slot(&mut self) -> Slot<'_> {
        Slot::Record(self)
    }
}

impl<F: Family> Record for Entries<F> {
    fn member(&self, at: usize) -> Option<Member> {
        F::ALL.get(at).map(|field| Member { name: field.name(), needed: false })
    }
    fn part(&self, at: usize) -> Option<&dyn Stored> {
        self.typed.get(u8::try_from(at).ok()?).map(|entry| entry as &dyn Stored)
    }
    fn part_mut(&mut self, at: usize) -> Option<&mut dyn Stored> {
        Some(self.typed.open(u8::try_from(at).ok()?))
    }
    /// What was typed into an unknown field must not be lost unseen.
    fn lenient(&self) -> bool {
        false
    }
    fn close(&mut self) {
        self.typed.forget_blanks();
    }
}
