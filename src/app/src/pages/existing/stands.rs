//! The pieces that stand on each stretch of wall.

use crate::parts::{button_on, each, in_system, kept, live, live_view, when, yes};
use crate::state::{App, EditKey, focus_on, use_app};
use finrun_engine::building::{RoomId, SurfaceId};
use finrun_engine::job::{Choice, Draft, Pick, Standing};
use finrun_engine::quantity::{Length, Unit};
use finrun_text as text;
use leptos::prelude::*;
use std::time::Duration;

/// Whole feet of the trade's pieces.
const FEET: std::ops::RangeInclusive<u8> = 2..=10;

/// A stretch of a wall, by its place among the wall's.
#[derive(Debug, Clone, PartialEq)]
struct Stretch {
    wall: SurfaceId,
    run: u32,
    of: usize,
    free: Length,
}

pub(super) fn pieces() -> AnyView {
    let app = use_app();
    let installed = yes(move || {
        app.typed(|draft| draft.picked(Choice::Standing))
            == Some(Pick::Standing(Standing::Installed))
    });
    let rooms = move || view! { {each(move || app.room_ids(), room)} }.into_any();
    let not = move || {
        let press = move || app.enter_plan();
        let name = move || text::existing_as_planned().to_string();
        view! {
            <p class="note">{text::existing_not_built()}</p>
            <div class="acts">{button_on("", text::existing_as_planned(), name, press)}</div>
        }
        .into_any()
    };
    view! {
        <p class="note">{text::existing_entered_note()}</p>
        {when(move || installed.get(), rooms)}
        {when(move || !installed.get(), not)}
    }
    .into_any()
}

fn room(id: u32) -> AnyView {
    let app = use_app();
    let room = RoomId(id);
    let name = kept(move || {
        let all = app.typed(|draft| {
            let walls = draft.room(room).map(|room| room.surfaces.as_slice()).unwrap_or_default();
            walls.iter().flat_map(|wall| &wall.fixed).flat_map(|f| f.pieces_ft.clone()).collect()
        });
        format!("{}: {}", app.typed(|draft| text::room_name(draft, room)), app.sum_of(all))
    });
    let stretches = Memo::new(move |_| app.stretches_of(room));
    let all = live_view(move || {
        let of = stretches.get();
        of.into_iter().map(|at| stretch(room, at)).collect_view().into_any()
    });
    view! {
        <details class="more">
            <summary>{live(move || name.get())}</summary>
            {all}
        </details>
    }
    .into_any()
}

fn stretch(room: RoomId, at: Stretch) -> AnyView {
    let app = use_app();
    let Stretch { wall, run, of, free } = at;
    let id = format!("room-{}.surface-{}.stands-{run}", room.0, wall.0);
    let name = move || {
        let wall = app.typed(|draft| text::surface_name(draft, room, wall));
        match of {
            1 => wall,
            _ => format!("{wall}, {}", text::wall_stretch(run as usize)),
        }
    };
    let said = kept(move || {
        let pieces = app.typed(|draft| stands(draft, room, wall, run));
        format!("{}: {} / {}", name(), app.sum_of(pieces), in_system(free, app.system()))
    });
    let add = |feet: u8| {
        let label = in_system(Length::of(f64::from(feet), Unit::Foot), app.system());
        let spoken = label.clone();
        let named = move || text::act_on(text::existing_add(), &format!("{spoken}, {}", name()));
        button_on("", &label, named, move || {
            let mut pieces = app.typed_now(|draft| stands(draft, room, wall, run));
            pieces.push(feet);
            app.set_stands(room, wall, run, pieces);
        })
    };
    let some = yes(move || app.typed(|draft| !stands(draft, room, wall, run).is_empty()));
    let box_id = id.clone();
    let take = when(
        move || some.get(),
        move || {
            let id = id.clone();
            let named = move || text::act_on(text::existing_take(), &name());
            button_on("", text::existing_take(), named, move || {
                let mut pieces = app.typed_now(|draft| stands(draft, room, wall, run));
                pieces.pop();
                app.set_stands(room, wall, run, pieces);
                let id = id.clone();
                // The button may be gone with the last piece.
                set_timeout(move || focus_on(&id), Duration::ZERO);
            })
        },
    );
    let adds = FEET.map(add).collect_view();
    view! {
        <div class="stands" id=box_id tabindex="-1">
            <p>{live(move || said.get())}</p>
            <div class="row-acts"><span>{text::existing_add()}</span> {adds} {take}</div>
        </div>
    }
    .into_any()
}

fn stands(draft: &Draft, room: RoomId, wall: SurfaceId, run: u32) -> Vec<u8> {
    let wall = draft.surface(room, wall);
    let fixed = wall.and_then(|wall| wall.fixed.iter().find(|fixed| fixed.run == run));
    fixed.map(|fixed| fixed.pieces_ft.clone()).unwrap_or_default()
}

impl App {
    fn set_stands(self, room: RoomId, wall: SurfaceId, run: u32, mut pieces: Vec<u8>) {
        pieces.sort_unstable_by(|a, b| b.cmp(a));
        self.edit(EditKey::Single, |draft| draft.fix_pieces(room, wall, run, pieces));
    }

    /// As "6 ft + 4 ft".
    fn sum_of(self, feet: Vec<u8>) -> String {
        let one = |feet: u8| in_system(Length::of(f64::from(feet), Unit::Foot), self.system());
        match feet.is_empty() {
            true => text::existing_none().to_string(),
            false => feet.into_iter().map(one).collect::<Vec<_>>().join(" + "),
        }
    }

    /// The stretches of a room's walls that are free for baseboard, or hold pieces.
    fn stretches_of(self, id: RoomId) -> Vec<Stretch> {
        self.design(|solved| {
            let room = solved
                .as_ref()
                .and_then(|(job, _)| job.house.rooms.iter().find(|room| room.id == id));
            let walls = room.map(|room| room.surfaces.iter().filter(|wall| room.allows(wall)));
            let mut all = Vec::new();
            for wall in walls.into_iter().flatten() {
                for (run, place) in (0..).zip(&wall.runs) {
                    let (of, free) = (wall.runs.len(), place.length);
                    all.push(Stretch { wall: wall.id, run, of, free });
                }
            }
            all
        })
    }

    /// Enters the pieces that were chosen as what stands.
    fn enter_plan(self) {
        let planned = self.design(|solved| {
            let mut all = Vec::new();
            let Some((job, design)) = solved else { return all };
            for (room, designed) in job.house.rooms.iter().zip(&design.rooms) {
                for of in &designed.element.choice.runs {
                    let wall = room.surfaces.iter().find(|wall| wall.id == of.surface);
                    let run = wall.and_then(|wall| wall.runs.iter().position(|run| *run == of.run));
                    let feet = |piece: &Length| piece.to(Unit::Foot).round() as u8;
                    let mut pieces: Vec<u8> = of.pieces.iter().map(feet).collect();
                    pieces.sort_unstable_by(|a, b| b.cmp(a));
                    all.extend(run.map(|run| (room.id, of.surface, run as u32, pieces)));
                }
            }
            all
        });
        self.edit(EditKey::Single, |draft| {
            for (room, wall, run, pieces) in planned {
                draft.fix_pieces(room, wall, run, pieces);
            }
            draft.pick(Choice::Standing, Pick::Standing(Standing::Installed));
        });
    }
}
