//! Words of the materials list and of the cut plan.

use crate::choices::tube;
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
            format!("Piece of {}", value(length, system))
        }
        Class::Part(field) => part_name(field).to_string(),
    };
    match (line.form, line.tube) {
        (Form::Only, None) => {}
        (Form::Left, _) => said += ", left",
        (Form::Right, _) => said += ", right",
        (Form::Inside, _) => said += ", inside corner",
        (Form::Outside, _) => said += ", outside corner",
        (Form::Only, Some(of)) => {
            said += ", ";
            said += tube(of);
        }
        (Form::To(small), large) => {
            let large = large.map_or("", |large| nominal(large.nominal()));
            said += &format!(", {large} to {} in", nominal(small.nominal()));
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
        PriceField::Joint => "Soldered joint",
        PriceField::Enclosure => "Enclosure by itself",
        PriceField::Elbow => "Elbow",
        PriceField::Tee => "Tee",
        PriceField::Circulator => "Circulator",
        PriceField::Thermostat => "Thermostat",
        PriceField::LoopValves => "Valves of a loop, as a set",
        PriceField::Solder => "Lead-free solder, spool of 8 oz",
        PriceField::Flux => "Flux for it, jar of 4 oz",
        PriceField::Sealant => "Thread sealant, jar of 4 oz",
        PriceField::Gas => "Gas for the torch, bottle of 14 oz",
        PriceField::Glycol => "Propylene glycol, pure, can of 1 gal",
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
                let of = match (is_coil, count) {
                    (true, 1) => "coil",
                    (true, _) => "coils",
                    (false, 1) => "stick",
                    (false, _) => "sticks",
                };
                format!("{count} {of} of {}", value(length, system))
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
        parts.push(format!("{} to spare", value(Value::share(entry.spare), system)));
    }
    if entry.line.have > 0 {
        parts.push(format!("{} bought already", entry.line.have));
    }
    let alike = match (&entry.buy, entry.line.amount) {
        (Buy::Count(buy), Amount::Count(need)) => *buy == need,
        (Buy::Length(buy), Amount::Length(need)) => (*buy - need).abs().si() < 1e-6,
        _ => false,
    };
    match (alike, parts.is_empty()) {
        (true, true) => String::new(),
        (_, true) => format!("needed {needs}"),
        (_, false) => format!("needed {needs}, {}", parts.join(", ")),
    }
}

/// The price of a line.
pub fn line_price(line: &Line, system: System) -> String {
    match line.price {
        Some(Price::Each(price)) => value(price, system),
        Some(Price::ByLength(price)) => value(price, system),
        Some(Price::Within(bundle)) => format!("in: {}", part_name(bundle).to_lowercase()),
        None => "no price".to_string(),
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
        Reason::Every(spacing) => format!("every {}", value(spacing, system)),
        Reason::Feeds { volt_amperes } => format!("24 V, {volt_amperes:.0} VA"),
        Reason::TakesUp { volume: Some(volume) } => {
            format!("takes up what the water grows; {}", value(Value::liquid(volume), system))
        }
        Reason::Joints(joints) => format!("for {joints} soldered joints"),
        Reason::Threaded(threads) => format!("for {threads} threads"),
        Reason::Freezing { glycol } => {
            format!("against freezing, {}", value(Value::liquid(glycol), system))
        }
        plain => plain_reason(plain).to_string(),
    }
}

fn plain_reason(reason: Reason) -> &'static str {
    match reason {
        Reason::Heats => "heats",
        Reason::OverPieces => "over the pieces",
        Reason::OverPipe => "over pipe that runs on",
        Reason::EnclosureEnds => "ends of enclosures",
        Reason::EnclosureTurns => "where the wall turns",
        Reason::EnclosureRunsOn => "where the enclosure runs on",
        Reason::BetweenPieces => "between two pieces",
        Reason::AtPieces => "at the pieces",
        Reason::Holes => "where pipe passes a floor",
        Reason::HolesTaken => "where pipe passes a floor, taken as twice",
        Reason::Way => "on the way",
        Reason::LongStraight => "in straights longer than a stick",
        Reason::Parts => "where the water parts and joins",
        Reason::FurtherZone => "to a further zone",
        Reason::BoilerRoom => "in the boiler room, as typed or taken there",
        Reason::SizesMeet => "where sizes meet",
        Reason::MaterialsMeet => "where copper and PEX meet",
        Reason::Threads => "at boiler, air eliminator and flanges",
        Reason::Purges => "to shut, purge and drain it alone",
        Reason::Balances => "sets the flow",
        Reason::StartsZone => "starts the zone",
        Reason::Switches => "starts a circulator",
        Reason::MeasuredWire => "as measured",
        Reason::MovesWater => "moves the water",
        Reason::KeepsWay => "keeps water from running backward",
        Reason::ColdReturn => "warms the return, too cool for this boiler",
        Reason::Manifold => "a room's two tubes",
        Reason::TakesAirOut => "takes air out",
        Reason::HighPoint => "where air gathers: the highest element",
        Reason::TakesUp { .. } => "takes up what the water grows",
        Reason::Fills => "fills and guards; may come with the boiler",
        Reason::Every(_)
        | Reason::Feeds { .. }
        | Reason::Joints(_)
        | Reason::Threaded(_)
        | Reason::Freezing { .. } => "",
    }
}

