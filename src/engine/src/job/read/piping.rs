//! Reading zones, routes and circulators.

use super::plant::read_fluid;
use super::{Problem, Reader};
use crate::building::ZoneId;
use crate::job::draft::{FlowBasis, PipeCover, RoomDraft};
use crate::job::field::{
    CircuitField, Field, LegField, PartField, PumpPointField, RoomField, ZoneField,
};
use crate::job::piping::{LegKind, PumpKind, ZoneDraft, Zoning};
use crate::job::resolve::{Resolved, resolve};
use crate::job::route::{end_caps, route};
use crate::job::{Approach, Circuit, Crossings, Flow, Leg, Parts, PipeLeg, Zone};
use crate::network::{CurveError, CurvePoint, Join, PumpCurve};
use crate::pipe::{Cv, Insulation};
use crate::quantity::{
    Conductivity, Length, TemperatureDifference, Transmittance, Value, VolumeFlow,
};

/// Pipe insulation of closed-cell foam, W/(m K): from memory.
const FOAM: Conductivity = Conductivity::from_si(0.04);

pub(super) fn read_circuit(reader: &mut Reader<'_>) -> Option<Circuit> {
    use CircuitField::*;
    let supply = reader.temperature(Field::Circuit(Supply));
    let boiler_limit = reader.temperature(Field::Circuit(BoilerLimit));
    // Typed, the flow need not know of a drop.
    let drop = match reader.draft.flow_basis {
        FlowBasis::Typed => {
            Some(TemperatureDifference::of(20.0, crate::quantity::Unit::FahrenheitDegree))
        }
        _ => reader.si(Field::Circuit(Drop)).map(TemperatureDifference::from_si),
    };
    let flow = match reader.draft.flow_basis {
        FlowBasis::FromDrop => drop.map(self::Flow::FromDrop),
        FlowBasis::Typed => reader
            .si(Field::Circuit(CircuitField::Flow))
            .map(|si| self::Flow::Typed(VolumeFlow::from_si(si))),
        FlowBasis::FromPump => Some(self::Flow::FromPump),
    };
    let pipe_surroundings = reader.temperature(Field::Circuit(PipeSurroundings));
    let pipe_film = reader.si(Field::Circuit(PipeFilm)).map(Transmittance::from_si);
    let return_pipe = reader.length(Field::Circuit(ReturnPipe));
    let return_elbows = reader.count(Field::Circuit(ReturnElbows));

    let boiler_elbows = reader.count(Field::Circuit(BoilerElbows));
    let boiler_tees = reader.count(Field::Circuit(BoilerTees));
    let boiler_valves = reader.count(Field::Circuit(BoilerValves));
    let equipment_head = reader.length(Field::Circuit(EquipmentHead));
    let thickness = reader.length(Field::Part(PartField::InsulationThickness));
    let parts = read_parts(reader);
    let fluid = read_fluid(reader);
    let pump = read_curve(reader, reader.draft.pump.kind);
    // The rooms take these where they need them.
    return_pipe?;
    return_elbows?;
    Some(Circuit {
        fluid: fluid?,
        tube: reader.draft.tube,
        supply: supply?,
        boiler_limit: boiler_limit?,
        flow: flow?,
        drop: drop?,
        pipe_surroundings: pipe_surroundings?,
        pipe_film: pipe_film?,
        cover: match reader.draft.pipe_cover {
            PipeCover::Bare => None,
            PipeCover::Insulated => Some(Insulation { thickness: thickness?, conductivity: FOAM }),
        },
        boiler_elbows: boiler_elbows?,
        boiler_tees: boiler_tees?,
        boiler_valves: boiler_valves?,
        equipment_head: equipment_head?,
        zoning: reader.draft.zoning,
        pump: pump?,
        pumps: reader.draft.pump.set,
        parts: parts?,
    })
}

