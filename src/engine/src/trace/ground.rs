//! Workings of what the earth takes.

use super::heat::along;
use super::{Formula, Part, Step, Steps};
use crate::building::assembly::{HeatFlow, OUTSIDE_FILM};
use crate::building::earth::{Edge, Member, Plot, plot_of};
use crate::building::ground::Ground;
use crate::building::{
    EdgeInsulation, House, PathLoss, Placement, RoomId, SlabMethod, Surface, SurfaceId,
};
use crate::job::Job;

/// The part that goes to the mean temperature of the year.
pub(super) fn steady(
    job: &Job,
    room: RoomId,
    surface: SurfaceId,
    loss: &PathLoss,
) -> Option<Vec<Step>> {
    let house = &job.house;
    let plot = plot_of(house, room)?;
    let member = member(&plot, room)?;
    let mut steps = Steps::default();
    let index = member.floors.iter().position(|floor| floor.id == surface);
    let u = match index {
        Some(_) => floor_u(&mut steps, house, &plot),
        None => wall_u(&mut steps, house, &plot, wall(member, surface)?),
    };
    let area = loss.area?.si();
    let loses = loss.conductance.si() > 0.0;
    if let Some(edge) = edge_insulation(house, member)
        && index == Some(0)
        && member.strip().next().is_some()
    {
        let floor = floor_thickness(&mut steps, house, &plot);
        let (reach, added) = insulated(&mut steps, house, edge);
        let numbers = [soil(house).conductivity_w_mk, reach, floor, added];
        let psi = steps.add(Formula::EdgePsi, &numbers, "psi");
        let length = steps.sum(&mut strip(member).into_iter(), "L");
        if loses {
            return Some(along(steps, Formula::InsulatedEdgeLoss, &[u, area, psi, length], loss));
        }
    }
    let (formula, u) = match loses {
        true => (Formula::GroundLoss, u),
        false => (Formula::NoGroundLoss, 0.0),
    };
    Some(along(steps, formula, &[u, area], loss))
}

/// What the coldest month adds.
pub(super) fn swing(
    job: &Job,
    room: RoomId,
    surface: SurfaceId,
    loss: &PathLoss,
) -> Option<Vec<Step>> {
    let house = &job.house;
    let plot = plot_of(house, room)?;
    let member = member(&plot, room)?;
    let mut steps = Steps::default();
    let Ground { conductivity_w_mk: lambda, periodic_depth_m: delta } = soil(house);
    let floor = floor_thickness(&mut steps, house, &plot);
    let (psi, length) = match wall(member, surface) {
        Some((edge, wall)) => {
            let own = wall_thickness(&mut steps, house, wall);
            let numbers = [lambda, edge.depth_m, delta, floor, own];
            (steps.add(Formula::BasementSwing, &numbers, "psi_p"), edge.length_m)
        }
        None => {
            let psi = match edge_insulation(house, member) {
                Some(edge) => {
                    let (reach, added) = insulated(&mut steps, house, edge);
                    let numbers = [lambda, reach, delta, floor, added];
                    steps.add(Formula::InsulatedEdgeSwing, &numbers, "psi_p")
                }
                None => steps.add(Formula::SlabSwing, &[lambda, delta, floor], "psi_p"),
            };
            (psi, steps.sum(&mut strip(member).into_iter(), "L"))
        }
    };
    Some(along(steps, Formula::SwingLoss, &[psi, length], loss))
}

/// A slab by its F-factor.
pub(super) fn slab_edge(job: &Job, room: RoomId, loss: &PathLoss) -> Option<Vec<Step>> {
    let SlabMethod::FFactor(factor) = job.house.ground.slab else { return None };
    let plot = plot_of(&job.house, room)?;
    let mut steps = Steps::default();
    let edge = steps.sum(&mut edges(member(&plot, room)?).into_iter(), "P");
    Some(along(steps, Formula::SlabEdgeLoss, &[factor.si(), edge], loss))
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

/// Every stretch of a room's outside wall, or all of them as typed.
fn edges(member: &Member<'_>) -> Vec<Part> {
    let typed: f64 = member.floors.iter().map(|floor| floor.along.si()).sum();
    match typed > 0.0 {
        true => vec![("L_i", typed)],
        false => member.edges.iter().map(|edge| ("L_i", edge.length_m)).collect(),
    }
}

/// The stretches that count as a slab's edge.
fn strip(member: &Member<'_>) -> Vec<Part> {
    match member.strip().count() == member.edges.len() {
        true => edges(member),
        false => member.strip().map(|edge| ("L_i", edge.length_m)).collect(),
    }
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
    let floors = || plot.members.iter().flat_map(|member| &member.floors);
    let mean = plot.floor_u.si();
    let alike = |floor: &&Surface| (floor.transmittance.si() - mean).abs() <= 1e-12 * mean;
    let u = match floors().all(alike) {
        true => mean,
        false => {
            let heat = floors().map(|f| ("G_i", (f.transmittance * f.gross_area).si()));
            let numbers = [steps.sum(&mut { heat }, "G"), area(steps, plot)];
            steps.add(Formula::MeanTransmittance, &numbers, "U")
        }
    };
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
    let floors = plot.members.iter().flat_map(|member| &member.floors);
    steps.sum(&mut floors.map(|floor| ("A_i", floor.gross_area.si())), "A_g")
}

fn floor_u(steps: &mut Steps, house: &House, plot: &Plot<'_>) -> f64 {
    if plot.footprint.perimeter_m <= 0.0 {
        // No way out but downwards.
        return 0.0;
    }
    let floor = floor_thickness(steps, house, plot);
    let members = || plot.members.iter().filter(|member| !member.floors.is_empty());
    let perimeter = steps.sum(&mut members().flat_map(edges), "P");
    let numbers = [area(steps, plot), perimeter];
    let across = steps.add(Formula::Characteristic, &numbers, "B");
    let mean = plot.footprint.depth_m;
    let edges = || members().flat_map(|member| &member.edges);
    if edges().any(|edge| (edge.depth_m - mean).abs() > 1e-9) {
        let deep = edges().filter(|edge| edge.depth_m > 0.0);
        let walls = steps.sum(&mut deep.map(|edge| ("A_i", edge.length_m * edge.depth_m)), "A_w");
        steps.add(Formula::MeanDepth, &[walls, perimeter], "z");
    }
    let formula = match floor + 0.5 * mean < across {
        true => Formula::FloorU,
        false => Formula::InsulatedFloorU,
    };
    steps.add(formula, &[soil(house).conductivity_w_mk, across, floor, mean], "U_g")
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
