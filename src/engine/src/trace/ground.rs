//! Workings of what the earth takes.

use super::heat::ends;
use super::{Formula, Step, Steps, Term, of, term};
use crate::building::assembly::{HeatFlow, OUTSIDE_FILM};
use crate::building::earth::{Edge, Member, Plot, plot_of};
use crate::building::ground::Ground;
use crate::building::{
    EdgeInsulation, House, PathLoss, Placement, RoomId, SlabMethod, Surface, SurfaceId,
};
use crate::job::Job;
use crate::quantity::{Kind, LossCoefficient, Transmittance};

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
    let area = term("A", loss.area?);
    let [inside, mean] = [term("T_in", loss.inside), term("T_mean", loss.beyond)];
    let result = term("Q", loss.loss);
    let strip = strip(member);
    let edge = edge_insulation(house, member).filter(|_| index == Some(0) && !strip.is_empty());
    if let Some(edge) = edge {
        let floor = floor_thickness(&mut steps, house, &plot);
        let (reach, added) = insulated(&mut steps, house, edge);
        let terms = [conductivity(house), reach, floor, added];
        let psi = steps.add(Formula::EdgePsi, &terms, "psi", Kind::LinearTransmittance);
        let along = steps.sum(&strip, "L");
        if loss.conductance > LossCoefficient::ZERO {
            let terms = [u, area, psi, along, inside, mean];
            return Some(steps.end(Formula::InsulatedEdgeLoss, &terms, result));
        }
    }
    let (formula, u) = match loss.conductance > LossCoefficient::ZERO {
        true => (Formula::GroundLoss, u),
        false => (Formula::NoGroundLoss, term("U_0", Transmittance::ZERO)),
    };
    Some(steps.end(formula, &[u, area, inside, mean], result))
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
    let lambda = conductivity(house);
    let soil: Ground<f64> = house.ground.soil.ground();
    let reached = length("delta", soil.periodic_depth_m);
    let floor = floor_thickness(&mut steps, house, &plot);
    let (formula, terms, stretches) = match wall(member, surface) {
        Some((edge, wall)) => {
            let own = wall_thickness(&mut steps, house, wall);
            let terms = vec![lambda, length("z", edge.depth_m), reached, floor, own];
            (Formula::BasementSwing, terms, vec![length("L", edge.length_m)])
        }
        None => match edge_insulation(house, member) {
            Some(edge) => {
                let (reach, added) = insulated(&mut steps, house, edge);
                let terms = vec![lambda, reach, reached, floor, added];
                (Formula::InsulatedEdgeSwing, terms, strip(member))
            }
            None => (Formula::SlabSwing, vec![lambda, reached, floor], strip(member)),
        },
    };
    let psi = steps.add(formula, &terms, "psi_p", Kind::LinearTransmittance);
    let along = steps.sum(&stretches, "L");
    let terms = [psi, along, term("T_mean", loss.inside), term("T_cold", loss.beyond)];
    Some(steps.end(Formula::SwingLoss, &terms, term("Q", loss.loss)))
}

/// A slab by its F-factor.
pub(super) fn slab_edge(job: &Job, room: RoomId, loss: &PathLoss) -> Option<Vec<Step>> {
    let SlabMethod::FFactor(factor) = job.house.ground.slab else { return None };
    let plot = plot_of(&job.house, room)?;
    let mut steps = Steps::default();
    let edge = steps.sum(&edges(member(&plot, room)?), "P");
    let [inside, beyond] = ends(loss);
    let terms = [term("F_edge", factor), edge, inside, beyond];
    Some(steps.end(Formula::SlabEdgeLoss, &terms, term("Q", loss.loss)))
}

fn member<'p, 'a>(plot: &'p Plot<'a>, room: RoomId) -> Option<&'p Member<'a>> {
    plot.members.iter().find(|member| member.room == room)
}

/// A wall in the earth.
fn wall<'p, 'a>(member: &'p Member<'a>, id: SurfaceId) -> Option<(&'p Edge<'a>, &'a Surface)> {
    let mut walls = member.edges.iter().filter_map(|edge| Some((edge, edge.wall?)));
    walls.find(|(_, wall)| wall.id == id)
}

fn length(symbol: &'static str, metres: f64) -> Term {
    of(symbol, Kind::Length, metres)
}

fn conductivity(house: &House) -> Term {
    let soil: Ground<f64> = house.ground.soil.ground();
    of("lambda", Kind::Conductivity, soil.conductivity_w_mk)
}

/// Every stretch of a room's outside wall, or all of them as typed.
fn edges(member: &Member<'_>) -> Vec<Term> {
    let typed: f64 = member.floors.iter().map(|floor| floor.along.si()).sum();
    match typed > 0.0 {
        true => vec![length("L_i", typed)],
        false => member.edges.iter().map(|edge| length("L_i", edge.length_m)).collect(),
    }
}

/// The stretches that count as a slab's edge.
fn strip(member: &Member<'_>) -> Vec<Term> {
    match member.strip().count() == member.edges.len() {
        true => edges(member),
        false => member.strip().map(|edge| length("L_i", edge.length_m)).collect(),
    }
}

fn edge_insulation(house: &House, member: &Member<'_>) -> Option<EdgeInsulation> {
    match house.ground.slab {
        SlabMethod::Iso(edge) => member.edge_insulation(edge),
        SlabMethod::FFactor(_) => None,
    }
}

