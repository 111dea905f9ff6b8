//! Words of the materials list and of the cut plan.

use crate::choices::tube;
use crate::install::lower_first;
use crate::language::{either, say};
use crate::shop::price_label;
use crate::{loop_name, place, room_name, value, zone_name};
use finrun_engine::job::{Draft, LegKind, PriceField};
use finrun_engine::pipe::{Material, Nominal, Tube};
use finrun_engine::quantity::{Length, Money, System, Value};
use finrun_engine::takeoff::cost::{Line, Price};
use finrun_engine::takeoff::cutting::{Cutting, Piece};
use finrun_engine::takeoff::item::{Amount, Class, Form, Reason, Whose};
use finrun_engine::takeoff::list::{Because, Buy, Entry, Note, TakeOff};

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

/// Why something is there, and for whom how much.
pub fn because(draft: &Draft, because: &Because, system: System) -> String {
    let mut said = reason(because.reason, system);
    if let [(Whose::House, of)] = because.parts[..] {
        // Where others have a share of the line the number tells, elsewhere it is the line's.
        if let Reason::BoilerRoom | Reason::ColdReturn | Reason::Threads = because.reason {
            said += &format!(": {}", amount(of, system));
        }
        return said;
    }
    let one = |(whose, of): &(Whose, Amount)| {
        let times = if let Amount::Count(_) = of { "× " } else { "" };
        format!("{} {times}{}", subject_of(draft, *whose), amount(*of, system))
    };
    said += ": ";
    said += &because.parts.iter().map(one).collect::<Vec<_>>().join("; ");
    said
}

fn reason(reason: Reason, system: System) -> String {
    match reason {
        Reason::Every(spacing) => say!("every {}", "cada {}"; value(spacing, system)),
        Reason::Feeds { volt_amperes } => format!("24 V, {volt_amperes:.0} VA"),
        Reason::TakesUp { volume: Some(volume) } => {
            say!(
                "takes up what the water grows; {}",
                "recibe lo que crece el agua; {}";
                value(Value::liquid(volume), system)
            )
        }
        Reason::Joints(joints) => {
            say!("for {joints} soldered joints", "para {joints} uniones soldadas")
        }
        Reason::Threaded(threads) => say!("for {threads} threads", "para {threads} roscas"),
        Reason::Freezing { glycol } => {
            say!(
                "against freezing, {}",
                "contra la congelación, {}";
                value(Value::liquid(glycol), system)
            )
        }
        plain => plain_reason(plain).to_string(),
    }
}

fn plain_reason(reason: Reason) -> &'static str {
    either(match reason {
        Reason::Heats => ("heats", "calienta"),
        Reason::OverPieces => ("over the pieces", "sobre las piezas"),
        Reason::OverPipe => ("over pipe that runs on", "sobre el tubo que sigue"),
        Reason::EnclosureEnds => ("ends of enclosures", "extremos de las carcasas"),
        Reason::EnclosureTurns => ("where the wall turns", "donde la pared dobla"),
        Reason::EnclosureRunsOn => ("where the enclosure runs on", "donde la carcasa sigue"),
        Reason::BetweenPieces => ("between two pieces", "entre dos piezas"),
        Reason::AtPieces => ("at the pieces", "en las piezas"),
        Reason::Holes => ("where pipe passes a floor", "donde el tubo cruza un piso"),
        Reason::HolesTaken => (
            "where pipe passes a floor, taken as twice",
            "donde el tubo cruza un piso, tomado como dos veces",
        ),
        Reason::Way => ("on the way", "en el camino"),
        Reason::LongStraight => {
            ("in straights longer than a stick", "en rectas más largas que una barra")
        }
        Reason::Parts => ("where the water parts and joins", "donde el agua se divide y se junta"),
        Reason::FurtherZone => ("to a further zone", "a otra zona"),
        Reason::BoilerRoom => (
            "in the boiler room, as typed or taken there",
            "en el cuarto de caldera, como se escribió o se supuso",
        ),
        Reason::SizesMeet => ("where sizes meet", "donde cambia el tamaño"),
        Reason::MaterialsMeet => ("where copper and PEX meet", "donde se unen cobre y PEX"),
        Reason::Threads => {
            ("at boiler, air eliminator and flanges", "en caldera, eliminador de aire y bridas")
        }
        Reason::Purges => {
            ("to shut, purge and drain it alone", "para cerrarlo, purgarlo y vaciarlo solo")
        }
        Reason::Balances => ("sets the flow", "fija el caudal"),
        Reason::StartsZone => ("starts the zone", "arranca la zona"),
        Reason::Switches => ("starts a circulator", "arranca un circulador"),
        Reason::MeasuredWire => ("as measured", "según medida"),
        Reason::MovesWater => ("moves the water", "mueve el agua"),
        Reason::KeepsWay => {
            ("keeps water from running backward", "evita que el agua corra al revés")
        }
        Reason::ColdReturn => (
            "warms the return, too cool for this boiler",
            "calienta el retorno, demasiado frío para esta caldera",
        ),
        Reason::Manifold => ("a room's two tubes", "los dos tubos de una habitación"),
        Reason::TakesAirOut => ("takes air out", "saca el aire"),
        Reason::HighPoint => (
            "where air gathers: the highest element",
            "donde se junta el aire: el elemento más alto",
        ),
        Reason::TakesUp { .. } => ("takes up what the water grows", "recibe lo que crece el agua"),
        Reason::Fills => (
            "fills and guards; may come with the boiler",
            "llena y protege; puede venir con la caldera",
        ),
        Reason::Every(_)
        | Reason::Feeds { .. }
        | Reason::Joints(_)
        | Reason::Threaded(_)
        | Reason::Freezing { .. } => ("", ""),
    })
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

/// What the picture of a stick in a cut plan shows.
pub fn cut_picture(tube: &str, stick: &str) -> String {
    let tube = lower_first(tube);
    say!(
        "{stick} of {tube}, to scale; the table below has the same numbers.",
        "{stick} de {tube}, a escala; la tabla de abajo tiene los mismos números."
    )
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
