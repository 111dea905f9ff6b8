//! What if: the job with the changes that are on, as another job, and the two side by side.
//!
//! Nothing is calculated here that a job is not: a change only types and chooses what a user would, so
//! that loads, lengths and the year follow as ever.

mod apply;
mod compare;
mod payback;
mod reach;

pub use apply::apply;
pub use compare::{NotWeighed, RoomSide, Side, Weighed, Weighing, Year};
pub use payback::{Payback, payback};
pub use reach::{Reach, kind_of, reach};
