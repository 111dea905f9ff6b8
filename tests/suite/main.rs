//! Checks that cross more than one file of the engine, and everything against the outside.

mod air;
mod assemblies;
#[cfg(feature = "browser")]
mod browser;
mod certainty;
mod climate;
mod dependencies;
mod drafts;
mod edits;
mod files;
mod findings;
mod ground;
mod heat_loss;
mod house_balance;
mod lengths;
mod loops;
mod messages;
mod problems;
mod published;
mod random_house;
mod reading;
mod same_bits;
mod shipped;
mod shown;
mod support;
mod two_storey;
mod units;
mod walls;
mod water_side;
mod whole_job;
mod workings;