fn read_parts(reader: &mut Reader<'_>) -> Option<Parts> {
    let mut si = |field| reader.si(Field::Part(field));
    let zone_valve = si(PartField::ZoneValveCv);
    let flow_check = si(PartField::FlowCheckCv);
    let balancing = si(PartField::BalancingCv);
    let diverter_k = si(PartField::DiverterK);
    let pump_efficiency = si(PartField::PumpEfficiency);
    Some(Parts {
        zone_valve: Cv::new(zone_valve?)?,
        flow_check: Cv::new(flow_check?)?,
        balancing: Cv::new(balancing?)?,
        diverter_k: diverter_k?,
        pump_efficiency: pump_efficiency?,
    })
}

fn read_curve(reader: &mut Reader<'_>, kind: PumpKind) -> Option<PumpCurve> {
    match kind {
        PumpKind::Typical(pump) => Some(pump.curve()),
        PumpKind::Points => read_points(reader),
    }
}

/// The curve through the typed points; rows that are blank are left out.
fn read_points(reader: &mut Reader<'_>) -> Option<PumpCurve> {
    let field = |row, field| Field::PumpPoint(row, field);
    let mut rows = Vec::new();
    let mut points = Vec::new();
    let mut whole = true;
    for row in 0..reader.draft.pump.points.len() {
        let typed = |f| reader.draft.entry(field(row, f)).is_some();
        if !typed(PumpPointField::Flow) && !typed(PumpPointField::Head) {
            continue;
        }
        let flow = reader.si(field(row, PumpPointField::Flow)).map(VolumeFlow::from_si);
        let head = reader.length(field(row, PumpPointField::Head));
        match (flow, head) {
            (Some(flow), Some(head)) => {
                rows.push(row);
                points.push(CurvePoint { flow, head });
            }
            _ => whole = false,
        }
    }
    if !whole {
        return None;
    }
    let error = match PumpCurve::through(&points, Join::Smooth) {
        Ok(curve) => return Some(curve),
        Err(error) => error,
    };
    let row = |at: usize| rows.get(at).copied().unwrap_or(0);
    let (at, problem) = match error {
        CurveError::TooFewPoints => {
            let blank = (0..reader.draft.pump.points.len()).find(|row| !rows.contains(row));
            (field(blank.unwrap_or(rows.len()), PumpPointField::Flow), Problem::TooFewPumpPoints)
        }
        CurveError::NotFinite(at) | CurveError::Negative(at) => {
            (field(row(at), PumpPointField::Flow), Problem::TooFewPumpPoints)
        }
        CurveError::Repeated(at) => {
            (field(row(at), PumpPointField::Flow), Problem::PumpFlowRepeated)
        }
        CurveError::Rising(at) => {
            let head = points[at].head;
            (
                field(row(at), PumpPointField::Head),
                Problem::PumpCurveRises { head: Value::from(head) },
            )
        }
        CurveError::NoHead => (field(row(0), PumpPointField::Head), Problem::PumpWithoutHead),
    };
    reader.fail(at, problem);
    None
}

pub(super) fn read_approach(reader: &mut Reader<'_>, draft: &RoomDraft) -> Option<Approach> {
    let field = |field| Field::Room(draft.id, field);
    let mut legs = Vec::new();
    for (row, leg) in draft.route.iter().enumerate() {
        if let Some(si) = reader.si(Field::Leg(draft.id, row, LegField::Length)) {
            legs.push(Leg { kind: leg.kind, length: Length::from_si(si) });
        }
    }
    let outside = read_leg(reader, field(RoomField::PipeTo), field(RoomField::Elbows));
    let back = read_back(reader, draft);
    let branch = read_leg(reader, field(RoomField::BranchPipe), field(RoomField::BranchElbows));
    let tee_spacing = reader.length(field(RoomField::TeeSpacing));
    let (within, without) = route(reader.draft, draft)?;
    let outside = outside?;
    Some(Approach {
        legs,
        outside: PipeLeg {
            length: outside.length + Length::from_si(without.length_m),
            elbows: outside.elbows + without.elbows,
        },
        inside: PipeLeg { length: Length::from_si(within.length_m), elbows: within.elbows },
        back: back?,
        branch: branch?,
        tee_spacing: tee_spacing?,
        end_caps: end_caps(reader.draft, draft),
        diverters: draft.diverters,
        shut_off: draft.shut_off,
        crossings: crossings(draft),
    })
}

