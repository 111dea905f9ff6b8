//! A system that stands: what each of its rooms gets, and from a few readings which explanation of them
//! is likely.
//!
//! Each explanation is the system as entered with one thing changed by so much: the flow, one element's
//! output, the order of a loop, a room's loss. What would then be read everywhere follows from the same
//! physics as the design ([`model`]). How likely an explanation is, is Bayes' rule: how well it meets the
//! readings at its best strength, times how much of its range does so, times how common it is
//! ([`weigh`]). Readings are uncertain, and so is the calculation: an explanation has to do better than
//! what both leave open.

mod explanation;
mod gets;
mod model;
mod place;
mod weigh;

pub use explanation::{Explanation, Order, Scale};
pub use gets::{Limit, RoomGets, gets};
pub use place::{AIR, At, OUTDOORS, WATER};
pub use weigh::{Compared, Explained, Explaining, Likely, Next, NoExplanation, Sure, explain};
