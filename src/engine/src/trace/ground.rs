//! Workings of what the earth takes.

use super::heat::along;
use super::{Formula, Found, Steps};
use crate::building::assembly::{HeatFlow, OUTSIDE_FILM};
use crate::building::earth::{Edge, Member, Plot, plot_of};
use crate::building::ground::Ground;
use crate::building::{
    EdgeInsulation, House, PathLoss, Placement, RoomId, SlabMethod, Surface, SurfaceId,
};
use crate::job::Job;

/// The part that goes to the mean temperature of the year.
pub(super) fn steady(
    steps: &mut Steps,
    job: &Job,
    room: RoomId,
    surface: SurfaceId,
    loss: &PathLoss,
) -> Found {
    let house = &job.house;
    let plot = plot_of(house, room)?;
    let member = member(&plot, room)?;
    let index = member.floors.iter().position(|floor| floor.id == surface);
    let u = match index {
        Some(_) => floor_u(steps, house, &plot),
        None => wall_u(steps, house, &plot, wall(member, surface)?),
    };
    let area = loss.area?.si();
    let loses = loss.conductance.si() > 0.0;
    if let Some(edge) = edge_insulation(house, member)
        && index == Some(0)
        && member.strip().next().is_some()
    {
        let floor = floor_thickness(steps, house, &plot);
        let (reach, added) = insulated(steps, house, edge);
        let numbers = [soil(house).conductivity_w_mk, reach, floor, added];
        let psi = steps.add(Formula::EdgePsi, &numbers, "psi");
        let length = strip(steps, member);
        if loses {
            return along(steps, Formula::InsulatedEdgeLoss, &[u, area, psi, length], loss);
        }
    }
    let (formula, u) = match loses {
        true => (Formula::GroundLoss, u),
        false => (Formula::NoGroundLoss, 0.0),
    };
    along(steps, formula, &[u, area], loss)
}

/// What the coldest month adds.
pub(super) fn swing(
    steps: &mut Steps,
    job: &Job,
    room: RoomId,
    surface: SurfaceId,
    loss: &PathLoss,
) -> Found {
    let house = &job.house;
    let plot = plot_of(house, room)?;
    let member = member(&plot, room)?;
    let Ground { conductivity_w_mk: lambda, periodic_depth_m: delta } = soil(house);
    let floor = floor_thickness(steps, house, &plot);
    let (psi, length) = match wall(member, surface) {
        Some((edge, wall)) => {
            let own = wall_thickness(steps, house, wall);
            let numbers = [lambda, edge.depth_m, delta, floor, own];
            (steps.add(Formula::BasementSwing, &numbers, "psi_p"), edge.length_m)
        }
        None => {
            let psi = match edge_insulation(house, member) {
                Some(edge) => {
                    let (reach, added) = insulated(steps, house, edge);
                    let numbers = [lambda, reach, delta, floor, added];
                    steps.add(Formula::InsulatedEdgeSwing, &numbers, "psi_p")
                }
                None => steps.add(Formula::SlabSwing, &[lambda, delta, floor], "psi_p"),
            };
            (psi, strip(steps, member))
        }
    };
    along(steps, Formula::SwingLoss, &[psi, length], loss)
}

/// A slab by its F-factor.
pub(super) fn slab_edge(steps: &mut Steps, job: &Job, room: RoomId, loss: &PathLoss) -> Found {
    let SlabMethod::FFactor(factor) = job.house.ground.slab else { return None };
    let plot = plot_of(&job.house, room)?;
    edges(steps, member(&plot, room)?);
    let edge = steps.sum("P");
    along(steps, Formula::SlabEdgeLoss, &[factor.si(), edge], loss)
}

fn member<'p, 'a>(plot: &'p Plot<'a>, room: RoomId) -> Option<&'p Member<'a>> {
    plot.members.iter().find(|member| member.room == room)
}

/// A wall in the earth.
fn wall<'p, 'a>(member: &'p Member<'a>, id: SurfaceId) -> Option<(&'p Edge<'a>, &'a Surface)> {
    let mut walls = member.edges.iter().filter_map(|edge| Some((edge, edge.wall?)));
    walls.find(|(_, wall)| wall.id == id)
}

fn soil(house: &House) -> Ground {
    house.ground.soil.ground()
}

/// Adds every stretch of a room's outside wall, or all of them as typed, to the sum that comes next.
fn edges(steps: &mut Steps, member: &Member<'_>) {
    let typed: f64 = member.floors.iter().map(|floor| floor.along.si()).sum();
    if typed > 0.0 {
        return steps.part("L_i", typed);
    }
    for edge in &member.edges {
        steps.part("L_i", edge.length_m);
    }
}

/// The length of what counts as a slab's edge.
fn strip(steps: &mut Steps, member: &Member<'_>) -> f64 {
    if member.strip().count() == member.edges.len() {
        edges(steps, member);
    } else {
        for edge in member.strip() {
            steps.part("L_i", edge.length_m);
        }
    }
    steps.sum("L")
}