fn crossings(draft: &RoomDraft) -> Option<Crossings> {
    let count = |kind| draft.route.iter().filter(|leg| leg.kind == kind).count() as u32;
    (!draft.route.is_empty()).then(|| Crossings {
        doorways: count(LegKind::Doorway),
        floors: count(LegKind::ThroughFloor),
        below: count(LegKind::Below),
    })
}

/// The way back; nothing while it waits for the job's own return pipe, which then has the error.
fn read_back(reader: &mut Reader<'_>, draft: &RoomDraft) -> Option<PipeLeg> {
    let mut one = |field| {
        let field = Field::Room(draft.id, field);
        match resolve(reader.draft, field) {
            Resolved::Waiting => Some(0.0),
            _ => reader.si(field),
        }
    };
    let (length, elbows) = (one(RoomField::PipeBack), one(RoomField::ElbowsBack));
    Some(PipeLeg { length: Length::from_si(length?), elbows: elbows? as u32 })
}

fn read_leg(reader: &mut Reader<'_>, length: Field, elbows: Field) -> Option<PipeLeg> {
    let (length, elbows) = (reader.length(length), reader.count(elbows));
    Some(PipeLeg { length: length?, elbows: elbows? })
}

/// All zones: those with rooms, which `rooms` lists in the order of the house with where they hang,
/// and the names of those without.
pub(super) fn read_zones(
    reader: &mut Reader<'_>,
    rooms: &[&RoomDraft],
) -> Option<(Vec<Zone>, Vec<ZoneId>)> {
    let (mut zones, mut empty) = (Vec::new(), Vec::new());
    let mut whole = true;
    for draft in &reader.draft.zones {
        match read_zone(reader, draft, rooms) {
            None => whole = false,
            Some(zone) if zone.loops.is_empty() => empty.push(zone.id),
            Some(zone) => zones.push(zone),
        }
    }
    whole.then_some((zones, empty))
}

fn read_zone(reader: &mut Reader<'_>, draft: &ZoneDraft, rooms: &[&RoomDraft]) -> Option<Zone> {
    let field = |field| Field::Zone(draft.id, field);
    let trunk = read_leg(reader, field(ZoneField::Trunk), field(ZoneField::TrunkElbows));
    let wire = reader.si(field(ZoneField::Wire)).map(Length::from_si);
    // Its own circulator counts only where it has one.
    let kind = match reader.draft.zoning {
        Zoning::Circulators if reader.draft.zones.len() > 1 => draft.pump,
        _ => PumpKind::default(),
    };
    let pump = read_curve(reader, kind);
    let mut loops: Vec<(u32, Vec<usize>)> = Vec::new();
    for (at, room) in rooms.iter().enumerate() {
        let hung = reader.draft.hung(room);
        if hung.zone != draft.id {
            continue;
        }
        match loops.iter_mut().find(|(branch, _)| *branch == hung.branch) {
            Some((_, list)) => list.push(at),
            None => {
                let before = loops.iter().position(|(branch, _)| *branch > hung.branch);
                loops.insert(before.unwrap_or(loops.len()), (hung.branch, vec![at]));
            }
        }
    }
    Some(Zone {
        id: draft.id,
        arrangement: draft.arrangement,
        balancing: draft.balancing,
        back: draft.back,
        main: draft.main,
        pipe: draft.pipe,
        trunk: trunk?,
        wire,
        pump: pump?,
        loops: loops.into_iter().map(|(_, list)| list).collect(),
    })
}
