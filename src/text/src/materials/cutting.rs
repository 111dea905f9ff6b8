//! Words of the cut plan.

use crate::choices::tube;
use crate::install::lower_first;
use crate::language::{either, say};
use crate::{place, value};
use finrun_engine::job::{Draft, LegKind};
use finrun_engine::pipe::Tube;
use finrun_engine::quantity::{Length, System};
use finrun_engine::takeoff::cutting::{Cutting, Piece};

/// What the picture of a stick in a cut plan shows.
pub fn cut_picture(tube: &str, stick: &str) -> String {
    let tube = lower_first(tube);
    say!(
        "{stick} of {tube}, to scale; the table below has the same numbers.",
        "{stick} de {tube}, a escala; la tabla de abajo tiene los mismos números."
    )
}

/// Of what tube a cut plan is, and whether it is the best.
pub fn cut_title(of: Tube) -> &'static str {
    tube(of)
}

pub fn cut_proof(cutting: &Cutting, system: System) -> String {
    let long = |sixteenths: u64| value(sixteenth(sixteenths as f64), system);
    match &cutting.plan {
        Err(_) => either((
            "No plan: more pieces than the search takes. Bought by the length.",
            "Sin plan: más piezas de las que admite la búsqueda. Se compra por largo.",
        ))
        .to_string(),
        Ok(plan) if cutting.is_coil() => {
            say!(
                "{} of coil: no stretch has a joint in it.",
                "{} de rollo: ningún trecho tiene una unión adentro.";
                long(plan.total_sixteenths)
            )
        }
        Ok(plan) if plan.is_proven() => {
            say!(
                "Proven: no way of cutting takes less than {}.",
                "Demostrado: ninguna forma de cortar usa menos de {}.";
                long(plan.total_sixteenths)
            )
        }
        Ok(plan) => say!(
            "The search was stopped: this takes {}, and none takes less than {}.",
            "La búsqueda se detuvo: esta usa {}, y ninguna usa menos de {}.";
            long(plan.total_sixteenths),
            long(plan.bound_sixteenths)
        ),
    }
}

/// A stick or a coil by its number, and what is left of it.
pub fn stick_name(nth: usize, sixteenths: u32, is_coil: bool, system: System) -> String {
    let kind = if is_coil { either(("Coil", "Rollo")) } else { either(("Stick", "Barra")) };
    format!("{kind} {}, {}", nth + 1, cut_length(sixteenths, system))
}

pub fn offcut(sixteenths: u32, system: System) -> String {
    say!("left {}", "resto {}"; cut_length(sixteenths, system))
}

/// A cut's length.
pub fn cut_length(sixteenths: u32, system: System) -> String {
    value(sixteenth(f64::from(sixteenths)), system)
}

fn sixteenth(count: f64) -> Length {
    Length::from_si(count * 254.0 / 160_000.0)
}

/// What a cut is for.
pub fn cut_for(draft: &Draft, piece: &Piece) -> String {
    let mut said = place(draft, piece.place);
    if let Some(leg) = piece.leg {
        said += ", ";
        said += leg_word(leg);
    }
    if piece.part.1 > 1 {
        said += &say!(", part {} of {}", ", parte {} de {}"; piece.part.0, piece.part.1);
    }
    said
}

fn leg_word(leg: LegKind) -> &'static str {
    either(match leg {
        LegKind::Along => ("along the wall", "a lo largo de la pared"),
        LegKind::InsideCorner => ("inside corner", "esquina interior"),
        LegKind::OutsideCorner => ("outside corner", "esquina exterior"),
        LegKind::Doorway => ("under a door", "bajo una puerta"),
        LegKind::ThroughFloor => ("through the floor", "a través del piso"),
        LegKind::Below => ("below the floor", "bajo el piso"),
    })
}
