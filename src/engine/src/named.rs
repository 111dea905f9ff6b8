//! Lists of things with names, under which job files keep them.

use crate::stored::{Choice, Slot, Stored, View};

/// A closed list of things, each with the name under which job files keep it.
pub trait Named: Copy + PartialEq + 'static {
    const ALL: &'static [Self];
    fn name(self) -> &'static str;
}

/// The thing with this name.
pub fn find<T: Named>(name: &str) -> Option<T> {
    T::ALL.iter().copied().find(|thing| thing.name() == name)
}

impl<T: Named> Stored for T {
    fn blank() -> T {
        const { T::ALL[0] }
    }
    fn view(&self) -> View<'_> {
        View::Text(self.name())
    }
    fn slot(&mut self) -> Slot<'_> {
        Slot::Choice(self)
    }
}

impl<T: Named> Choice for T {
    fn turn(&mut self, nth: usize) -> bool {
        T::ALL.get(nth).map(|thing| *self = *thing).is_some()
    }
}

/// Gives a list its names, and stores it by them.
macro_rules! names {
    ($type:ident { $($variant:ident = $text:literal),+ $(,)? }) => {
        impl $crate::named::Named for $type {
            const ALL: &'static [Self] = &[$($type::$variant),+];
            fn name(self) -> &'static str {
                match self { $($type::$variant => $text),+ }
            }
        }
        $crate::stored::serde_through_stored!($type);
    };
}
/// For a list that names itself.
pub(crate) use crate::stored::serde_through_stored as stored_by_name;
pub(crate) use names;
