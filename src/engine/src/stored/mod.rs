//! How the things of a job stand in its file.
//!
//! Serde's derived code is compiled anew for every struct, list and field, and was an eighth of the
//! page's code. Here a thing only says what it is made of: [`View`] to be written, [`Slot`] to be read
//! into. One writer and one reader walk through them ([`write`], [`read`]), in whatever format serde
//! leads to. Results, which the page never writes, keep serde's derives.
//!
//! Reading begins with a blank and fills it in place: what a blank holds is read over, or is the
//! default of what the file lacks, or is missed by an error.

mod read;
mod write;

pub(crate) use read::read;
pub(crate) use write::write;

/// A thing that a job file holds.
pub(crate) trait Stored {
    /// What reading begins with; never left to stand.
    fn blank() -> Self
    where
        Self: Sized;
    fn view(&self) -> View<'_>;
    fn slot(&mut self) -> Slot<'_>;
}

/// A thing as it is written.
pub(crate) enum View<'a> {
    Nothing,
    Number(i64),
    Text(&'a str),
    /// `{"room": 3}`
    Tagged(&'static str, &'a dyn Stored),
    List(&'a dyn List),
    Record(&'a dyn Record),
}

/// Where a thing is read into.
pub(crate) enum Slot<'a> {
    Number(&'a mut dyn Number),
    Text(&'a mut String),
    Choice(&'a mut dyn Choice),
    Maybe(&'a mut dyn Maybe),
    List(&'a mut dyn List),
    Record(&'a mut dyn Record),
}

/// A whole number.
pub(crate) trait Number {
    /// Whether it can be this one.
    fn set(&mut self, value: i64) -> bool;
}

/// One of a few things with names, some of which hold a thing of their own.
pub(crate) trait Choice: Stored {
    /// Becomes the nth; whether there is one.
    fn turn(&mut self, nth: usize) -> bool;
    fn within(&mut self) -> Option<&mut dyn Stored> {
        None
    }
}

/// A thing, or `null`.
pub(crate) trait Maybe {
    fn clear(&mut self);
    fn open(&mut self) -> &mut dyn Stored;
}

pub(crate) trait List {
    fn item(&self, at: usize) -> Option<&dyn Stored>;
    /// Adds a blank.
    fn push(&mut self) -> &mut dyn Stored;
}

/// Things by name, in the order in which they are written.
pub(crate) trait Record {
    fn member(&self, at: usize) -> Option<Member>;
    /// `None` for one that is not written.
    fn part(&self, at: usize) -> Option<&dyn Stored>;
    fn part_mut(&mut self, at: usize) -> Option<&mut dyn Stored>;
    /// Whether a name that is none of the members' is passed over, as newer files may have one.
    fn lenient(&self) -> bool {
        true
    }
    /// Called once all is read.
    fn close(&mut self) {}
}

#[derive(Debug, Clone, Copy)]
pub(crate) struct Member {
    pub(crate) name: &'static str,
    /// Whether a file without it is damaged; otherwise a default stands for it.
    pub(crate) needed: bool,
}

/// Stores a struct, here a field with a default and one that is stored under another name:
/// `stored!(RoomDraft { id, used: default, version as "finrun" })`. In the file's order.
macro_rules! stored {
    ($type:ident { $($field:ident $(as $name:literal)? $(: $default:ident)?),+ $(,)? }) => {
        impl $crate::stored::Stored for $type {
            fn blank() -> Self {
                $type { $($field: $crate::stored::stored!(@blank $($default)?)),+ }
            }
            fn view(&self) -> $crate::stored::View<'_> {
                $crate::stored::View::Record(self)
            }
            fn slot(&mut self) -> $crate::stored::Slot<'_> {
                $crate::stored::Slot::Record(self)
            }
        }

        const _: () = {
            /// The place of each field.
            #[allow(non_camel_case_types, reason = "named as the fields are")]
            enum At { $($field),+ }

            impl $crate::stored::Record for $type {
                fn member(&self, at: usize) -> Option<$crate::stored::Member> {
                    const MEMBERS: &[$crate::stored::Member] = &[$($crate::stored::Member {
                        name: $crate::stored::stored!(@name $field $($name)?),
                        needed: $crate::stored::stored!(@needed $($default)?),
                    }),+];
                    MEMBERS.get(at).copied()
                }
                fn part(&self, at: usize) -> Option<&dyn $crate::stored::Stored> {
                    match at {
                        $(at if at == At::$field as usize => Some(&self.$field),)+
                        _ => None,
                    }
                }
                fn part_mut(&mut self, at: usize) -> Option<&mut dyn $crate::stored::Stored> {
                    match at {
                        $(at if at == At::$field as usize => Some(&mut self.$field),)+
                        _ => None,
                    }
                }
            }
        };

        $crate::stored::serde_through_stored!($type);
    };
    (@blank) => { $crate::stored::Stored::blank() };
    (@blank default) => { Default::default() };
    (@needed) => { true };
    (@needed default) => { false };
    (@name $field:ident) => { stringify!($field) };
    (@name $field:ident $name:literal) => { $name };
}
pub(crate) use stored;

/// Stores an enum of which some variants hold a thing:
/// `stored_choice!(Behind { Outdoors = "outdoors", Room(room: RoomId) = "room" })` is written
/// `"outdoors"` or `{"room": 3}`. Those that hold nothing are lists of [`crate::named::names`].
macro_rules! stored_choice {
    ($type:ident { $($variant:ident $(($inner:ident: $held:ty))? = $name:literal),+ $(,)? }) => {
        impl $crate::stored::Stored for $type {
            fn blank() -> Self {
                let [first, ..] = Self::each();
                first
            }
            fn view(&self) -> $crate::stored::View<'_> {
                match self {
                    $($type::$variant $(($inner))? => {
                        $crate::stored::stored_choice!(@view $name $($inner)?)
                    })+
                }
            }
            fn slot(&mut self) -> $crate::stored::Slot<'_> {
                $crate::stored::Slot::Choice(self)
            }
        }

        impl $type {
            /// One of each, as reading begins.
            fn each() -> [$type; [$($name),+].len()] {
                [$($type::$variant $((<$held as $crate::stored::Stored>::blank()))?),+]
            }
        }

        impl $crate::stored::Choice for $type {
            fn turn(&mut self, nth: usize) -> bool {
                Self::each().get(nth).map(|one| *self = *one).is_some()
            }
            fn within(&mut self) -> Option<&mut dyn $crate::stored::Stored> {
                match self {
                    $($($type::$variant($inner) => Some($inner),)?)+
                    _ => None,
                }
            }
        }

        $crate::stored::serde_through_stored!($type);
    };
    (@view $name:literal) => { $crate::stored::View::Text($name) };
    (@view $name:literal $inner:ident) => { $crate::stored::View::Tagged($name, $inner) };
}
pub(crate) use stored_choice;

/// Lets serde's callers read and write a stored type like any other.
macro_rules! serde_through_stored {
    ($type:ty) => {
        impl serde::Serialize for $type {
            fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                $crate::stored::write(self, to)
            }
        }

        impl<'de> serde::Deserialize<'de> for $type {
            fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                let mut thing = <$type as $crate::stored::Stored>::blank();
                $crate::stored::read(&mut thing, from)?;
                Ok(thing)
            }
        }
    };
}
pub(crate) use serde_through_stored;

macro_rules! numbers {
    ($($type:ty),+) => {$(
        impl Stored for $type {
            fn blank() -> $type {
                0
            }
            fn view(&self) -> View<'_> {
                View::Number(i64::from(*self))
            }
            fn slot(&mut self) -> Slot<'_> {
                Slot::Number(self)
            }
        }

        impl Number for $type {
            fn set(&mut self, value: i64) -> bool {
                <$type>::try_from(value).map(|value| *self = value).is_ok()
            }
        }
    )+};
}

