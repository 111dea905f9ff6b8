//! What the earth takes from a house: slabs, basement floors and walls, room by room.
//!
//! ISO 13370 sees one footprint under the whole house. Rooms of one storey share it: the floor by
//! area, the edge, the walls and the winter's part by their own stretch of outside wall. The ground
//! under an unheated space is a footprint of its own.

mod plot;

pub(crate) use plot::{Edge, Member, Plot, plot_of};

use super::certainty::Subject;
use super::conductor::{Beyond, Conductor, Near, Sensitivity, built, buried_area};
use super::ground::{
    EdgeInsulation, Floor, Ground, edge_psi_w_mk, floor_u_w_m2k, periodic_basement_w_mk,
    periodic_slab_w_mk, wall_u_w_m2k,
};
use super::{House, Part, Path, SlabMethod, Surface};
use crate::numeric::dual::{Dual, Scalar};
use crate::quantity::{
    Area, LinearTransmittance, LossCoefficient, Power, Resistance, Transmittance,
};
use plot::{floor_films, plots, wall_films};
use serde::Serialize;

/// What slabs on the ground take from the heated rooms on the design day, by either way.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct SlabCompared {
    /// As it stands in the loads.
    #[serde(rename = "used_w")]
    pub used: Power,
    #[serde(rename = "other_w")]
    pub other: Power,
}

/// Both ways for the slabs on the ground; `None` in a house without any.
pub fn slab_compared(house: &House) -> Option<SlabCompared> {
    let sum = |slab| {
        let mut sum = None;
        for plot in plots(house).iter().filter(|plot| plot.footprint.depth_m == 0.0) {
            for member in &plot.members {
                let Some(room) = house.rooms.get(member.node) else { continue };
                plot.slab(member, house, slab, &mut |conductor| {
                    let loss = match (conductor.near, conductor.beyond) {
                        (Near::At(near), Beyond::At(far)) => conductor.conductance * (near - far),
                        (_, Beyond::At(far)) => conductor.conductance * (room.temperature - far),
                        _ => conductor.conductance * (room.temperature - house.site.outdoors),
                    };
                    sum = Some(sum.unwrap_or(Power::ZERO) + loss);
                });
            }
        }
        sum
    };
    Some(SlabCompared { used: sum(house.ground.slab)?, other: sum(house.ground.other)? })
}

/// The conductors to the ground, each with the node it belongs to.
pub(super) fn earth(house: &House) -> Vec<(usize, Conductor)> {
    let mut out = Vec::new();
    for plot in plots(house) {
        for member in &plot.members {
            plot.slab(member, house, house.ground.slab, &mut |c| out.push((member.node, c)));
            plot.walls(member, house, &mut |c| out.push((member.node, c)));
        }
    }
    out
}

/// A slab by its F-factor.
fn slab_edge(floor: &Surface, member: &Member<'_>, factor: LinearTransmittance) -> Conductor {
    let size = Subject::Size(member.room);
    Conductor {
        path: Path::SlabEdge(floor.id),
        part: Part::Ground,
        area: None,
        transmittance: None,
        conductance: LossCoefficient::from_si(factor.si() * member.length_m()),
        near: Near::Node,
        beyond: Beyond::Outdoors,
        sensitivities: [Some((Subject::Soil, 1.0)), Some((size, 1.0)), None, None],
    }
}

/// The resistance of the layers alone, from a U that has its films in it.
fn layers_m2k_w<S: Scalar>(u: S, films: Resistance) -> S {
    let layers = S::from(1.0) / u - films.si();
    if layers.value() > 0.0 { layers } else { S::from(0.0) }
}

/// What a conductance to the ground depends on.
#[derive(Clone, Copy)]
struct Inputs<S> {
    floor_u: S,
    wall_u: S,
    conductivity_w_mk: S,
}

/// A conductance with its relative slopes: by the floor's U, the wall's U, the soil.
struct Sloped {
    value: f64,
    by_floor: f64,
    by_wall: f64,
    by_soil: f64,
}

/// Evaluates `f` once for the value and once for each slope.
fn sloped(inputs: Inputs<f64>, f: &dyn Fn(Inputs<Dual>) -> Dual) -> Sloped {
    let plain = Inputs {
        floor_u: Dual::from(inputs.floor_u),
        wall_u: Dual::from(inputs.wall_u),
        conductivity_w_mk: Dual::from(inputs.conductivity_w_mk),
    };
    let value = f(plain).value;
    // d ln G / d ln x.
    let relative = |x: f64, slope: f64| if value == 0.0 { 0.0 } else { slope * x / value };
    let by = |inputs: Inputs<Dual>| f(inputs).slope;
    Sloped {
        value,
        by_floor: relative(
            inputs.floor_u,
            by(Inputs { floor_u: Dual::variable(inputs.floor_u), ..plain }),
        ),
        by_wall: relative(
            inputs.wall_u,
            by(Inputs { wall_u: Dual::variable(inputs.wall_u), ..plain }),
        ),
        by_soil: relative(
            inputs.conductivity_w_mk,
            by(Inputs { conductivity_w_mk: Dual::variable(inputs.conductivity_w_mk), ..plain }),
        ),
    }
}

