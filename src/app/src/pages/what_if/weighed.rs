//! The house before and after, worked out in slices as soon as nobody types.

use crate::markup::{Markup, Row, figures, live_markup, scrolled};
use crate::parts::{Pace, Slice, Work, button, in_slices, live, pace_said, when, yes};
use crate::state::{App, EditKey, use_app};
use finrun_engine::job::Draft;
use finrun_engine::season::NoSeason;
use finrun_engine::what_if::{NotWeighed, Weighed, Weighing, apply};
use finrun_text as text;
use leptos::prelude::*;

type Found = RwSignal<Option<Result<Weighed, NotWeighed>>>;

pub(super) fn weighed() -> AnyView {
    let app = use_app();
    let found: Found = RwSignal::new(None);
    let pace = in_slices(move || Some(weigh(app.typed(Draft::clone), found)));
    // What was found last stays in its place meanwhile, so that nothing jumps below who types.
    let stale = yes(move || pace.get() != Pace::Done);
    let look = move |look: fn(App, &Weighed) -> String| {
        found.with(|found| match found {
            Some(Ok(weighed)) => look(app, weighed),
            _ => String::new(),
        })
    };
    let stands = move || found.with(|found| matches!(found, Some(Ok(_))));
    let not = live_markup("", move || {
        found.with(|found| match found {
            Some(Err(why)) => not_weighed(app, why),
            _ => String::new(),
        })
    });
    let table = live_markup("", move || look(house));
    let rooms = when(stands, move || {
        let table = scrolled(text::room_by_room(), move || look(rooms));
        view! {
            <details class="more">
                <summary>{text::room_by_room()}</summary>
                {table}
            </details>
        }
        .into_any()
    });
    let make = when(stands, move || {
        let press = move || {
            app.edit(EditKey::Single, |draft| *draft = apply(draft));
            app.say(text::made_so().to_string());
        };
        view! {
            <div class="acts">{button("main-act", text::make_it_so(), press)}</div>
            <p class="note">{text::make_it_so_note()}</p>
        }
        .into_any()
    });
    let pays = live(move || look(|app, weighed| text::paid_back(weighed, app.system())));
    view! {
        {pace_said(pace, text::weighing())}
        {not}
        <div class="weighed" class:stale=stale>{table}</div>
        <p><b data-figure="what-if.payback">{pays}</b></p>
        {when(stands, || view! { <p class="note">{text::payback_note()}</p> }.into_any())}
        {rooms}
        {make}
    }
    .into_any()
}

/// A slice reads, designs one of the two houses, or runs one of them through its year.
fn weigh(draft: Draft, found: Found) -> Work {
    let mut begun: Option<Weighing> = None;
    Box::new(move || {
        if let Some(weighing) = &mut begun {
            let Some(weighed) = weighing.step() else { return Slice::More };
            found.set(Some(Ok(weighed)));
            return Slice::Last;
        }
        match Weighing::of(&draft) {
            Ok(weighing) => {
                begun = Some(weighing);
                Slice::More
            }
            Err(why) => {
                found.set(Some(Err(why)));
                Slice::Last
            }
        }
    })
}

fn not_weighed(app: App, why: &NotWeighed) -> String {
    let mut markup = Markup::new();
    markup.leaf("p", &[], text::not_weighed(why));
    if let NotWeighed::Wrong(changed, errors) = why {
        markup.open("ul", &[]);
        for error in errors {
            markup.leaf("li", &[], &text::problem_at(changed, error, app.system()));
        }
        markup.close("ul");
    }
    markup.done()
}

fn house(app: App, weighed: &Weighed) -> String {
    let rows = app.typed(|draft| text::weighed_rows(weighed, draft, app.system()));
    let row = |(key, name, [before, after, difference]): (&str, &str, [String; 3])| Row {
        name: name.to_string(),
        key: format!("what-if.{key}"),
        cells: [("before", before), ("after", after), ("difference", difference)]
            .map(|(end, cell)| (end, breakable(&cell)))
            .to_vec(),
    };
    let heads = [
        text::of_the_house(),
        text::house_as_it_is(),
        text::house_changed(),
        text::house_difference(),
    ];
    let mut markup = Markup::new();
    markup.put(&figures(&heads, &rows.into_iter().map(row).collect::<Vec<_>>()));
    if let Some(why) = no_year(weighed) {
        markup.leaf("p", &[("class", "note")], text::no_year(why));
    }
    markup.done()
}

/// On a phone a number may stand over its unit.
fn breakable(cell: &str) -> String {
    cell.replace('\u{a0}', " ")
}

/// Of either house.
fn no_year(weighed: &Weighed) -> Option<NoSeason> {
    let of = [&weighed.before, &weighed.after].map(|side| match side.year {
        Some(Err(why)) => Some(why),
        _ => None,
    });
    of.into_iter().flatten().next()
}

fn rooms(app: App, weighed: &Weighed) -> String {
    let system = app.system();
    let rooms = app.typed(|draft| text::weighed_rooms(weighed, (draft, &apply(draft)), system));
    let mut markup = Markup::new();
    markup.open("table", &[]);
    markup.open("tr", &[]);
    for head in text::weighed_room_heads() {
        markup.leaf("th", &[("scope", "col")], head);
    }
    markup.close("tr");
    for (id, name, cells) in rooms {
        markup.open("tr", &[]);
        markup.leaf("th", &[("scope", "row")], &name);
        for (key, [before, after]) in ["load", "element", "cold", "warm"].iter().zip(cells) {
            let key = format!("what-if.room-{id}.{key}");
            let shown = text::then_now(&before, &after);
            markup.leaf("td", &[("data-figure", &key)], &shown);
        }
        markup.close("tr");
    }
    markup.close("table");
    markup.done()
}
