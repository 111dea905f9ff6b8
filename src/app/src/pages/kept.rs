//! Pieces that stay where they are, whatever else is chosen.

use crate::parts::{button_on, in_system, live_view};
use crate::state::{App, EditKey, focus_on, use_app};
use finrun_engine::building::{RoomId, SurfaceId};
use finrun_engine::job::{Draft, Field, FieldError, Job, SurfaceField};
use finrun_engine::quantity::{Length, Unit};
use finrun_engine::sizing::Choice;
use finrun_text as text;
use leptos::prelude::*;
use std::time::Duration;

/// A stretch of wall: by its place among the wall's.
#[derive(Debug, Clone, Copy)]
struct Stretch {
    room: RoomId,
    wall: SurfaceId,
    run: u32,
}

/// The walls of a room that hold pieces, in the order of the draft.
pub(super) fn walls(draft: &Draft, room: RoomId, choice: &Choice) -> Vec<SurfaceId> {
    let walls = draft.room(room).map(|room| room.surfaces.as_slice()).unwrap_or_default();
    let holds = |wall| choice.runs.iter().any(|run| run.surface == wall);
    walls.iter().filter(|w| holds(w.id) || !w.fixed.is_empty()).map(|w| w.id).collect()
}

/// For each stretch of a wall that holds pieces: which of them stay, and changing that.
pub(super) fn stretches(job: &Job, room: RoomId, wall: SurfaceId, choice: &Choice) -> AnyView {
    let of_job = job.house.rooms.iter().find(|r| r.id == room);
    let of_job = of_job.and_then(|room| room.surfaces.iter().find(|surface| surface.id == wall));
    let Some(of_job) = of_job else { return ().into_any() };
    let one = |(run, place)| {
        let pieces = choice.runs.iter().find(|run| run.surface == wall && run.run == place);
        let mut feet: Vec<u8> =
            pieces.iter().flat_map(|run| &run.pieces).copied().map(whole_feet).collect();
        feet.sort_unstable_by(|a, b| b.cmp(a));
        stretch(Stretch { room, wall, run }, of_job.runs.len(), feet)
    };
    (0..).zip(of_job.runs.iter().copied()).map(one).collect_view().into_any()
}

fn whole_feet(piece: Length) -> u8 {
    piece.to(Unit::Foot).round() as u8
}

fn stretch(at: Stretch, stretches: usize, feet: Vec<u8>) -> AnyView {
    let app = use_app();
    let id = format!("room-{}.surface-{}.run-{}", at.room.0, at.wall.0, at.run);
    let act = {
        let id = id.clone();
        move |label: &'static str, pieces: Vec<u8>| {
            let id = id.clone();
            let name = move || text::act_on(label, &app.typed(|draft| name(draft, at, stretches)));
            button_on("", label, name, move || {
                app.keep(at, pieces.clone());
                let id = id.clone();
                // The button is drawn anew with the results.
                set_timeout(move || focus_on(&id), Duration::ZERO);
            })
        }
    };
    let state = live_view(move || {
        let kept = app.typed(|draft| kept(draft, at));
        if feet.is_empty() && kept.is_empty() {
            return ().into_any();
        }
        let keep =
            (kept != feet && !feet.is_empty()).then(|| act(text::keep_pieces(), feet.clone()));
        let let_go = (!kept.is_empty()).then(|| act(text::let_pieces_go(), Vec::new()));
        let said = match (kept.is_empty(), stretches) {
            (false, _) => text::kept_pieces(&app.as_sum(&kept)),
            (true, 1) => String::new(),
            (true, _) => text::stretch_holds(at.run as usize, &app.as_sum(&feet)),
        };
        let said = (!said.is_empty()).then(|| view! { <span>{said}</span> });
        view! { {said} {keep} {let_go} }.into_any()
    });
    view! { <div class="row-acts kept" id=id tabindex="-1">{state}</div> }.into_any()
}

fn kept(draft: &Draft, at: Stretch) -> Vec<u8> {
    let wall = draft.surface(at.room, at.wall);
    let fixed = wall.and_then(|wall| wall.fixed.iter().find(|fixed| fixed.run == at.run));
    fixed.map(|fixed| fixed.pieces_ft.clone()).unwrap_or_default()
}

fn name(draft: &Draft, at: Stretch, stretches: usize) -> String {
    let room = text::room_name(draft, at.room);
    let wall = text::surface_name(draft, at.room, at.wall);
    match stretches {
        1 => format!("{room}, {wall}"),
        _ => format!("{room}, {wall}, {}", text::wall_stretch(at.run as usize)),
    }
}

/// Kept pieces that are too long for their stretch now, or whose stretch is gone.
pub(super) fn kept_wrong() -> AnyView {
    let app = use_app();
    live_view(move || {
        let of_kept =
            |error: &FieldError| matches!(error.field, Field::Surface(_, _, SurfaceField::Fixed));
        let errors = app.errors_where(of_kept);
        if errors.is_empty() {
            return ().into_any();
        }
        let one = |(field, sentence): (Field, String)| {
            let Field::Surface(room, wall, _) = field else { return ().into_any() };
            let name = move || {
                let of = app.typed(|draft| text::surface_name(draft, room, wall));
                text::act_on(text::let_pieces_go(), &of)
            };
            let let_go = move || {
                app.edit(EditKey::Single, |draft| {
                    if let Some(wall) = draft.surface_mut(room, wall) {
                        wall.fixed.clear();
                    }
                });
            };
            let let_go = button_on("", text::let_pieces_go(), name, let_go);
            view! {
                <li id=field.to_string() tabindex="-1">
                    <p>{sentence}</p>
                    {let_go}
                </li>
            }
            .into_any()
        };
        view! {
            <section class="mend" aria-labelledby="kept-wrong">
                <h2 id="kept-wrong">{text::kept_wrong()}</h2>
                <ul>{errors.into_iter().map(one).collect_view()}</ul>
            </section>
        }
        .into_any()
    })
}

impl App {
    fn keep(self, at: Stretch, pieces: Vec<u8>) {
        self.edit(EditKey::Single, |draft| draft.fix_pieces(at.room, at.wall, at.run, pieces));
    }

    fn as_sum(self, feet: &[u8]) -> String {
        let system = self.system();
        let one = |&feet: &u8| in_system(Length::of(f64::from(feet), Unit::Foot), system);
        feet.iter().map(one).collect::<Vec<_>>().join(" + ")
    }
}
