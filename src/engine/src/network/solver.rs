//! How the flow divides: the global gradient algorithm (Todini and Pilati 1988), Newton's method on
//! all flows and pressures at once.

use super::law::Law;
use super::matrix::Matrix;
use super::parts::{ANCHOR, Parts};
use super::topology::{Component, LinkId, Network, NodeId, Way};
use crate::quantity::{MassFlow, Pressure};
use serde::Serialize;

/// Newton's steps are few: six from a cold start is usual. More than this many means that the
/// losses are no losses.
const MOST_STEPS: u32 = 100;

/// A step of less than this share of the flow is the last one. Each step squares the error of the
/// one before, so what is left after it is far less.
const LAST_STEP: f64 = 1e-8;

/// Flow, in kg/s, that is none: steps this small end the search where nothing flows.
const NO_FLOW: f64 = 1e-12;

/// A check opens or shuts for more than this share of the greatest pressure or flow only, or
/// rounding could keep it flapping.
const HYSTERESIS: f64 = 1e-9;

/// The state in which the network rests.
#[derive(Debug, Clone, PartialEq)]
pub struct Solved {
    /// By link, from its beginning to its end.
    pub flows: Vec<MassFlow>,
    /// By node, without the weight of the water above it. A part of the network that hangs on the
    /// tank by no open link has its first node at zero.
    pub pressures: Vec<Pressure>,
    /// Newton steps taken.
    pub iterations: u32,
    /// The worst imbalance left, of pressure along a link as a share of the greatest loss, or of
    /// flow at a node as a share of the greatest flow.
    pub residual: f64,
}

/// Why there is no such state.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NotSolved {
    /// No expansion tank, or one at a node of another network.
    NoFixedNode,
    /// The link begins or ends at a node of another network, or both at one.
    BadEnds(LinkId),
    /// A number of the link is not finite, or negative, or zero where it must not be.
    BadNumber(LinkId),
    /// Closed links, or checks that shut, leave the pump or the circulation no way round.
    PumpAgainstClosed(LinkId),
    /// Numbers beyond what arithmetic holds.
    NotFinite,
    NoConvergence,
    /// The checks find no rest.
    ChecksFlap,
}

impl Solved {
    /// None for a link of another network.
    pub fn flow(&self, link: LinkId) -> MassFlow {
        self.flows.get(link.index()).copied().unwrap_or(MassFlow::ZERO)
    }

    pub fn pressure(&self, node: NodeId) -> Pressure {
        self.pressures.get(node.index()).copied().unwrap_or(Pressure::ZERO)
    }
}

/// Something in a solved network that its owner should know.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Note {
    /// Its check has shut.
    CheckShut(LinkId),
    /// Nothing passes the pump, though it runs.
    PumpStalled(LinkId),
    /// Water is pressed through the pump against its lift.
    PumpBackward(LinkId),
    /// More flows than the pump's curve tells of.
    PumpBeyondCurve(LinkId),
}

/// What is notable about a solution, in the order of the links.
pub fn notes(network: &Network, solved: &Solved) -> Vec<Note> {
    let most = solved.flows.iter().fold(0.0_f64, |most, flow| most.max(flow.si().abs()));
    let none = NO_FLOW.max(HYSTERESIS * most);
    let mut notes = Vec::new();
    for (id, joined) in network.links().zip(network.joined()) {
        let flow = solved.flow(id).si();
        let still = flow.abs() <= none;
        if let Component::Pump(pump) = &joined.component {
            if still {
                notes.push(Note::PumpStalled(id));
            } else if flow < 0.0 {
                notes.push(Note::PumpBackward(id));
            } else if !pump.on_curve(flow) {
                notes.push(Note::PumpBeyondCurve(id));
            }
        } else if still && joined.way == Way::Forward {
            notes.push(Note::CheckShut(id));
        }
    }
    notes
}

/// The flows and pressures of a network, from nothing.
pub fn solve(network: &Network) -> Result<Solved, NotSolved> {
    run(network, None)
}

/// The same from a solution of the network before it was changed a little: fewer steps, and the
/// same but for rounding.
pub fn solve_from(network: &Network, before: &Solved) -> Result<Solved, NotSolved> {
    run(network, Some(before))
}

/// A link made ready.
#[derive(Debug, Clone, Copy)]
struct Ready<'a> {
    from: usize,
    to: usize,
    law: Law<'a>,
    check: bool,
    /// Pressure decides what flows. What a circulation moves is given, and a link that is shut
    /// moves nothing.
    open: bool,
    flow: f64,
    loss: f64,
    slope: f64,
    /// Where Newton wants the flow to go.
    step: f64,
}

