//! One job in every arrangement, side by side.

mod column;

pub use column::{Column, Direction};

use crate::arrangement::lowest_supply;
use crate::design::{Design, planned};
use crate::job::{Arrangement, Balancing, Draft, Job, read};
use crate::named::Named;
use crate::pipe::Tube;
use crate::quantity::{Length, Money, Power, Temperature, Velocity, VolumeFlow};
use crate::takeoff::item::{Amount, Class, Form};
use crate::takeoff::{cost, count};
use serde::Serialize;

/// How the house is piped in a row of the comparison.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Layout {
    /// With its zones as they are.
    AsDrawn,
    /// All rooms in one zone, with the tubes and valves usual there.
    OneZone(Arrangement),
}

/// What can hold a room at its temperature by itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Control {
    /// One thermostat for all rooms.
    None,
    /// A thermostat for each zone.
    ByZone,
    /// A valve at each room.
    ByRoom,
}

/// What a job comes to in one layout.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Arranged {
    pub layout: Layout,
    /// Whether its flows were found; without them nothing that follows means anything.
    pub solved: bool,
    #[serde(rename = "flow_m3_s")]
    pub flow: VolumeFlow,
    #[serde(rename = "head_m")]
    pub head: Length,
    /// All circulators, estimated.
    #[serde(rename = "electric_w")]
    pub electric: Power,
    #[serde(rename = "back_k")]
    pub back: Temperature,
    #[serde(rename = "velocity_m_s")]
    pub velocity: Velocity,
    #[serde(rename = "element_m")]
    pub element: Length,
    /// What a room's element gives of its load: the least and the most of all rooms with a load.
    pub least: f64,
    pub most: f64,
    /// The most over the least: one where every room is served alike; none where one gets nothing.
    pub evenness: Option<f64>,
    /// At which every room still gets its load with these pieces; none where the boiler's limit does
    /// not do either.
    #[serde(rename = "lowest_supply_k")]
    pub lowest_supply: Option<Temperature>,
    /// Rooms that get too little.
    pub short: usize,
    pub valves: usize,
    /// To be soldered: at pieces, fittings and valves.
    pub joints: u32,
    pub control: Control,
    /// In the user's currency: the sum of what has a price.
    pub cost: Money,
    /// Classes of parts that are needed and have no price.
    pub unpriced: usize,
    /// How much of each of them.
    #[serde(skip)]
    pub missing: Vec<Missing>,
}

/// A thing that has no price.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Missing {
    pub class: Class,
    pub tube: Option<Tube>,
    pub form: Form,
    pub amount: Amount,
}

impl Arranged {
    /// Whether the costs of two rows may be compared: what has no price is the same in both, so that it
    /// cannot decide.
    pub fn costs_compare(&self, other: &Arranged) -> bool {
        self.missing == other.missing
    }
}

/// A comparison under way: one layout a step, so that a page stays alive between them.
#[derive(Debug, Clone)]
pub struct Comparison {
    draft: Draft,
    /// Still to come, the next one last.
    left: Vec<Layout>,
}

impl Comparison {
    /// Of the layouts that differ; nothing while the draft is no whole job.
    pub fn of(draft: &Draft) -> Comparison {
        Comparison { draft: draft.clone(), left: layouts(draft).into_iter().rev().collect() }
    }

    /// Leaves out the next `rows`.
    pub fn skip(&mut self, rows: usize) {
        self.left.truncate(self.left.len().saturating_sub(rows));
    }

    /// The next row; none once all are there, or while the draft is no whole job.
    pub fn step(&mut self) -> Option<Arranged> {
        let row = arranged(&self.draft, self.left.pop()?);
        if row.is_none() {
            self.left.clear();
        }
        row
    }
}

/// The layouts of a house: its own zones where there are several, and every arrangement of one zone. A
/// house of one zone stands among those.
pub fn layouts(draft: &Draft) -> Vec<Layout> {
    let own = (draft.zones.len() > 1).then_some(Layout::AsDrawn);
    own.into_iter().chain(Arrangement::ALL.iter().copied().map(Layout::OneZone)).collect()
}

/// All rows at once.
pub fn side_by_side(draft: &Draft) -> Vec<Arranged> {
    let mut comparison = Comparison::of(draft);
    std::iter::from_fn(|| comparison.step()).collect()
}

impl Draft {
    pub fn lay_out(&mut self, layout: Layout) {
        if let Layout::OneZone(arrangement) = layout {
            self.join_zones();
            if let Some(zone) = self.zones.first().map(|zone| zone.id) {
                self.arrange(zone, arrangement);
            }
        }
    }

    /// Whether it is piped so already.
    pub fn is_laid_out(&self, layout: Layout) -> bool {
        match (layout, self.zones.as_slice()) {
            (Layout::AsDrawn, zones) => zones.len() > 1,
            (Layout::OneZone(arrangement), [zone]) => zone.arrangement == arrangement,
            (Layout::OneZone(_), _) => false,
        }
    }
}

fn arranged(draft: &Draft, layout: Layout) -> Option<Arranged> {
    let mut changed = draft.clone();
    changed.lay_out(layout);
    let job = read(&changed).job?;
    let design = planned(&job);
    Some(row(&job, &design, layout))
}

fn row(job: &Job, design: &Design, layout: Layout) -> Arranged {
    let piping = &design.piping;
    let shares = design.rooms.iter().filter(|room| room.load.wanted() > Power::ZERO);
    let (mut least, mut most) = (f64::INFINITY, 0.0_f64);
    for share in shares.map(|room| room.element.output / room.load.wanted()) {
        least = least.min(share);
        most = most.max(share);
    }
    let solved = piping.not_solved.is_none() && least.is_finite();
    let items = count::count(job, design);
    let cost = cost::cost(job, &items);
    Arranged {
        layout,
        solved,
        flow: piping.flow,
        head: piping.head,
        electric: piping.pumps.iter().map(|pump| pump.electric).sum(),
        back: piping.back,
        velocity: piping.velocity,
        element: design.element_length(),
        least: if least.is_finite() { least } else { 0.0 },
        most,
        evenness: (solved && least > 0.0).then(|| most / least),
        lowest_supply: if solved { lowest_supply(job, design) } else { None },
        short: design.rooms.iter().filter(|room| room.short() > Power::ZERO).count(),
        valves: piping.circuits.iter().filter(|c| c.valve.fitted == Balancing::Valves).count(),
        joints: count::joints(&items),
        control: control(job),
        cost: cost.known,
        unpriced: cost.unpriced.len(),
        missing: cost.lines.iter().filter(|line| line.sum.is_none()).map(missing).collect(),
    }
}

fn missing(line: &cost::Line) -> Missing {
    let cost::Line { class, tube, form, amount, .. } = *line;
    Missing { class, tube, form, amount }
}

/// A valve or a shut-off can stand at each room that hangs between mains.
fn control(job: &Job) -> Control {
    if job.zones.iter().all(|zone| zone.arrangement.has_branches()) {
        Control::ByRoom
    } else if job.zones.len() > 1 {
        Control::ByZone
    } else {
        Control::None
    }
}
