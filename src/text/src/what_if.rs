//! Words of the changes that are weighed, and of the job before and after them.

mod table;

pub use table::{then_now, weighed_room_heads, weighed_rooms, weighed_rows};

use crate::language::{Both, either, say, sentences};
use crate::{level, room_name, value};
use finrun_engine::building::ChangeId;
use finrun_engine::job::{
    ChangeDraft, ChangeField, ChangeKind, Counted, Draft, OutsideWalls, Whose,
};
use finrun_engine::quantity::System;
use finrun_engine::season::NoSeason;
use finrun_engine::what_if::{NotWeighed, Payback, Reach, Weighed};

sentences! { WHAT_IF_WORDS;
    section_what_if: "What if", "Qué pasa si";
    what_if_note: "Say what you might change. Nothing of the job changes until you make it so: below the \
        house stands as it is and as it would be.",
        "Diga qué podría cambiar. Nada del proyecto cambia hasta que usted lo aplique: abajo está la casa como \
        es y como sería.";
    changes_title: "What might change", "Qué podría cambiar";
    add_change: "Add a change", "Agregar un cambio";
    change_counts: "Counts in the comparison", "Cuenta en la comparación";
    new_room_called: "Name of the room", "Nombre de la habitación";
    weigh_fuel: "Fuel", "Combustible";
    before_and_after: "Before and after", "Antes y después";
    house_as_it_is: "As it is", "Como está";
    house_changed: "With the changes", "Con los cambios";
    house_difference: "Difference", "Diferencia";
    of_the_house: "The house", "La casa";
    weighing: "Working out the house before and after …", "Calculando la casa antes y después …";
    make_it_so: "Make it so", "Aplicar los cambios";
    make_it_so_note: "What counts becomes part of the job and leaves this list, with its cost. Undo takes it \
        back.",
        "Lo que cuenta pasa a ser parte del proyecto y sale de esta lista, con su costo. Deshacer lo revierte.";
    made_so: "The changes are part of the job now. Undo takes them back.",
        "Los cambios ya son parte del proyecto. Deshacer los revierte.";
    payback_note: "Simple payback: your cost over the fuel saved in a typical year. Interest, changing prices, \
        upkeep, and what the heating itself then costs more or less are left out. The season is estimated with \
        a typical year; comfort is not counted in money.",
        "Recuperación simple: su costo entre el combustible ahorrado en un año típico. No cuentan intereses, \
        cambios de precio, mantenimiento ni lo que la calefacción misma cueste después de más o de menos. La \
        temporada se estima con un año típico; la comodidad no se cuenta en dinero.";
    tight_house_caution: "A tighter house needs air for people, and for boilers and fireplaces that take \
        theirs from the room: have combustion and ventilation air checked by a licensed trade, by your local \
        code, before you seal.",
        "Una casa más hermética necesita aire para las personas y para calderas y chimeneas que lo toman de la \
        habitación: antes de sellar, haga revisar el aire de combustión y de ventilación por un profesional con \
        licencia, según el código local.";
    room_gone: "That room is gone. Choose another, or undo.",
        "Esa habitación ya no existe. Elija otra, o deshaga.";
}

// Over the lists.
pub(crate) const KIND: Both = ("What changes?", "¿Qué cambia?");
pub(crate) const WHOSE: Both = ("Where?", "¿Dónde?");
pub(crate) const BUILD: Both = ("Then built like", "Construido después como");
pub(crate) const LEAKS: Both =
    ("What will you know of its leaks?", "¿Qué sabrá de sus filtraciones?");
pub(crate) const AIR_CLASS: Both =
    ("How tight will the house be?", "¿Qué tan hermética será la casa?");
pub(crate) const LEVEL: Both = ("Storey", "Piso de la casa");
pub(crate) const OUTSIDE_WALLS: Both = ("Walls to the outdoors", "Paredes al exterior");

pub(crate) fn change_label(field: ChangeField) -> Both {
    match field {
        ChangeField::Cost => ("What it costs you", "Lo que le cuesta"),
        ChangeField::U => ("U-value afterwards", "Valor U después"),
        ChangeField::R => ("R-value afterwards", "Valor R después"),
        ChangeField::AirChanges => ("Air changes afterwards", "Renovaciones de aire después"),
        ChangeField::BlowerFlow => {
            ("Blower door afterwards, flow at 50 Pa", "Prueba de puerta después, caudal a 50 Pa")
        }
        ChangeField::LeakageArea => {
            ("Leakage area at 4 Pa afterwards", "Área de fuga a 4 Pa después")
        }
        ChangeField::FloorLength => ("Floor, length", "Piso, largo"),
        ChangeField::FloorWidth => ("Floor, width", "Piso, ancho"),
        ChangeField::Height => ("Ceiling height", "Altura del techo"),
        ChangeField::Windows => {
            ("Windows of 3 by 4 ft (91 by 122 cm)", "Ventanas de 3 por 4 pies (91 por 122 cm)")
        }
        ChangeField::Whose => ("Room", "Habitación"),
    }
}

