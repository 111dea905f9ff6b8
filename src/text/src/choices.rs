//! Names of things that are chosen from a list: tubes, surfaces with what lies behind them, ratings
//! and flows. What air is worked out from is in `air`, what walls are made of in `assembly`.

mod air;
mod assembly;

pub use air::{air_class, open_flue, shelter, storeys};
pub use assembly::{assembly, framing, listed_u, material, origin, own_u, position, u_value_basis};

use crate::language::{Both, either, say};
use finrun_engine::building::{OpeningKind, Part, RoomUse, SurfaceKind};
use finrun_engine::emitter::HeatingEffect;
use finrun_engine::job::{Behind, Draft, FlowBasis, RatingBasis};
use finrun_engine::pipe::Tube;

pub fn tube(tube: Tube) -> &'static str {
    either(match tube {
        Tube::CopperLHalf => ("½ in copper, type L", "½ pulg de cobre, tipo L"),
        Tube::CopperLThreeQuarter => ("¾ in copper, type L", "¾ pulg de cobre, tipo L"),
        Tube::CopperLOne => ("1 in copper, type L", "1 pulg de cobre, tipo L"),
        Tube::CopperLOneAndQuarter => ("1¼ in copper, type L", "1¼ pulg de cobre, tipo L"),
        Tube::CopperMHalf => ("½ in copper, type M", "½ pulg de cobre, tipo M"),
        Tube::CopperMThreeQuarter => ("¾ in copper, type M", "¾ pulg de cobre, tipo M"),
        Tube::CopperMOne => ("1 in copper, type M", "1 pulg de cobre, tipo M"),
        Tube::CopperMOneAndQuarter => ("1¼ in copper, type M", "1¼ pulg de cobre, tipo M"),
        Tube::PexHalf => ("½ in PEX", "½ pulg de PEX"),
        Tube::PexThreeQuarter => ("¾ in PEX", "¾ pulg de PEX"),
        Tube::PexOne => ("1 in PEX", "1 pulg de PEX"),
    })
}

pub fn surface_kind(kind: SurfaceKind) -> &'static str {
    either(both_kinds(kind))
}

pub(crate) fn both_kinds(kind: SurfaceKind) -> Both {
    match kind {
        SurfaceKind::Wall => ("Wall", "Pared"),
        SurfaceKind::Ceiling => ("Ceiling", "Techo"),
        SurfaceKind::Floor => ("Floor", "Piso"),
    }
}

pub fn opening_kind(kind: OpeningKind) -> &'static str {
    either(match kind {
        OpeningKind::Window => ("Window", "Ventana"),
        OpeningKind::Door => ("Door", "Puerta"),
    })
}

pub fn part(part: Part) -> &'static str {
    either(match part {
        Part::Wall => ("walls", "paredes"),
        Part::Window => ("windows", "ventanas"),
        Part::Door => ("doors", "puertas"),
        Part::Ceiling => ("ceiling", "techo"),
        Part::Floor => ("floor", "piso"),
        Part::Ground => ("ground", "suelo"),
        Part::Air => ("air", "aire"),
    })
}

pub fn behind(draft: &Draft, behind: Behind) -> String {
    match behind {
        Behind::Outdoors => either(("Outdoors", "Exterior")).to_string(),
        Behind::Ground => either(("Ground", "Suelo")).to_string(),
        Behind::Unheated => either((
            "Unheated, temperature known or guessed",
            "Sin calefacción, temperatura conocida o estimada",
        ))
        .to_string(),
        Behind::SameTemperature => {
            either(("Heated, same temperature", "Con calefacción, misma temperatura")).to_string()
        }
        Behind::Room(id) => match draft.room(id) {
            Some(room) if room.used == RoomUse::Heated => {
                say!("Room: {}", "Habitación: {}"; super::room_name(draft, id))
            }
            // A space by its name, and a room that is gone.
            _ => super::room_name(draft, id),
        },
    }
}

pub fn heating_effect(effect: HeatingEffect) -> &'static str {
    either(match effect {
        HeatingEffect::AsTyped => {
            ("Measured output, nothing added", "Potencia medida, sin nada agregado")
        }
        HeatingEffect::CertifiedCredited => (
            "Certified, with 15 % heating effect: credit the room with it (usual)",
            "Certificada, con 15 % de efecto de calefacción: contarlo para la habitación (usual)",
        ),
        HeatingEffect::CertifiedStrict => (
            "Certified, with 15 % heating effect: take it off (stricter, 11 to 20 % longer)",
            "Certificada, con 15 % de efecto de calefacción: quitarlo (más estricto, de 11 a 20 % \
             más largo)",
        ),
        HeatingEffect::Unknown => {
            ("I don't know: taken as typed", "No sé: se toma como está escrita")
        }
    })
}

pub fn rating_basis(basis: RatingBasis) -> &'static str {
    either(match basis {
        RatingBasis::Single => ("One output, with an exponent", "Una potencia, con un exponente"),
        RatingBasis::Table => ("A maker's table", "Una tabla del fabricante"),
    })
}

pub fn flow_basis(basis: FlowBasis) -> &'static str {
    either(match basis {
        FlowBasis::FromDrop => {
            ("Follows from a chosen temperature drop", "Sale de una caída de temperatura elegida")
        }
        FlowBasis::FromPump => ("By the circulator's curve", "Por la curva del circulador"),
        FlowBasis::Typed => ("I know the flow", "Conozco el caudal"),
    })
}