/// How far edge insulation reaches, and the ground that it is worth beyond its own place.
fn insulated(steps: &mut Steps, house: &House, edge: EdgeInsulation) -> (Term, Term) {
    let reach = match edge.placement {
        Placement::Horizontal => length("D", edge.depth_m),
        Placement::Vertical => {
            steps.add(Formula::Twice, &[length("D_v", edge.depth_m)], "D", Kind::Length)
        }
    };
    let resistance = of("R_n", Kind::Resistance, edge.resistance_m2k_w);
    let terms = [conductivity(house), resistance, length("d_n", edge.thickness_m)];
    (reach, steps.positive(Formula::EdgeThickness, &terms, "d_e", Kind::Length))
}

/// The resistance of what has this U and these films, film by film.
fn layers(steps: &mut Steps, u: Term, flow: HeatFlow, symbol: &'static str) -> [Term; 3] {
    let films = [term("R_si", flow.inside_film()), term("R_se", OUTSIDE_FILM)];
    let terms = [u, films[0], films[1]];
    let alone = steps.positive(Formula::LayersAlone, &terms, symbol, Kind::Resistance);
    [films[0], alone, films[1]]
}

/// The floors of a plot, as a thickness of ground.
fn floor_thickness(steps: &mut Steps, house: &House, plot: &Plot<'_>) -> Term {
    let floors = || plot.members.iter().flat_map(|member| &member.floors);
    let mean = plot.floor_u.si();
    let alike = |floor: &&Surface| (floor.transmittance.si() - mean).abs() <= 1e-12 * mean;
    let u = match floors().all(alike) {
        true => term("U", plot.floor_u),
        false => {
            let heat: Vec<Term> =
                floors().map(|f| term("G_i", f.transmittance * f.gross_area)).collect();
            let terms = [steps.sum(&heat, "G"), area(steps, plot)];
            steps.add(Formula::MeanTransmittance, &terms, "U", Kind::Transmittance)
        }
    };
    let [inside, layers, outside] = layers(steps, u, HeatFlow::Downward, "R_f");
    let wall = term("w", house.ground.wall_thickness);
    let terms = [wall, conductivity(house), inside, layers, outside];
    steps.add(Formula::FloorThickness, &terms, "d_f", Kind::Length)
}

fn wall_thickness(steps: &mut Steps, house: &House, wall: &Surface) -> Term {
    let u = term("U", wall.transmittance);
    let [inside, layers, outside] = layers(steps, u, HeatFlow::Horizontal, "R_w");
    let terms = [conductivity(house), inside, layers, outside];
    steps.add(Formula::WallThickness, &terms, "d_w", Kind::Length)
}

/// Area of all floors of a plot.
fn area(steps: &mut Steps, plot: &Plot<'_>) -> Term {
    let floors = plot.members.iter().flat_map(|member| &member.floors);
    let areas: Vec<Term> = floors.map(|floor| term("A_i", floor.gross_area)).collect();
    steps.sum(&areas, "A_g")
}

fn floor_u(steps: &mut Steps, house: &House, plot: &Plot<'_>) -> Term {
    if plot.footprint.perimeter_m <= 0.0 {
        // No way out but downwards.
        return term("U_g", Transmittance::ZERO);
    }
    let floor = floor_thickness(steps, house, plot);
    let members = || plot.members.iter().filter(|member| !member.floors.is_empty());
    let perimeter: Vec<Term> = members().flat_map(edges).collect();
    let perimeter = steps.sum(&perimeter, "P");
    let terms = [area(steps, plot), perimeter];
    let across = steps.add(Formula::Characteristic, &terms, "B", Kind::Length);
    let mean = plot.footprint.depth_m;
    let edges = || members().flat_map(|member| &member.edges);
    let depth = match edges().all(|edge| (edge.depth_m - mean).abs() < 1e-9) {
        true => length("z", mean),
        false => {
            let walls: Vec<Term> = edges()
                .filter(|edge| edge.depth_m > 0.0)
                .map(|edge| of("A_i", Kind::Area, edge.length_m * edge.depth_m))
                .collect();
            let walls = steps.sum(&walls, "A_w");
            steps.add(Formula::MeanDepth, &[walls, perimeter], "z", Kind::Length)
        }
    };
    let formula = match floor.value.si + 0.5 * mean < across.value.si {
        true => Formula::FloorU,
        false => Formula::InsulatedFloorU,
    };
    let terms = [conductivity(house), across, floor, depth];
    steps.add(formula, &terms, "U_g", Kind::Transmittance)
}

fn wall_u(
    steps: &mut Steps,
    house: &House,
    plot: &Plot<'_>,
    (edge, wall): (&Edge<'_>, &Surface),
) -> Term {
    let floor = floor_thickness(steps, house, plot);
    let own = wall_thickness(steps, house, wall);
    let lesser = match own.value.si < floor.value.si {
        true => own,
        false => floor,
    };
    let depth = length("z", edge.depth_m);
    let terms = [conductivity(house), depth, Term { symbol: "d_min", ..lesser }, own];
    let u = steps.add(Formula::WallU, &terms, "U_g", Kind::Transmittance);
    // A wall whose area was typed may have less than its length gives.
    if wall.along.si() * edge.depth_m <= wall.gross_area.si() {
        steps.add(Formula::WallArea, &[term("L", wall.along), depth], "A", Kind::Area);
    }
    u
}
