//! Words of the materials list: what a line is, what is bought and what that costs. Why it is there
//! is in `reason`, how pipe is cut in `cutting`.

mod cutting;
mod reason;

pub use cutting::{cut_for, cut_length, cut_picture, cut_proof, cut_title, offcut, stick_name};
pub use reason::because;

use crate::choices::tube;
use crate::install::lower_first;
use crate::language::{either, say};
use crate::shop::price_label;
use crate::{loop_name, room_name, value, zone_name};
use finrun_engine::job::{Draft, PriceField};
use finrun_engine::pipe::{Material, Nominal, Tube};
use finrun_engine::quantity::{Length, Money, System, Value};
use finrun_engine::takeoff::cost::{Line, Price};
use finrun_engine::takeoff::item::{Amount, Class, Form, Whose};
use finrun_engine::takeoff::list::{Buy, Entry, Note, TakeOff};

/// What a line is: its name, form and size.
pub fn thing(line: &Line, system: System) -> String {
    let mut said = match line.class {
        Class::Piece(length) | Class::Kept(length) => {
            say!("Piece of {}", "Pieza de {}"; value(length, system))
        }
        Class::Part(field) => part_name(field).to_string(),
    };
    match (line.form, line.tube) {
        (Form::Only, None) => {}
        (Form::Left, _) => said += either((", left", ", izquierda")),
        (Form::Right, _) => said += either((", right", ", derecha")),
        (Form::Inside, _) => said += either((", inside corner", ", esquina interior")),
        (Form::Outside, _) => said += either((", outside corner", ", esquina exterior")),
        (Form::Only, Some(of)) => {
            said += ", ";
            said += &lower_first(tube(of));
        }
        (Form::To(small), large) => {
            let large = large.map_or("", |large| nominal(large.nominal()));
            said += &say!(", {large} to {} in", ", {large} a {} pulg"; nominal(small.nominal()));
        }
    }
    said
}

fn nominal(nominal: Nominal) -> &'static str {
    match nominal {
        Nominal::Half => "½",
        Nominal::ThreeQuarter => "¾",
        Nominal::One => "1",
        Nominal::OneAndQuarter => "1¼",
    }
}

/// Of a part by itself, without what its price has in it.
fn part_name(field: PriceField) -> &'static str {
    match field {
        PriceField::Joint => either(("Soldered joint", "Unión soldada")),
        PriceField::Enclosure => either(("Enclosure by itself", "Carcasa sola")),
        PriceField::Elbow => either(("Elbow", "Codo")),
        PriceField::Tee => either(("Tee", "Te")),
        PriceField::Circulator => either(("Circulator", "Circulador")),
        PriceField::Thermostat => either(("Thermostat", "Termostato")),
        PriceField::LoopValves => {
            either(("Valves of a loop, as a set", "Válvulas de un circuito, el juego"))
        }
        PriceField::Solder => {
            either(("Lead-free solder, spool of 8 oz", "Soldadura sin plomo, carrete de 8 oz"))
        }
        PriceField::Flux => {
            either(("Flux for it, jar of 4 oz", "Fundente para ella, frasco de 4 oz"))
        }
        PriceField::Sealant => {
            either(("Thread sealant, jar of 4 oz", "Sellador de roscas, frasco de 4 oz"))
        }
        PriceField::Gas => {
            either(("Gas for the torch, bottle of 14 oz", "Gas para el soplete, cilindro de 14 oz"))
        }
        PriceField::Glycol => {
            either(("Propylene glycol, pure, can of 1 gal", "Propilenglicol puro, lata de 1 gal"))
        }
        field => price_label(field),
    }
}

fn amount(amount: Amount, system: System) -> String {
    match amount {
        Amount::Count(count) => count.to_string(),
        Amount::Length(length) => value(length, system),
    }
}

/// What is bought of a line.
pub fn to_buy(entry: &Entry, is_coil: bool, system: System) -> String {
    match &entry.buy {
        Buy::Count(count) => count.to_string(),
        Buy::Length(length) => value(*length, system),
        Buy::Lengths(lengths) => {
            let one = |&(length, count): &(Length, u32)| {
                let of = either(match (is_coil, count) {
                    (true, 1) => ("coil", "rollo"),
                    (true, _) => ("coils", "rollos"),
                    (false, 1) => ("stick", "barra"),
                    (false, _) => ("sticks", "barras"),
                });
                say!("{count} {of} of {}", "{count} {of} de {}"; value(length, system))
            };
            lengths.iter().map(one).collect::<Vec<_>>().join(", ")
        }
    }
}

/// Of what the number to buy is made, where it is another than what is needed.
pub fn need_and_spare(entry: &Entry, system: System) -> String {
    let mut parts = Vec::new();
    let needs = amount(entry.line.amount, system);
    if entry.spare > 0.0 {
        parts.push(say!("{} to spare", "{} de reserva"; value(Value::share(entry.spare), system)));
    }
    if entry.line.have > 0 {
        parts.push(say!("{} bought already", "ya comprado: {}"; entry.line.have));
    }
    let alike = match (&entry.buy, entry.line.amount) {
        (Buy::Count(buy), Amount::Count(need)) => *buy == need,
        (Buy::Length(buy), Amount::Length(need)) => (*buy - need).abs().si() < 1e-6,
        _ => false,
    };
    match (alike, parts.is_empty()) {
        (true, true) => String::new(),
        (_, true) => say!("needed {needs}", "necesario: {needs}"),
        (_, false) => say!("needed {needs}, {}", "necesario: {needs}, {}"; parts.join(", ")),
    }
}