pub(crate) fn change_note(field: ChangeField) -> Both {
    match field {
        ChangeField::Cost => (
            "All of it, in your currency: material, work, what a contractor asks.",
            "Todo, en su moneda: material, trabajo, lo que pide un contratista.",
        ),
        ChangeField::U | ChangeField::R => (
            "Of the whole assembly, air films included.",
            "De todo el conjunto, con las películas de aire.",
        ),
        ChangeField::AirChanges => (
            "Follows from the choice above; type to overrule.",
            "Sigue de la elección de arriba; escriba para cambiarlo.",
        ),
        ChangeField::BlowerFlow => (
            "CFM50 that you expect, or that a tester found afterwards.",
            "El CFM50 que espera, o el que midió después un probador.",
        ),
        ChangeField::Windows => (
            "Built like the last window of the job.",
            "Construidas como la última ventana del proyecto.",
        ),
        ChangeField::LeakageArea
        | ChangeField::FloorLength
        | ChangeField::FloorWidth
        | ChangeField::Height
        | ChangeField::Whose => ("", ""),
    }
}

pub(crate) fn change_kind(kind: ChangeKind) -> &'static str {
    either(match kind {
        ChangeKind::Windows => ("Windows", "Ventanas"),
        ChangeKind::OutsideWalls => ("Outside walls", "Paredes exteriores"),
        ChangeKind::WallsToUnheated => {
            ("Walls to unheated spaces", "Paredes hacia espacios sin calefacción")
        }
        ChangeKind::Ceilings => ("Ceilings", "Techos interiores"),
        ChangeKind::Roofs => ("Roof over an attic", "Techumbre sobre un ático"),
        ChangeKind::Floors => (
            "Floors over unheated spaces or the open",
            "Pisos sobre espacios sin calefacción o al aire",
        ),
        ChangeKind::Slabs => ("Floors on the ground", "Pisos sobre el suelo"),
        ChangeKind::GroundWalls => ("Walls against the ground", "Paredes contra el suelo"),
        ChangeKind::Skylights => ("Skylights", "Tragaluces"),
        ChangeKind::Doors => ("Outside doors", "Puertas exteriores"),
        ChangeKind::Air => ("Air leaks of the house", "Filtraciones de aire de la casa"),
        ChangeKind::RoomLike => ("One more room like another", "Una habitación más, como otra"),
        ChangeKind::NewRoom => ("One more room, measured", "Una habitación más, con medidas"),
    })
}

pub(crate) fn whose(draft: &Draft, whose: Whose) -> String {
    match whose {
        Whose::House => either(("The whole house", "Toda la casa")).to_string(),
        Whose::Room(id) => room_name(draft, id),
    }
}

pub(crate) fn outside_walls(walls: OutsideWalls) -> &'static str {
    either(match walls {
        OutsideWalls::One => ("One, as long as the floor", "Una, tan larga como el piso"),
        OutsideWalls::Two => ("Two, in a corner of the house", "Dos, en una esquina de la casa"),
        OutsideWalls::Three => ("Three", "Tres"),
        OutsideWalls::Four => ("All four", "Las cuatro"),
    })
}

/// A change by its place and what it is for: "Change 1: Windows".
pub fn change_name(draft: &Draft, id: ChangeId) -> String {
    match draft.what_if.iter().enumerate().find(|(_, change)| change.id == id) {
        Some((index, change)) => {
            say!("Change {0}: {1}", "Cambio {0}: {1}"; index + 1, what(draft, change))
        }
        None => either(("A change that was removed", "Un cambio eliminado")).to_string(),
    }
}

/// The same with whether it counts.
pub fn change_title(draft: &Draft, id: ChangeId) -> String {
    let name = change_name(draft, id);
    match draft.change(id).map(|change| change.counted) {
        Some(Counted::Off) => say!("{name} (does not count)", "{name} (no cuenta)"),
        _ => name,
    }
}

fn what(draft: &Draft, change: &ChangeDraft) -> String {
    let kind = change_kind(change.kind);
    let name = change.name.trim();
    match (change.kind, change.whose) {
        (ChangeKind::NewRoom | ChangeKind::RoomLike, _) if !name.is_empty() => {
            say!("one more room, {name}", "una habitación más, {name}")
        }
        (ChangeKind::RoomLike, Whose::Room(id)) => {
            say!("one more room like {0}", "una habitación más como {0}"; room_name(draft, id))
        }
        (ChangeKind::NewRoom, _) => {
            say!("one more room, {0}", "una habitación más, {0}"; level(change.level))
        }
        (ChangeKind::Air, _) | (_, Whose::House) => kind.to_string(),
        (_, Whose::Room(id)) => say!("{kind}, {0}", "{kind}, {0}"; room_name(draft, id)),
    }
}

