//! How a family of fields is declared.

use crate::named::Named;

/// The fields of one kind of thing.
pub trait Family: Named {
    /// Its place in the family's list.
    fn place(self) -> u8;
}

/// Declares a family of fields, each with the name under which it is stored.
macro_rules! fields {
    ($(#[$doc:meta])* $family:ident { $($(#[$field_doc:meta])* $name:ident = $text:literal),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $family { $($(#[$field_doc])* $name),+ }

        impl Named for $family {
            const ALL: &'static [$family] = &[$($family::$name),+];
            fn name(self) -> &'static str {
                match self { $($family::$name => $text),+ }
            }
        }
        stored_by_name!($family);

        impl Family for $family {
            fn place(self) -> u8 {
                self as u8
            }
        }
    };
}
pub(super) use fields;