fn run(network: &Network, before: Option<&Solved>) -> Result<Solved, NotSolved> {
    let nodes = network.nodes();
    let (fixed, held) = network.fixed().ok_or(NotSolved::NoFixedNode)?;
    if fixed.index() >= nodes || !held.is_finite() {
        return Err(NotSolved::NoFixedNode);
    }
    let mut links = ready(network)?;
    pumps_have_a_way(nodes, &links)?;
    let mut pressures = vec![0.0; nodes];
    if let Some(before) = before.filter(|b| b.flows.len() == links.len()) {
        for (link, flow) in links.iter_mut().zip(&before.flows) {
            // A check that was shut stays so for now; it opens by itself.
            link.open &= !(link.check && *flow == MassFlow::ZERO);
            if link.open {
                link.flow = flow.si();
            }
        }
        for (pressure, old) in pressures.iter_mut().zip(&before.pressures) {
            *pressure = old.si() - held.si();
        }
    }
    let checks = links.iter().filter(|link| link.check).count();
    let mut iterations = 0;
    // Each check may have to move more than once; were all to move at each round, two could move
    // in turn for ever, so after some rounds only the first does (Murty's least-index rule).
    for round in 0..(8 + 4 * checks) {
        iterations += newton(&mut links, &mut pressures, fixed.index())?;
        if !move_checks(&mut links, &pressures, round < 4 + checks) {
            return Ok(solved(&links, &pressures, held, iterations));
        }
    }
    Err(NotSolved::ChecksFlap)
}

fn ready(network: &Network) -> Result<Vec<Ready<'_>>, NotSolved> {
    let mut links = Vec::with_capacity(network.joined().len());
    for (id, joined) in network.links().zip(network.joined()) {
        let (from, to) = (joined.from.index(), joined.to.index());
        if from == to || from.max(to) >= network.nodes() {
            return Err(NotSolved::BadEnds(id));
        }
        let law = Law::of(&joined.component).ok_or(NotSolved::BadNumber(id))?;
        let open = !matches!(law, Law::Closed | Law::Circulation(_));
        let check = open && joined.way == Way::Forward;
        let flow = if let Law::Circulation(flow) = law { flow } else { 0.0 };
        let (loss, slope, step) = (0.0, 0.0, 0.0);
        links.push(Ready { from, to, law, check, open, flow, loss, slope, step });
    }
    Ok(links)
}

