//! Taking off what a job needs to be bought and cut.

mod bins;
pub mod cost;
pub mod count;
pub mod cut_plan;
pub mod cutting;
pub mod item;
pub mod list;
pub mod spacing;
pub mod straights;
