//! What loops cost more or less than others: pieces, pipe, valves. Nothing where a price is missing,
//! for half a cost would decide wrongly.

use super::follow::{From, Hanging};
use crate::job::{Balancing, Job, PipeLeg, PriceField, SizedField};
use crate::pipe::Tube;
use crate::quantity::{Length, Money};
use crate::sizing::Choice;
use crate::takeoff::cost::part_price;

/// Whether everything is priced without which no split can be called cheaper.
pub(super) fn is_known(job: &Job) -> bool {
    job.baseboard.stock.iter().all(|stock| stock.price.is_some())
        && job.prices.each(PriceField::LoopValves).is_some()
        && job.zones.iter().all(|zone| job.prices.sized(zone.pipe, SizedField::Pipe).is_some())
}

/// Pieces with their enclosure and joints: one more on each run than it has pieces.
pub(super) fn of_pieces(job: &Job, choice: &Choice) -> Money {
    if !is_known(job) {
        return Money::ZERO;
    }
    let one = |length: Length| {
        // Pieces are counted in sixteenths of an inch and may be a hair off.
        let same = |known: Length| (known - length).si().abs() < 1e-4;
        let stock = job.baseboard.stock.iter().find(|stock| same(stock.length));
        stock.and_then(|stock| stock.price).unwrap_or(Money::ZERO)
    };
    let joint = job.prices.each(PriceField::Joint).unwrap_or(Money::ZERO);
    let enclosure = job.prices.by_length(PriceField::Enclosure);
    let pieces: Money = choice.pieces().map(one).sum();
    pieces
        + joint * joints(choice) as f64
        + enclosure.map_or(Money::ZERO, |price| price * choice.nominal)
}

/// Soldered joints at a room's element.
pub(super) fn joints(choice: &Choice) -> usize {
    choice.runs.iter().map(|run| run.pieces.len() + 1).sum()
}

/// A loop without its elements: pipe, elbows, its own valves, and the balancing valve and tees of one
/// among several.
pub(super) fn of_loop(job: &Job, pipe: PipeLeg, hanging: &Hanging) -> Money {
    if !is_known(job) {
        return Money::ZERO;
    }
    let si = |field, tube: Tube| part_price(job, field, Some(tube)).unwrap_or(0.0);
    let mut sum = si(PriceField::LoopValves, hanging.pipe)
        + si(PriceField::Elbow, hanging.pipe) * f64::from(pipe.elbows)
        + si(PriceField::Pipe, hanging.pipe) * pipe.length.si();
    if let From::Tees(balancing) = hanging.from {
        sum += si(PriceField::Tee, hanging.main) * 2.0;
        if balancing == Balancing::Valves {
            sum += si(PriceField::BalancingValve, hanging.pipe);
        }
    }
    Money::from_si(sum)
}
