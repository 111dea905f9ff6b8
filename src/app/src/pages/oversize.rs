//! What is built beyond the loads, and what that does.

use super::running::while_open;
use crate::markup::{Markup, Row, figures};
use crate::parts::in_system;
use crate::state::{App, use_app};
use finrun_engine::job::Draft;
use finrun_engine::oversize::{Oversize, oversize as excess};
use finrun_engine::quantity::System;
use finrun_text as text;
use leptos::prelude::*;

/// It takes as long as several designs, so that it is worked out only while it is open.
pub(super) fn oversize() -> AnyView {
    let app = use_app();
    while_open(text::oversize_title(), move || app.oversize())
}

impl App {
    fn oversize(self) -> String {
        let system = self.system();
        let over = self.design(|solved| solved.as_ref().and_then(|(job, d)| excess(job, d)));
        match over {
            Some(over) => self.typed_now(|draft| said(draft, &over, system)),
            None => String::new(),
        }
    }
}

fn said(draft: &Draft, over: &Oversize, system: System) -> String {
    let mut rows: Vec<Row> = over
        .rooms
        .iter()
        .map(|room| Row {
            name: text::room_name(draft, room.room),
            key: format!("over-{}", room.room.0),
            cells: vec![
                ("length", in_system(room.length, system)),
                ("pieces", in_system(room.pieces, system)),
                ("margin", in_system(room.margin, system)),
            ],
        })
        .collect();
    rows.push(Row {
        name: text::whole_system().to_string(),
        key: "over".to_string(),
        cells: vec![
            ("length", in_system(over.length, system)),
            ("pieces", in_system(over.pieces, system)),
            ("margin", in_system(over.margin, system)),
        ],
    });
    let mut out = Markup::new();
    let mut line = |name: &str, text: &str| out.leaf("p", &[("data-figure", name)], text);
    line("over.note", text::oversize_note());
    let water = [
        ("over.back", text::return_word(), in_system(over.back, system)),
        ("over.back-exact", text::return_exact(), in_system(over.back_exact, system)),
    ];
    let heads = [text::room(), text::pieces_add(), text::pieces_give(), text::margin_gives()];
    line("over.supply", &text::supply_enough(over, system));
    line("over.calls", &text::calls_at_half(over, system));
    if let Some(burner) = &over.burner {
        line("over.burner", &text::burner_runs(burner));
    }
    for (name, words, value) in water {
        out.open("p", &[]);
        out.text(words);
        out.text(" ");
        out.leaf("b", &[("data-figure", name)], &value);
        out.close("p");
    }
    figures(&heads, &rows) + &out.done()
}
