//! What was worked out, as markup.

use crate::markup::{Markup, Row, figures};
use crate::parts::in_system;
use crate::state::App;
use finrun_engine::existing::{At, Explained, Likely, NoExplanation, RoomGets};
use finrun_engine::quantity::{MassFlow, Temperature, Value};
use finrun_text as text;

/// Explanations less likely than this are not worth a line; and of the others no more than so many.
const LEAST_SHARE: f64 = 0.01;
const MOST: usize = 6;

pub(super) fn gets(app: App, all: &[RoomGets]) -> String {
    if all.is_empty() {
        let mut markup = Markup::new();
        markup.leaf("p", &[], text::existing_no_design());
        return markup.done();
    }
    let system = app.system();
    let row = |of: &RoomGets| Row {
        name: app.typed(|draft| text::room_name(draft, of.room)),
        key: format!("room-{}", of.room.0),
        cells: vec![
            ("loses", in_system(of.wants, system)),
            ("gets", in_system(of.gets, system)),
            ("reaches", of.reaches.map_or("–".to_string(), |reaches| in_system(reaches, system))),
            ("limit", text::limit_said(of.limit).to_string()),
        ],
    };
    let heads = [
        text::room(),
        text::head_wants(),
        text::head_gets(),
        text::head_reaches(),
        text::head_limit(),
    ];
    scrolled(text::existing_gets(), &figures(&heads, &all.iter().map(row).collect::<Vec<_>>()))
}

pub(super) fn told(app: App, told: Option<&Result<Explained, NoExplanation>>) -> String {
    let mut markup = Markup::new();
    match told {
        None => markup.leaf("p", &[], text::existing_no_design()),
        Some(Err(why)) => {
            markup.leaf("p", &[("data-figure", "existing.nothing")], text::nothing_explained(*why));
        }
        Some(Ok(explained)) => explained_as(&mut markup, app, explained),
    }
    markup.done()
}

fn explained_as(markup: &mut Markup, app: App, explained: &Explained) {
    if !explained.fits {
        markup.leaf("p", &[("class", "verdict stop")], text::existing_fits_none());
    }
    markup.open("ol", &[("class", "likely")]);
    for (nth, likely) in explained.likely.iter().enumerate() {
        if nth == 0 || (nth < MOST && likely.share >= LEAST_SHARE) {
            one(markup, app, nth, likely);
        }
    }
    markup.close("ol");
    if !explained.rooms_told {
        markup.leaf("p", &[("class", "note")], text::existing_rooms_left_out());
    }
    markup.leaf("h2", &[], text::existing_next());
    if explained.next.is_empty() {
        markup.leaf("p", &[], text::existing_next_none());
    }
    markup.open("ul", &[("class", "next")]);
    for (nth, next) in explained.next.iter().enumerate() {
        let place = app.typed(|draft| text::measured_at(draft, next.at));
        markup.open("li", &[("data-figure", &format!("existing.next-{nth}"))]);
        let of = |value| shown(app, next.at, value);
        markup.leaf("b", &[], &format!("{place}:"));
        markup.text(" ");
        markup.leaf("span", &[], &text::expected_there(&of(next.if_first), &of(next.if_second)));
        markup.close("li");
    }
    markup.close("ul");
    markup.leaf("h2", &[], text::existing_compared());
    let row = |(nth, of): (usize, &finrun_engine::existing::Compared)| {
        let value = |value| shown(app, of.at, value);
        Row {
            name: app.typed(|draft| text::measured_at(draft, of.at)),
            key: format!("existing.reading-{nth}"),
            cells: vec![
                ("read", value(of.read)),
                ("entered", value(of.calculated)),
                ("first", value(of.explained)),
            ],
        }
    };
    let heads =
        [text::head_place(), text::head_read(), text::head_as_entered(), text::head_if_first()];
    let rows: Vec<Row> = explained.compared.iter().enumerate().map(row).collect();
    markup.put(&scrolled(text::existing_compared(), &figures(&heads, &rows)));
}

/// A bar as long as it is likely, and the same in words.
fn one(markup: &mut Markup, app: App, nth: usize, likely: &Likely) {
    let system = app.system();
    let key = format!("existing.likely-{nth}");
    markup.open("li", &[]);
    let title = app.typed(|draft| text::explanation(draft, likely.explanation));
    markup.leaf("h3", &[("data-figure", &key)], &title);
    let (sure, share) = (text::sure(likely.sure), in_system(Value::share(likely.share), system));
    let bar = format!("{:.3}", likely.share);
    markup.open("p", &[("class", "sure")]);
    markup.leaf("meter", &[("value", &bar), ("aria-label", &title)], "");
    markup.text(" ");
    markup.leaf("b", &[], &format!("{sure} ({share})"));
    if let Some((scale, strength)) = likely.strength {
        markup.text(" · ");
        markup.text(&text::strength(scale, strength, system));
    }
    markup.close("p");
    markup.open("p", &[]);
    markup.text(text::look_at(likely.explanation));
    if likely.alike {
        markup.text(" ");
        markup.leaf("b", &[], text::existing_alike());
    }
    markup.close("p");
    markup.close("li");
}

fn shown(app: App, at: At, value: f64) -> String {
    let system = app.system();
    match at {
        At::Flow(_) => app.design(|solved| {
            let water =
                solved.as_ref().map(|(job, _)| job.circuit.fluid.density(job.circuit.supply));
            water.map_or_else(String::new, |density| {
                in_system(MassFlow::from_si(value) / density, system)
            })
        }),
        _ => in_system(Temperature::from_si(value), system),
    }
}

fn scrolled(name: &str, table: &str) -> String {
    let mut markup = Markup::new();
    let attributes =
        [("class", "scroll folds"), ("tabindex", "0"), ("role", "region"), ("aria-label", name)];
    markup.open("div", &attributes);
    markup.put(table);
    markup.close("div");
    markup.done()
}