impl Plot<'_> {
    /// What a member's floors lose to the ground.
    fn slab(
        &self,
        member: &Member<'_>,
        house: &House,
        slab: SlabMethod,
        push: &mut dyn FnMut(Conductor),
    ) {
        match slab {
            SlabMethod::FFactor(factor) if self.footprint.depth_m == 0.0 => {
                if let Some(floor) = member.floors.first() {
                    push(slab_edge(floor, member, factor));
                }
            }
            SlabMethod::FFactor(_) => self.floors(member, house, None, push),
            SlabMethod::Iso(edge) => self.floors(member, house, edge, push),
        }
    }

    fn inputs(&self, house: &House, wall_u: f64) -> Inputs<f64> {
        let soil: Ground<f64> = house.ground.soil.ground();
        Inputs { floor_u: self.floor_u.si(), wall_u, conductivity_w_mk: soil.conductivity_w_mk }
    }

    fn floor(&self, house: &House, inputs: Inputs<Dual>) -> Floor<Dual> {
        let soil: Ground<Dual> = house.ground.soil.ground();
        Floor {
            ground: Ground { conductivity_w_mk: inputs.conductivity_w_mk, ..soil },
            footprint: self.footprint,
            resistance_m2k_w: layers_m2k_w(inputs.floor_u, floor_films()),
        }
    }

    fn floors(
        &self,
        member: &Member<'_>,
        house: &House,
        edge: Option<EdgeInsulation>,
        push: &mut dyn FnMut(Conductor),
    ) {
        let edge = member.edge_insulation(edge).map(|e| EdgeInsulation {
            placement: e.placement,
            depth_m: e.depth_m,
            thickness_m: e.thickness_m,
            resistance_m2k_w: Dual::from(e.resistance_m2k_w),
        });
        let inputs = self.inputs(house, 1.0);
        let strip_m: f64 = member.strip().map(|edge| edge.length_m).sum();
        for (index, surface) in member.floors.iter().enumerate() {
            let area = surface.gross_area;
            let strip_m = if index == 0 { strip_m } else { 0.0 };
            let by_floor = |g: &Sloped| [Some((self.floor_subject, g.by_floor)), None];
            let g = sloped(inputs, &|i| {
                let floor = self.floor(house, i);
                let whole = floor_u_w_m2k(&floor, None) * area.si();
                let Some(edge) = &edge else { return whole };
                let saved = whole + edge_psi_w_mk(&floor, edge) * strip_m;
                // A small room's share of the strip may outgrow its share of the floor, but no
                // floor gains heat.
                if saved.value > 0.0 { saved } else { Dual::from(0.0) }
            });
            let of = by_floor(&g);
            push(conductor(Path::Ground(surface.id), Some(area), g, of, member, house));
            if strip_m > 0.0 {
                let g = sloped(inputs, &|i| {
                    periodic_slab_w_mk(&self.floor(house, i), edge.as_ref()) * strip_m
                });
                let of = by_floor(&g);
                push(conductor(Path::GroundSwing(surface.id), None, g, of, member, house));
            }
        }
    }

    fn walls(&self, member: &Member<'_>, house: &House, push: &mut dyn FnMut(Conductor)) {
        for (edge, wall) in member.edges.iter().filter_map(|e| Some((e, e.wall?))) {
            if edge.depth_m == 0.0 {
                continue;
            }
            let area = buried_area(wall);
            let wall_subject = built(wall.built, wall.transmittance);
            let both = |g: &Sloped| {
                [Some((self.floor_subject, g.by_floor)), Some((wall_subject, g.by_wall))]
            };
            let inputs = self.inputs(house, wall.transmittance.si());
            let resistance = |i: Inputs<Dual>| layers_m2k_w(i.wall_u, wall_films());
            let g = sloped(inputs, &|i| {
                wall_u_w_m2k(&self.floor(house, i), edge.depth_m, resistance(i)) * area.si()
            });
            let of = both(&g);
            push(conductor(Path::Ground(wall.id), Some(area), g, of, member, house));
            let g = sloped(inputs, &|i| {
                periodic_basement_w_mk(&self.floor(house, i), edge.depth_m, resistance(i))
                    * edge.length_m
            });
            let of = both(&g);
            push(conductor(Path::GroundSwing(wall.id), None, g, of, member, house));
        }
    }
}

/// A conductor to the mean of the year; without an area, what the coldest month adds to that.
fn conductor(
    path: Path,
    area: Option<Area>,
    g: Sloped,
    of: [Option<Sensitivity>; 2],
    member: &Member<'_>,
    house: &House,
) -> Conductor {
    let site = &house.site;
    let (near, beyond) = match area {
        Some(_) => (Near::Node, site.mean),
        None => (Near::At(site.mean), site.coldest_month),
    };
    let [floor, wall] = of;
    Conductor {
        path,
        part: Part::Ground,
        area,
        transmittance: area.map(|area| Transmittance::from_si(g.value / area.si())),
        conductance: LossCoefficient::from_si(g.value),
        near,
        beyond: Beyond::At(beyond),
        sensitivities: [
            floor,
            wall,
            Some((Subject::Soil, g.by_soil)),
            Some((Subject::Size(member.room), 1.0)),
        ],
    }
}
