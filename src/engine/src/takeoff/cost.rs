//! What a design costs, as far as prices are typed.

use super::count::{Amount, Class, Item, alike};
use crate::job::{Job, PriceField};
use crate::named::Named;
use crate::quantity::{Length, LinearMoney, Money};
use serde::Serialize;

#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Cost {
    /// The sum of what has a price.
    pub known: Money,
    /// One for each class that is bought: pieces from the shortest on, then the parts in the order of
    /// their prices' list.
    pub lines: Vec<Line>,
    /// Classes that are needed and have no price.
    pub unpriced: Vec<Class>,
}

#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Line {
    pub class: Class,
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
}

/// What `items` cost at the job's prices.
///
/// Pieces that were bought already cost nothing. Without a price of its own the enclosure of the pieces
/// is in theirs, and only what runs on between rooms is to be bought.
pub fn cost(job: &Job, items: &[Item]) -> Cost {
    let mut lines = Vec::new();
    for stock in &job.baseboard.stock {
        let of_length = |class: &Class| match class {
            Class::Piece(piece) | Class::Kept(piece) => alike(*piece, stock.length),
            Class::Part(_) => false,
        };
        let needed = counted(items, &of_length).count;
        if needed == 0 {
            continue;
        }
        let have = stock.have.min(needed);
        let to_buy = f64::from(needed - have);
        let price = stock.price.map(Price::Each);
        let sum = stock.price.map(|price| price * to_buy);
        let sum = if needed == have { Some(Money::ZERO) } else { sum };
        let amount = Amount::Count(needed);
        lines.push(Line { class: Class::Piece(stock.length), amount, have, price, sum });
    }
    for &field in PriceField::ALL {
        let sums = counted(items, &|class| *class == Class::Part(field));
        if sums.count > 0 {
            let price = job.prices.each(field);
            let amount = Amount::Count(sums.count);
            let sum = price.map(|price| price * f64::from(sums.count));
            lines.push(line(field, amount, price.map(Price::Each), sum));
        }
        let price = job.prices.by_length(field);
        let length = match (field, price) {
            (PriceField::Enclosure, None) => sums.length - pieces(items),
            _ => sums.length,
        };
        // What is left of a difference is rounding.
        if length.si() > 1e-6 {
            let amount = Amount::Length(length);
            let sum = price.map(|price| price * length);
            lines.push(line(field, amount, price.map(Price::ByLength), sum));
        }
    }
    Cost {
        // From zero on: the sum of nothing is a negative zero.
        known: Money::ZERO + lines.iter().filter_map(|line| line.sum).sum::<Money>(),
        unpriced: lines.iter().filter(|line| line.sum.is_none()).map(|line| line.class).collect(),
        lines,
    }
}

fn line(field: PriceField, amount: Amount, price: Option<Price>, sum: Option<Money>) -> Line {
    Line { class: Class::Part(field), amount, have: 0, price, sum }
}

/// Amounts of one class, which is counted in one way.
struct Sums {
    count: u32,
    length: Length,
}

fn counted(items: &[Item], is_of: &dyn Fn(&Class) -> bool) -> Sums {
    let mut sums = Sums { count: 0, length: Length::ZERO };
    for item in items.iter().filter(|item| is_of(&item.class)) {
        match item.amount {
            Amount::Count(count) => sums.count = sums.count.saturating_add(count),
            Amount::Length(length) => sums.length += length,
        }
    }
    sums
}

/// Length of all pieces.
fn pieces(items: &[Item]) -> Length {
    let long = |item: &Item| match (item.class, item.amount) {
        (Class::Piece(length) | Class::Kept(length), Amount::Count(count)) => {
            Some(length * f64::from(count))
        }
        _ => None,
    };
    items.iter().filter_map(long).sum()
}