/// Every pump needs a way back round it by other open links.
fn pumps_have_a_way(nodes: usize, links: &[Ready<'_>]) -> Result<(), NotSolved> {
    for (index, pump) in links.iter().enumerate() {
        if !matches!(pump.law, Law::Pump(_)) {
            continue;
        }
        let mut parts = Parts::new(nodes);
        for (other, link) in links.iter().enumerate() {
            if other != index && link.open {
                parts.join(link.from, link.to);
            }
        }
        if parts.head(pump.from) != parts.head(pump.to) {
            return Err(NotSolved::PumpAgainstClosed(LinkId(index as u32)));
        }
    }
    Ok(())
}

/// Newton's method with the checks as they stand; how many steps it took.
fn newton(links: &mut [Ready<'_>], pressures: &mut [f64], fixed: usize) -> Result<u32, NotSolved> {
    let mut parts = Parts::new(pressures.len());
    for link in links.iter().filter(|link| link.open) {
        parts.join(link.from, link.to);
    }
    for (index, link) in links.iter().enumerate() {
        if !link.open && link.flow > 0.0 && parts.head(link.from) != parts.head(link.to) {
            return Err(NotSolved::PumpAgainstClosed(LinkId(index as u32)));
        }
    }
    let (rows, count) = parts.rows(fixed);
    for (pressure, row) in pressures.iter_mut().zip(&rows) {
        if *row == ANCHOR {
            *pressure = 0.0;
        }
    }
    let pairs = links.iter().filter(|link| link.open).map(|link| (rows[link.from], rows[link.to]));
    let mut matrix = Matrix::new(count, pairs.filter(|&(a, b)| a != ANCHOR && b != ANCHOR));
    let mut right = vec![0.0; count];
    // What flows into each row's node, whatever the pressures.
    let mut given = vec![0.0; count];
    for link in links.iter().filter(|link| !link.open) {
        if rows[link.from] != ANCHOR {
            given[rows[link.from]] -= link.flow;
        }
        if rows[link.to] != ANCHOR {
            given[rows[link.to]] += link.flow;
        }
    }
    for link in links.iter_mut().filter(|link| link.open) {
        (link.loss, link.slope) = link.law.loss(link.flow);
        if link.flow == 0.0 {
            // At rest a slope tells little about what is to come.
            link.slope = link.law.usual_slope();
        }
    }
    for step in 1..=MOST_STEPS {
        right.copy_from_slice(&given);
        direction(links, pressures, &rows, &mut matrix, &mut right);
        let (moved, whole) =
            links.iter().filter(|link| link.open).fold((0.0, 0.0), |(moved, whole), link| {
                (moved + link.step.abs(), whole + (link.flow + link.step).abs())
            });
        if !f64::is_finite(moved + whole) {
            return Err(NotSolved::NotFinite);
        }
        let small = moved <= LAST_STEP * whole + NO_FLOW;
        // The first step makes the flows balance at the nodes, which only a whole step does.
        advance(links, step == 1 || small);
        if small {
            return Ok(step);
        }
    }
    Err(NotSolved::NoConvergence)
}

/// Solves the linear equations of one step: what each flow should change by, and the pressures.
/// `right` holds the flows given.
fn direction(
    links: &mut [Ready<'_>],
    pressures: &mut [f64],
    rows: &[usize],
    matrix: &mut Matrix,
    right: &mut [f64],
) {
    /// A pump's curve may be level; its slope, in Pa s/kg, then counts as this.
    const LEAST_SLOPE: f64 = 1e-3;
    matrix.clear();
    for link in links.iter_mut().filter(|link| link.open) {
        link.slope = link.slope.max(LEAST_SLOPE);
        let (from, to) = (rows[link.from], rows[link.to]);
        let conductance = 1.0 / link.slope;
        // Kept until the pressures are known.
        link.step = pressures[link.from] - pressures[link.to] - link.loss;
        let flow = link.flow + conductance * link.step;
        if from != ANCHOR {
            matrix.add(from, from, conductance);
            right[from] -= flow;
        }
        if to != ANCHOR {
            matrix.add(to, to, conductance);
            right[to] += flow;
        }
        if from != ANCHOR && to != ANCHOR {
            matrix.add(from, to, -conductance);
        }
    }
    matrix.solve(right);
    for (pressure, &row) in pressures.iter_mut().zip(rows) {
        if row != ANCHOR {
            *pressure += right[row];
        }
    }
    // From the changes, not the new pressures: their rounding, over the slope of a short link, would
    // upset the balance of the flows.
    let change = |node: usize| if rows[node] == ANCHOR { 0.0 } else { right[rows[node]] };
    for link in links.iter_mut().filter(|link| link.open) {
        link.step = (link.step + change(link.from) - change(link.to)) / link.slope;
    }
}

/// Takes the step, or as much of it as is good.
///
/// The losses never fall, so what they sum up to along the flow (the integral of loss by flow, over
/// all links) is a convex function of the flows, and the solution its one lowest point. A step is
/// good where that function does not yet rise by half of what it fell at first.
fn advance(links: &mut [Ready<'_>], whole: bool) {
    let fall: f64 = links.iter().filter(|l| l.open).map(|link| link.loss * link.step).sum();
    let (mut done, mut target) = (0.0, 1.0);
    // Twenty tries would come down to a millionth of the step.
    for _ in 0..20 {
        let mut rise = 0.0;
        for link in links.iter_mut().filter(|link| link.open) {
            link.flow += (target - done) * link.step;
            (link.loss, link.slope) = link.law.loss(link.flow);
            rise += link.loss * link.step;
        }
        if whole || fall >= 0.0 || rise <= -0.5 * fall {
            return;
        }
        done = target;
        target *= (fall / (fall - rise)).clamp(0.1, 0.5);
    }
}

/// Shuts the checks that let water back and opens those that hold water up; whether any moved.
fn move_checks(links: &mut [Ready<'_>], pressures: &[f64], all: bool) -> bool {
    let (most, steepest) = links.iter().fold((0.0_f64, 0.0_f64), |(flow, loss), link| {
        (flow.max(link.flow.abs()), loss.max(link.loss.abs()))
    });
    let mut moved = false;
    for link in links.iter_mut().filter(|link| link.check) {
        let excess = pressures[link.from] - pressures[link.to] - link.law.loss(0.0).0;
        let wrong = if link.open {
            link.flow < -HYSTERESIS * most - NO_FLOW
        } else {
            excess > HYSTERESIS * steepest
        };
        if wrong {
            link.open = !link.open;
            (link.flow, link.loss) = (0.0, 0.0);
            moved = true;
            if !all {
                break;
            }
        }
    }
    moved
}

fn solved(links: &[Ready<'_>], pressures: &[f64], held: Pressure, iterations: u32) -> Solved {
    let mut balance = vec![0.0; pressures.len()];
    let (mut flow, mut loss, mut uneven) = (NO_FLOW, 1e-6_f64, 0.0_f64);
    for link in links {
        balance[link.from] -= link.flow;
        balance[link.to] += link.flow;
        flow = flow.max(link.flow.abs());
        loss = loss.max(link.loss.abs());
        if link.open {
            uneven = uneven.max((pressures[link.from] - pressures[link.to] - link.loss).abs());
        }
    }
    let unbalanced = balance.iter().fold(0.0_f64, |most, b| most.max(b.abs()));
    Solved {
        flows: links.iter().map(|link| MassFlow::from_si(link.flow)).collect(),
        pressures: pressures.iter().map(|p| Pressure::from_si(p + held.si())).collect(),
        iterations,
        residual: (uneven / loss).max(unbalanced / flow),
    }
}