fn edge_insulation(house: &House, member: &Member<'_>) -> Option<EdgeInsulation> {
    match house.ground.slab {
        SlabMethod::Iso(edge) => member.edge_insulation(edge),
        SlabMethod::FFactor(_) => None,
    }
}

/// How far edge insulation reaches, and the ground that it is worth beyond its own place.
fn insulated(steps: &mut Steps, house: &House, edge: EdgeInsulation) -> (f64, f64) {
    let reach = match edge.placement {
        Placement::Horizontal => edge.depth_m,
        Placement::Vertical => steps.add(Formula::Twice, &[edge.depth_m], "D"),
    };
    let numbers = [soil(house).conductivity_w_mk, edge.resistance_m2k_w, edge.thickness_m];
    (reach, steps.positive(Formula::EdgeThickness, &numbers, "d_e"))
}

/// The resistance of what has this U and these films, film by film.
fn layers(steps: &mut Steps, u: f64, flow: HeatFlow, symbol: &'static str) -> [f64; 3] {
    let (inside, outside) = (flow.inside_film().si(), OUTSIDE_FILM.si());
    let alone = steps.positive(Formula::LayersAlone, &[u, inside, outside], symbol);
    [inside, alone, outside]
}

/// The floors of a plot, as a thickness of ground.
fn floor_thickness(steps: &mut Steps, house: &House, plot: &Plot<'_>) -> f64 {
    let mut u = plot.floor_u.si();
    let mut alike = true;
    for floor in plot.members.iter().flat_map(|member| &member.floors) {
        let own = floor.transmittance;
        alike &= (own.si() - u).abs() <= 1e-12 * u;
        steps.part("G_i", (own * floor.gross_area).si());
    }
    if alike {
        steps.parts.clear();
    } else {
        let heat = steps.sum("G");
        let area = area(steps, plot);
        u = steps.add(Formula::MeanTransmittance, &[heat, area], "U");
    }
    let [inside, layers, outside] = layers(steps, u, HeatFlow::Downward, "R_f");
    let wall = house.ground.wall_thickness.si();
    let numbers = [wall, soil(house).conductivity_w_mk, inside, layers, outside];
    steps.add(Formula::FloorThickness, &numbers, "d_f")
}

fn wall_thickness(steps: &mut Steps, house: &House, wall: &Surface) -> f64 {
    let u = wall.transmittance.si();
    let [inside, layers, outside] = layers(steps, u, HeatFlow::Horizontal, "R_w");
    let numbers = [soil(house).conductivity_w_mk, inside, layers, outside];
    steps.add(Formula::WallThickness, &numbers, "d_w")
}

/// Area of all floors of a plot.
fn area(steps: &mut Steps, plot: &Plot<'_>) -> f64 {
    for floor in plot.members.iter().flat_map(|member| &member.floors) {
        steps.part("A_i", floor.gross_area.si());
    }
    steps.sum("A_g")
}

fn floor_u(steps: &mut Steps, house: &House, plot: &Plot<'_>) -> f64 {
    let footprint = &plot.footprint;
    if footprint.perimeter_m <= 0.0 {
        // No way out but downwards.
        return 0.0;
    }
    let floor = floor_thickness(steps, house, plot);
    let mut even = true;
    for member in plot.members.iter().filter(|member| !member.floors.is_empty()) {
        even &= member.edges.iter().all(|e| (e.depth_m - footprint.depth_m).abs() <= 1e-9);
        edges(steps, member);
    }
    let perimeter = steps.sum("P");
    let area = area(steps, plot);
    let across = steps.add(Formula::Characteristic, &[area, perimeter], "B");
    if !even {
        for member in plot.members.iter().filter(|member| !member.floors.is_empty()) {
            for edge in member.edges.iter().filter(|edge| edge.depth_m > 0.0) {
                steps.part("A_i", edge.length_m * edge.depth_m);
            }
        }
        let walls = steps.sum("A_w");
        steps.add(Formula::MeanDepth, &[walls, perimeter], "z");
    }
    let formula = match floor + 0.5 * footprint.depth_m < across {
        true => Formula::FloorU,
        false => Formula::InsulatedFloorU,
    };
    let numbers = [soil(house).conductivity_w_mk, across, floor, footprint.depth_m];
    steps.add(formula, &numbers, "U_g")
}

fn wall_u(
    steps: &mut Steps,
    house: &House,
    plot: &Plot<'_>,
    (edge, wall): (&Edge<'_>, &Surface),
) -> f64 {
    let floor = floor_thickness(steps, house, plot);
    let own = wall_thickness(steps, house, wall);
    let numbers = [soil(house).conductivity_w_mk, edge.depth_m, own.min(floor), own];
    let u = steps.add(Formula::WallU, &numbers, "U_g");
    // A wall whose area was typed may have less than its length gives.
    let along = wall.along.si();
    if along * edge.depth_m <= wall.gross_area.si() {
        steps.add(Formula::WallArea, &[along, edge.depth_m], "A");
    }
    u
}
