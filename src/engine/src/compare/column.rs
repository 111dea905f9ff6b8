//! What the rows of a comparison are compared by.

use super::{Arranged, Control};
use crate::named::names;
use crate::order;
use crate::quantity::{Kind, Value};
use std::cmp::Ordering;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Column {
    Cost,
    Element,
    Joints,
    Electric,
    LowestSupply,
    Evenness,
    Control,
    Short,
    Head,
    Flow,
    Back,
    Fastest,
    Valves,
    Least,
    Most,
}

names!(Column {
    Cost = "cost",
    Element = "element",
    Joints = "joints",
    Electric = "electric",
    LowestSupply = "lowest-supply",
    Evenness = "evenness",
    Control = "control",
    Short = "short",
    Head = "head",
    Flow = "flow",
    Back = "back",
    Fastest = "fastest",
    Valves = "valves",
    Least = "least",
    Most = "most",
});

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Direction {
    Rising,
    Falling,
}

impl Column {
    /// What stands in a row; none where there is nothing, or no flows were found.
    pub fn value(self, row: &Arranged) -> Option<Value> {
        let value = match self {
            Column::Cost => row.cost.into(),
            Column::Element => row.element.into(),
            Column::Joints => Value::count(row.joints as usize),
            Column::Electric => row.electric.into(),
            Column::LowestSupply => row.lowest_supply?.into(),
            Column::Evenness => Value::number(row.evenness?),
            Column::Control => Value::count(match row.control {
                Control::None => 0,
                Control::ByZone => 1,
                Control::ByRoom => 2,
            }),
            Column::Short => Value::count(row.short),
            Column::Head => Value::new(Kind::Head, row.head.si()),
            Column::Flow => row.flow.into(),
            Column::Back => row.back.into(),
            Column::Fastest => row.velocity.into(),
            Column::Valves => Value::count(row.valves),
            Column::Least => Value::share(row.least),
            Column::Most => Value::share(row.most),
        };
        row.solved.then_some(value)
    }

    /// Where the better value stands when the rows are ordered by it; none where neither is better.
    pub const fn better(self) -> Option<Direction> {
        match self {
            Column::Cost
            | Column::Element
            | Column::Joints
            | Column::Electric
            | Column::LowestSupply
            | Column::Evenness
            | Column::Short
            | Column::Head => Some(Direction::Rising),
            Column::Control => Some(Direction::Falling),
            Column::Flow
            | Column::Back
            | Column::Fastest
            | Column::Valves
            | Column::Least
            | Column::Most => None,
        }
    }

    /// The best of several values that differ; of costs none while a price is missing that may decide.
    pub fn best(self, rows: &[Arranged]) -> Option<Value> {
        let better = self.better()?;
        let solved = || rows.iter().filter(|row| row.solved);
        let one = solved().next()?;
        if self == Column::Cost && !solved().all(|row| row.costs_compare(one)) {
            return None;
        }
        let values = || rows.iter().filter_map(|row| self.value(row));
        let first = values().next()?;
        let best = values().fold(first, |best, value| match better {
            Direction::Rising if value.si < best.si => value,
            Direction::Falling if value.si > best.si => value,
            _ => best,
        });
        // Alike to a millionth is as good as equal.
        let near = |value: Value| (value.si - best.si).abs() <= 1e-6 * best.si.abs();
        values().any(|value| !near(value)).then_some(best)
    }

    /// Places of the rows in the order of this column, those without a value last.
    pub fn order(self, rows: &[Arranged], direction: Direction) -> Vec<usize> {
        let value =
            |at: &usize| rows.get(*at).and_then(|row| self.value(row)).map(|value| value.si);
        let mut places: Vec<usize> = (0..rows.len()).collect();
        order::sort_by(&mut places, |a, b| match (value(a), value(b), direction) {
            (Some(a), Some(b), Direction::Rising) => a.total_cmp(&b),
            (Some(a), Some(b), Direction::Falling) => b.total_cmp(&a),
            (Some(_), None, _) => Ordering::Less,
            (None, Some(_), _) => Ordering::Greater,
            (None, None, _) => Ordering::Equal,
        });
        places
    }

    /// How much more a row has than another; none where either has nothing, or the difference says
    /// nothing: of a control, and of costs while a price is missing that may decide.
    pub fn more(self, row: &Arranged, than: &Arranged) -> Option<Value> {
        let (a, b) = (self.value(row)?, self.value(than)?);
        let kind = match a.kind {
            Kind::Temperature => Kind::TemperatureDifference,
            kind => kind,
        };
        let says = match self {
            Column::Control => false,
            Column::Cost => row.costs_compare(than),
            _ => true,
        };
        says.then(|| Value::new(kind, a.si - b.si))
    }
}