/// How much of the house a change of surfaces or openings is for.
pub fn reached(reach: &Reach, system: System) -> String {
    match (reach.count, reach.area) {
        (0, _) => either((
            "The house has none of these, so nothing changes.",
            "La casa no tiene nada de esto, así que nada cambia.",
        ))
        .to_string(),
        (1, Some(area)) => say!("1 of them, {0}.", "Hay 1, de {0}."; value(area, system)),
        (count, Some(area)) => {
            say!("{count} of them, {0} together.", "Hay {count}, en total {0}."; value(area, system))
        }
        (count, None) => say!("{count} of them.", "Hay {count}."),
    }
}

/// Why there is nothing to compare; empty where that is said elsewhere.
pub fn not_weighed(why: &NotWeighed) -> &'static str {
    either(match why {
        NotWeighed::NothingOn => (
            "No change counts yet. Add one, or switch one on.",
            "Todavía no cuenta ningún cambio. Agregue uno o active uno.",
        ),
        NotWeighed::NoJob => (
            "The job itself lacks something. Once it has results, they stand here beside those of the \
             changed house.",
            "Al proyecto mismo le falta algo. Cuando tenga resultados, estarán aquí junto a los de la casa \
             cambiada.",
        ),
        NotWeighed::Unread => (
            "A change lacks a number, or holds one that cannot be read. It is said at its field.",
            "A un cambio le falta un número, o tiene uno que no se puede leer. Se dice en su campo.",
        ),
        NotWeighed::Wrong(..) => (
            "With these changes the job has errors:",
            "Con estos cambios el proyecto tiene errores:",
        ),
    })
}

/// Why there is no year to count fuel and comfort in.
pub fn no_year(why: NoSeason) -> &'static str {
    either(match why {
        NoSeason::NothingHeated => (
            "There is nothing to heat, so there is no year.",
            "No hay nada que calentar, así que no hay año.",
        ),
        NoSeason::NoFlows => (
            "The flows were not found, so there is no year.",
            "No se encontraron los caudales, así que no hay año.",
        ),
        NoSeason::NotSettled => {
            ("The year could not be worked out.", "No se pudo calcular el año.")
        }
    })
}

/// Whether the changes pay, by simple division.
pub fn paid_back(weighed: &Weighed, system: System) -> String {
    let cost = value(weighed.cost, system);
    match weighed.payback {
        Payback::Years(years) if years < 0.1 => either((
            "The fuel saved pays for it within weeks.",
            "El combustible ahorrado lo paga en semanas.",
        ))
        .to_string(),
        Payback::Years(years) if years > 200.0 => say!(
            "The fuel saved does not pay {cost} back within 200 years.",
            "El combustible ahorrado no paga {cost} ni en 200 años."
        ),
        Payback::Years(years) => {
            let years = crate::language::in_units(&format!("{years:.1}"));
            say!(
                "The fuel saved pays {cost} back in {years} years: simple payback.",
                "El combustible ahorrado paga {cost} en {years} años: recuperación simple."
            )
        }
        Payback::NothingSaved => say!(
            "No fuel is saved, so fuel does not pay {cost} back.",
            "No se ahorra combustible, así que no paga {cost}."
        ),
        Payback::CostMissing if weighed.uncosted == 1 => either((
            "One change has no cost yet. Type it to see when the fuel saved pays it back.",
            "Un cambio no tiene costo aún. Escríbalo para ver cuándo lo paga el combustible ahorrado.",
        ))
        .to_string(),
        Payback::CostMissing => say!(
            "{0} changes have no cost yet. Type them to see when the fuel saved pays them back.",
            "{0} cambios no tienen costo aún. Escríbalos para ver cuándo los paga el combustible ahorrado.";
            weighed.uncosted
        ),
        Payback::PriceMissing => either((
            "Type the price of a unit of fuel to see what it costs in a year, and when it pays for the \
             changes.",
            "Escriba el precio de una unidad de combustible para ver cuánto cuesta en un año y cuándo paga los \
             cambios.",
        ))
        .to_string(),
        Payback::NoYear => either((
            "Without a year of weather there is no fuel to count. A weather station gives one: choose it \
             under Place.",
            "Sin un año de clima no hay combustible que contar. Una estación meteorológica lo da: elíjala en \
             Lugar.",
        ))
        .to_string(),
    }
}