numbers!(u8, u32, i32);

impl Stored for String {
    fn blank() -> String {
        String::new()
    }
    fn view(&self) -> View<'_> {
        View::Text(self)
    }
    fn slot(&mut self) -> Slot<'_> {
        Slot::Text(self)
    }
}

impl<T: Stored> Stored for Option<T> {
    fn blank() -> Option<T> {
        None
    }
    fn view(&self) -> View<'_> {
        self.as_ref().map_or(View::Nothing, T::view)
    }
    fn slot(&mut self) -> Slot<'_> {
        Slot::Maybe(self)
    }
}

impl<T: Stored> Maybe for Option<T> {
    fn clear(&mut self) {
        *self = None;
    }
    fn open(&mut self) -> &mut dyn Stored {
        self.insert(T::blank())
    }
}

impl<T: Stored> Stored for Vec<T> {
    fn blank() -> Vec<T> {
        Vec::new()
    }
    fn view(&self) -> View<'_> {
        View::List(self)
    }
    fn slot(&mut self) -> Slot<'_> {
        Slot::List(self)
    }
}

impl<T: Stored> List for Vec<T> {
    fn item(&self, at: usize) -> Option<&dyn Stored> {
        self.get(at).map(|item| item as &dyn Stored)
    }
    fn push(&mut self) -> &mut dyn Stored {
        self.push_mut(T::blank())
    }
}
