//! What a way out costs, as far as prices are typed.

use super::circuit::split;
use super::{Case, Circulator, Tried, Way};
use crate::job::PriceField;
use crate::pipe::Tube;
use crate::quantity::{Length, Money};
use crate::sizing::Choice;
use crate::takeoff::cost::part_price;
use crate::takeoff::item::Class;

/// The cost of what has a price, none where nothing of it has; and what has none.
#[derive(Debug, Default)]
pub(super) struct Sum {
    pub(super) cost: Option<Money>,
    pub(super) unpriced: Vec<Class>,
}

impl Sum {
    /// Nothing is bought.
    fn nothing() -> Sum {
        Sum { cost: Some(Money::ZERO), unpriced: Vec::new() }
    }

    fn add(&mut self, what: Class, price: Option<Money>) {
        match price {
            Some(price) => self.cost = Some(self.cost.unwrap_or(Money::ZERO) + price),
            None => self.unpriced.push(what),
        }
    }

    fn each(&mut self, case: &Case, field: PriceField, tube: Option<Tube>, count: f64) {
        if count != 0.0 {
            let price = part_price(&case.job, field, tube);
            self.add(Class::Part(field), price.map(|price| Money::from_si(price * count)));
        }
    }

    fn by_length(&mut self, case: &Case, field: PriceField, tube: Option<Tube>, length: Length) {
        self.each(case, field, tube, length.si());
    }
}

/// The price of `way`, tried for the room at `at`.
pub(super) fn of(case: &Case, at: usize, way: &Way, tried: &Tried) -> Sum {
    let mut sum = Sum::default();
    match *way {
        Way::HotterWater { .. } | Way::MoveFirst => return Sum::nothing(),
        Way::MoreFlow { circulator: Circulator::GivesIt, .. } => return Sum::nothing(),
        Way::MoreFlow { .. } => sum.each(case, PriceField::Circulator, None, 1.0),
        Way::BetterElement { element, .. } => {
            sum.by_length(case, PriceField::BetterElement, None, element);
        }
        Way::RuledOutWall { .. } | Way::NewWall { .. } => more_pieces(case, at, tried, &mut sum),
        Way::SecondCircuit { from, pipe } => {
            let is_from =
                |room: &usize| case.job.house.rooms.get(*room).is_some_and(|room| room.id == from);
            let found = case.job.zones.iter().find_map(|zone| {
                let mut rooms = zone.loops.iter();
                Some((zone.pipe, rooms.find_map(|rooms| rooms.iter().position(is_from))?))
            });
            let tube = found.map(|(tube, _)| tube);
            let split = found.and_then(|(_, place)| split(case, at, place));
            sum.each(case, PriceField::LoopValves, tube, 1.0);
            let valves = split.map_or(0, |split| split.valves);
            sum.each(case, PriceField::BalancingValve, tube, f64::from(valves));
            sum.by_length(case, PriceField::Pipe, tube, pipe);
        }
        // Nobody knows what would be bought.
        Way::LessLoss { .. } => {}
        Way::Insulate { area, .. } => {
            let price = case.job.prices.by_area(PriceField::Insulation);
            sum.add(Class::Part(PriceField::Insulation), price.map(|price| price * area));
        }
    }
    sum
}

/// What the room's pieces cost more than now, with their enclosure, joints and end caps. A piece that was
/// bought already and is not used elsewhere costs nothing.
fn more_pieces(case: &Case, at: usize, tried: &Tried, sum: &mut Sum) {
    let now = case.design.rooms.get(at).map(|room| &room.element.choice);
    let then = tried.elements.get(at).map(|element| &element.choice);
    let (Some(now), Some(then)) = (now, then) else { return };
    let alike = |a: Length, b: Length| (a - b).abs().si() < 1e-6;
    for stock in &case.job.baseboard.stock {
        let count = |choice: &Choice| choice.pieces().filter(|&p| alike(p, stock.length)).count();
        let all = case.design.rooms.iter().map(|room| count(&room.element.choice)).sum::<usize>();
        let bought = |used: usize| used.saturating_sub(stock.have as usize) as f64;
        let more = bought(all - count(now) + count(then)) - bought(all);
        if more != 0.0 {
            sum.add(Class::Piece(stock.length), stock.price.map(|price| price * more));
        }
    }
    // Without a price of its own the enclosure is in that of the pieces.
    if case.job.prices.by_length(PriceField::Enclosure).is_some() {
        sum.by_length(case, PriceField::Enclosure, None, then.nominal - now.nominal);
    }
    // A run of so many pieces has one joint more.
    let joints = |choice: &Choice| choice.pieces().count() as f64 + choice.runs.len() as f64;
    sum.each(case, PriceField::Joint, None, joints(then) - joints(now));
    sum.each(
        case,
        PriceField::EndCap,
        None,
        2.0 * (then.runs.len() as f64 - now.runs.len() as f64),
    );
}
