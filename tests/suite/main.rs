//! Checks that cross more than one file of the engine, and everything against the outside.

mod air;
mod assemblies;
mod bills;
#[cfg(feature = "browser")]
mod browser;
mod climate;
mod dependencies;
mod drafts;
mod edits;
mod files;
mod findings;
mod fluids;
mod ground;
mod heat_loss;
mod lengths;
mod loops;
mod messages;
mod plant;
mod problems;
mod published;
mod random_house;
mod reading;
mod same_bits;
mod shown;
mod support;
mod units;
mod walls;
mod water_side;
mod whole_job;
mod workings;
