//! A system that stands: readings made with a known fault give that fault, whatever the seed; and what
//! each room gets agrees with the steady solvers that are there already.

mod bayes;
pub(crate) mod faults;
mod gets;
mod seeded;
mod told;

use finrun_engine::design::{Design, design};
use finrun_engine::job::{Draft, Job, read};

pub(crate) fn solved(draft: &Draft) -> (Job, Design) {
    let job = read(draft).job.expect("a job");
    let design = design(&job);
    (job, design)
}
