//! Checks that cross more than one file of the engine, and everything against the outside.

mod air;
mod arrangements;
mod assemblies;
mod bills;
#[cfg(feature = "browser")]
mod browser;
mod certainty;
mod choices;
mod climate;
mod cut_plan;
mod dependencies;
mod drafts;
mod edits;
mod files;
mod findings;
mod fluids;
mod ground;
mod heat_loss;
mod house_balance;
mod joint;
mod lengths;
mod loops;
mod messages;
mod network;
mod plant;
mod practice;
mod problems;
mod published;
mod random_house;
mod reading;
mod routes;
mod same_bits;

mod shipped;
mod shown;
mod side_by_side;
mod stored;
mod support;
mod two_storey;
mod unheated;
mod units;
mod walls;
mod water_side;
mod whole_job;
mod workings;
