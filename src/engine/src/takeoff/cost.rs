//! What things cost, as far as prices are typed: the one costing, of what a comparison weighs and of what
//! is bought.

use super::item::{Amount, Class, Form, Item, Reason, alike};
use crate::job::{Job, PriceField, SizedField};
use crate::named::Named;
use crate::order;
use crate::pipe::Tube;
use crate::quantity::{LinearMoney, Money};
use serde::Serialize;

#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Cost {
    /// The sum of what has a price.
    pub known: Money,
    /// One for each thing of one size that is bought: pieces from the shortest on, then the parts in the
    /// order of their prices' list.
    pub lines: Vec<Line>,
    /// Classes that are needed and have no price, or not in every size.
    pub unpriced: Vec<Class>,
}

#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Line {
    pub class: Class,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tube: Option<Tube>,
    pub form: Form,
    /// All that is needed; of the enclosure, what is to be bought.
    pub amount: Amount,
    /// Of these, bought already.
    pub have: u32,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub price: Option<Price>,
    /// None without a price, unless all are bought already.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sum: Option<Money>,
}

#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Price {
    Each(Money),
    #[serde(rename = "for_a_metre")]
    ByLength(LinearMoney),
    /// In the price of this.
    Within(PriceField),
}

impl Price {
    pub fn of(self, amount: Amount) -> Money {
        match (self, amount) {
            (Price::Each(price), amount) => price * amount.number(),
            (Price::ByLength(price), Amount::Length(length)) => price * length,
            (Price::ByLength(_) | Price::Within(_), _) => Money::ZERO,
        }
    }
}

/// What `items` cost at the job's prices, without anything to spare and with pipe by its length: what two
/// designs are compared by. What is bought of the same items is in `list`.
///
/// Pieces that were bought already cost nothing.
pub fn cost(job: &Job, items: &[Item]) -> Cost {
    let lines = lines(job, items);
    let mut unpriced = Vec::new();
    for line in lines.iter().filter(|line| line.sum.is_none()) {
        if !unpriced.contains(&line.class) {
            unpriced.push(line.class);
        }
    }
    // From zero on: the sum of nothing is a negative zero.
    let known = Money::ZERO + lines.iter().filter_map(|line| line.sum).sum::<Money>();
    Cost { known, lines, unpriced }
}

fn lines(job: &Job, items: &[Item]) -> Vec<Line> {
    let mut lines: Vec<Line> = Vec::new();
    for item in items.iter().filter(|item| is_bought(job, item)) {
        match lines.iter_mut().find(|line| line.holds(job, item)) {
            Some(line) => line.amount = line.amount.and(item.amount),
            None => {
                let Item { class, tube, form, amount, .. } = *item;
                let class = whole(job, class);
                let price = price(job, item);
                lines.push(Line { class, tube, form, amount, have: 0, price, sum: None });
            }
        }
    }
    for line in &mut lines {
        line.have = have(job, line);
        line.sum = line.cost(line.to_buy(line.amount));
    }
    order::sort_by_key(&mut lines, |line| (rank(line.class), line.tube, line.form));
    lines
}

impl Line {
    /// Whether an item is one of its things, at its price.
    pub(super) fn holds(&self, job: &Job, item: &Item) -> bool {
        let own = match (self.class, whole(job, item.class)) {
            (Class::Piece(a), Class::Piece(b)) => alike(a, b),
            (a, b) => a == b,
        };
        own && self.tube == item.tube && self.form == item.form && self.price == price(job, item)
    }

    /// Of an amount, what was not bought already.
    pub(super) fn to_buy(self, amount: Amount) -> Amount {
        match amount {
            Amount::Count(count) => Amount::Count(count.saturating_sub(self.have)),
            length => length,
        }
    }

    /// None without a price, unless nothing is to be bought.
    pub(super) fn cost(&self, to_buy: Amount) -> Option<Money> {
        match self.price {
            Some(price) => Some(price.of(to_buy)),
            None => (to_buy == Amount::Count(0)).then_some(Money::ZERO),
        }
    }
}

/// A kept piece is bought like any other.
fn whole(job: &Job, class: Class) -> Class {
    match class {
        Class::Piece(length) | Class::Kept(length) => {
            let stock = job.baseboard.stock.iter().find(|stock| alike(stock.length, length));
            Class::Piece(stock.map_or(length, |stock| stock.length))
        }
        part => part,
    }
}

/// Bought already; of a length that is needed, no more than that.
fn have(job: &Job, line: &Line) -> u32 {
    let Class::Piece(length) = line.class else { return 0 };
    let stock = job.baseboard.stock.iter().find(|stock| alike(stock.length, length));
    stock.map_or(0, |stock| stock.have).min(line.amount.number() as u32)
}

/// Pieces from the shortest on, in sixteenths of an inch; then parts.
fn rank(class: Class) -> (u32, u32) {
    match class {
        Class::Piece(length) | Class::Kept(length) => (0, crate::sizing::sixteenths(length)),
        Class::Part(field) => (1, field as u32),
    }
}

/// Without a price of its own the enclosure of the pieces is in theirs, and only what runs on between
/// rooms is to be bought. What is but a name for several things, a joint or a loop's valves, is bought
/// where it has a price.
pub(super) fn is_bought(job: &Job, item: &Item) -> bool {
    match item.class {
        Class::Part(PriceField::Enclosure) if item.reason == Reason::OverPieces => {
            job.prices.by_length(PriceField::Enclosure).is_some()
        }
        Class::Part(field @ (PriceField::Joint | PriceField::LoopValves)) => {
            job.prices.each(field).is_some()
        }
        _ => true,
    }
}

fn price(job: &Job, item: &Item) -> Option<Price> {
    let field = match item.class {
        Class::Piece(length) | Class::Kept(length) => {
            let stock = job.baseboard.stock.iter().find(|stock| alike(stock.length, length));
            return stock.and_then(|stock| stock.price).map(Price::Each);
        }
        Class::Part(field) => field,
    };
    if let Some(si) = part_price(job, field, item.tube) {
        return Some(match field.is_by_length() {
            true => Price::ByLength(LinearMoney::from_si(si)),
            false => Price::Each(Money::from_si(si)),
        });
    }
    let bundle = field.bundle().filter(|_| is_bundled(item))?;
    job.prices.each(bundle).map(|_| Price::Within(bundle))
}

/// A loop's valves are priced together; those of the boiler room are not among them.
fn is_bundled(item: &Item) -> bool {
    item.reason != Reason::BoilerRoom
}

/// Of a part, for this size of tube or else for any, in the currency or for a metre.
pub(crate) fn part_price(job: &Job, field: PriceField, tube: Option<Tube>) -> Option<f64> {
    let sized = SizedField::ALL.iter().find(|sized| sized.for_any_size() == field);
    match (tube, sized) {
        (Some(tube), Some(&sized)) => job.prices.sized(tube, sized),
        _ if field.is_by_length() => job.prices.by_length(field).map(LinearMoney::si),
        _ => job.prices.each(field).map(Money::si),
    }
}