/// The price of a line.
pub fn line_price(line: &Line, system: System) -> String {
    match line.price {
        Some(Price::Each(price)) => value(price, system),
        Some(Price::ByLength(price)) => value(price, system),
        Some(Price::Within(bundle)) => say!("in: {}", "en: {}"; part_name(bundle).to_lowercase()),
        None => either(("no price", "sin precio")).to_string(),
    }
}

pub fn line_sum(sum: Option<Money>, system: System) -> String {
    sum.map_or_else(|| "–".to_string(), |sum| value(sum, system))
}

/// Whom something is for.
pub fn subject_of(draft: &Draft, whose: Whose) -> String {
    match whose {
        Whose::House => crate::whole_house().to_string(),
        Whose::Zone(zone) => zone_name(draft, zone),
        Whose::Loop(zone, room) => {
            let branch = draft.room(room).map_or(0, |room| room.branch);
            format!("{}, {}", zone_name(draft, zone), loop_name(branch))
        }
        Whose::Room(room) => room_name(draft, room),
    }
}

/// What the list cannot tell, in a sentence.
pub fn list_note(note: Note) -> String {
    match note {
        Note::BoilerRoom => either((
            "Boiler, burner, vent, wiring of mains, and pipe between the parts of the \
                     boiler room are not on the list: measure them on site.",
            "La caldera, el quemador, la chimenea, el cableado de la red y los tubos \
                     entre las partes del cuarto de caldera no están en la lista: mídalos en la \
                     obra.",
        ))
        .to_string(),
        Note::WireNotMeasured(count) => {
            let of = if count == 1 {
                either(("1 thermostat", "1 termostato")).to_string()
            } else {
                say!("{count} thermostats", "{count} termostatos")
            };
            say!(
                "Thermostat wire of {of} is not measured, and not on the list.",
                "El cable de {of} no está medido ni está en la lista."
            )
        }
        Note::WaysInOneLine(1) => either((
            "1 stretch is described by length only, and cut as one line: their elbows divide them \
             further. Describe a room's way step by step for each straight.",
            "1 trecho está descrito solo por su largo, y se corta como una sola línea: sus codos \
             lo dividen aún más. Describa el camino de una habitación paso por paso para tener \
             cada recta.",
        ))
        .to_string(),
        Note::WaysInOneLine(count) => say!(
            "{count} stretches are described by length only, and cut as one line: their elbows \
             divide them further. Describe a room's way step by step for each straight.",
            "{count} trechos están descritos solo por su largo, y se cortan como una sola línea: \
             sus codos los dividen aún más. Describa el camino de una habitación paso por paso \
             para tener cada recta."
        ),
        Note::HolesTaken => either((
            "Where a way is not described, it is taken to pass the floor twice.",
            "Donde un camino no está descrito, se toma que cruza el piso dos veces.",
        ))
        .to_string(),
    }
}

/// How many lines have no price.
pub fn unpriced_lines(take_off: &TakeOff) -> String {
    match take_off.unpriced {
        0 => String::new(),
        1 => either((
            "1 line has no price and is not in the sum.",
            "1 renglón no tiene precio y no está en la suma.",
        ))
        .to_string(),
        many => say!(
            "{many} lines have no price and are not in the sum.",
            "{many} renglones no tienen precio y no están en la suma."
        ),
    }
}

/// How the sum comes about, against that of the comparison.
pub fn sum_and_need(take_off: &TakeOff, system: System) -> String {
    if take_off.sum == Money::ZERO {
        return String::new();
    }
    let spare = take_off.sum - take_off.needed;
    say!(
        "{} for what is needed, as the comparison of arrangements has it, and {} for whole sticks \
         and coils and what is to spare.",
        "{} por lo que se necesita, como lo tiene la comparación de arreglos, y {} por barras y \
         rollos enteros y lo que va de reserva.";
        value(take_off.needed, system),
        value(spare, system)
    )
}

/// What all of it comes to.
pub fn list_sum(take_off: &TakeOff, system: System) -> String {
    if take_off.sum == Money::ZERO {
        return either((
            "No sum: no price is typed of what is on the list.",
            "Sin suma: nada de la lista tiene precio escrito.",
        ))
        .to_string();
    }
    say!(
        "{} to buy, as far as prices are typed.",
        "{} por comprar, con los precios que están escritos.";
        value(take_off.sum, system)
    )
}

pub fn comes_in_coils(tube: Tube) -> bool {
    tube.material() == Material::Pex
}

/// The list as a table, heads first, for a spreadsheet.
pub fn materials_table(draft: &Draft, take_off: &TakeOff, system: System) -> Vec<Vec<String>> {
    let heads = [
        ("Group", "Grupo"),
        ("What", "Qué"),
        ("To buy", "Comprar"),
        ("Needed", "Necesario"),
        ("Price", "Precio"),
        ("Sum", "Suma"),
        ("Why", "Por qué"),
    ];
    let mut rows = vec![heads.map(|head| either(head).to_string()).to_vec()];
    for entry in &take_off.lines {
        let is_coil = entry.line.tube.is_some_and(comes_in_coils);
        let why = entry.reasons.iter().map(|of| because(draft, of, system));
        rows.push(vec![
            crate::group(entry.group).to_string(),
            thing(&entry.line, system),
            to_buy(entry, is_coil, system),
            amount(entry.line.amount, system),
            line_price(&entry.line, system),
            line_sum(entry.sum, system),
            why.collect::<Vec<_>>().join(" · "),
        ]);
    }
    rows
}