/// What the list cannot tell, in a sentence.
pub fn list_note(note: Note) -> String {
    match note {
        Note::BoilerRoom => {
            "Boiler, burner, vent, wiring of mains, and pipe between the parts of the boiler room are \
             not on the list: measure them on site."
                .to_string()
        }
        Note::WireNotMeasured(count) => {
            let of = if count == 1 { "1 thermostat".to_string() } else { format!("{count} thermostats") };
            format!("Thermostat wire of {of} is not measured, and not on the list.")
        }
        Note::WaysInOneLine(count) => {
            let of = if count == 1 { "1 stretch is".to_string() } else { format!("{count} stretches are") };
            format!(
                "{of} described by length only, and cut as one line: their elbows divide them further. \
                 Describe a room's way step by step for each straight."
            )
        }
        Note::HolesTaken => {
            "Where a way is not described, it is taken to pass the floor twice.".to_string()
        }
    }
}

/// How many lines have no price.
pub fn unpriced_lines(take_off: &TakeOff) -> String {
    match take_off.unpriced {
        0 => String::new(),
        1 => "1 line has no price and is not in the sum.".to_string(),
        many => format!("{many} lines have no price and are not in the sum."),
    }
}

/// How the sum comes about, against that of the comparison.
pub fn sum_and_need(take_off: &TakeOff, system: System) -> String {
    if take_off.sum == Money::ZERO {
        return String::new();
    }
    let spare = take_off.sum - take_off.needed;
    format!(
        "{} for what is needed, as the comparison of arrangements has it, and {} for whole sticks and \
         coils and what is to spare.",
        value(take_off.needed, system),
        value(spare, system)
    )
}

/// What all of it comes to.
pub fn list_sum(take_off: &TakeOff, system: System) -> String {
    if take_off.sum == Money::ZERO {
        return "No sum: no price is typed of what is on the list.".to_string();
    }
    format!("{} to buy, as far as prices are typed.", value(take_off.sum, system))
}

pub fn comes_in_coils(tube: Tube) -> bool {
    tube.material() == Material::Pex
}

/// What the picture of a stick in a cut plan shows.
pub fn cut_picture(tube: &str, stick: &str) -> String {
    format!("{stick} of {tube}, to scale; the table below has the same numbers.")
}

/// The list as a table, heads first, for a spreadsheet.
pub fn materials_table(draft: &Draft, take_off: &TakeOff, system: System) -> Vec<Vec<String>> {
    let heads = ["Group", "What", "To buy", "Needed", "Price", "Sum", "Why"];
    let mut rows = vec![heads.map(str::to_string).to_vec()];
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
        Err(_) => "No plan: more pieces than the search takes. Bought by the length.".to_string(),
        Ok(plan) if cutting.is_coil() => {
            format!("{} of coil: no stretch has a joint in it.", long(plan.total_sixteenths))
        }
        Ok(plan) if plan.is_proven() => {
            format!("Proven: no way of cutting takes less than {}.", long(plan.total_sixteenths))
        }
        Ok(plan) => format!(
            "The search was stopped: this takes {}, and none takes less than {}.",
            long(plan.total_sixteenths),
            long(plan.bound_sixteenths)
        ),
    }
}

/// A stick or a coil by its number, and what is left of it.
pub fn stick_name(nth: usize, sixteenths: u32, is_coil: bool, system: System) -> String {
    let kind = if is_coil { "Coil" } else { "Stick" };
    format!("{kind} {}, {}", nth + 1, cut_length(sixteenths, system))
}

pub fn offcut(sixteenths: u32, system: System) -> String {
    format!("left {}", cut_length(sixteenths, system))
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
        said += &format!(", part {} of {}", piece.part.0, piece.part.1);
    }
    said
}

fn leg_word(leg: LegKind) -> &'static str {
    match leg {
        LegKind::Along => "along the wall",
        LegKind::InsideCorner => "inside corner",
        LegKind::OutsideCorner => "outside corner",
        LegKind::Doorway => "under a door",
        LegKind::ThroughFloor => "through the floor",
        LegKind::Below => "below the floor",
    }
}
