//! Taking off what a job needs to be bought and cut.

mod bins;
pub mod cut_plan;
