//! The rooms of a loop in the order of the water: moved by buttons and lists, or dragged by a handle.

use crate::page::{JobKey, Page};
use crate::parts::{button_on, choice_field, each, in_system, kept, live, when, yes};
use crate::state::{App, EditKey, use_app};
use finrun_engine::building::{RoomId, ZoneId};
use finrun_engine::job::{Arrangement, Choice, Draft, Hung, way_to};
use finrun_engine::quantity::Length;
use finrun_text as text;
use leptos::ev::PointerEvent;
use leptos::prelude::*;

/// What is dragged, and where it would fall.
#[derive(Clone, Copy)]
pub(super) struct Drag {
    room: RwSignal<Option<RoomId>>,
    over: RwSignal<Option<Target>>,
}

#[derive(Clone, Copy, PartialEq)]
struct Target {
    hung: Hung,
    /// Behind all that hang there, without one.
    before: Option<RoomId>,
}

impl Drag {
    pub(super) fn new() -> Drag {
        Drag { room: RwSignal::new(None), over: RwSignal::new(None) }
    }

    fn end(self) -> Option<Target> {
        let over = self.over.get_untracked();
        self.room.set(None);
        self.over.set(None);
        over
    }
}

pub(super) fn rooms_of_loop(job: &JobKey, hung: Hung, drag: Drag) -> AnyView {
    let app = use_app();
    let ids = move || {
        app.typed(|draft| {
            let own = draft.rooms.iter().filter(|room| draft.hung(room) == hung);
            own.map(|room| room.id.0).collect::<Vec<_>>()
        })
    };
    let none = when(
        move || ids().is_empty(),
        || view! { <p class="note">{text::zone_empty()}</p> }.into_any(),
    );
    let rows = {
        let job = job.clone();
        each(ids, move |id| row(&job, RoomId(id), drag))
    };
    let falls = yes(move || drag.over.get() == Some(Target { hung, before: None }));
    let address = format!("{}-{}", hung.zone.0, hung.branch);
    view! {
        <div class="loop-rooms" class:drop-end=falls data-loop=address>
            {none}
            <ol class="rooms">{rows}</ol>
        </div>
    }
    .into_any()
}

fn row(job: &JobKey, id: RoomId, drag: Drag) -> AnyView {
    let app = use_app();
    let name = kept(move || app.typed(|draft| text::room_name(draft, id)));
    let act = move |act: &'static str| move || text::act_on(act, &name.get());
    let edit = move |change: fn(&mut Draft, RoomId)| {
        move || app.edit(EditKey::Single, |draft| change(draft, id))
    };
    let href = Page::Room(job.clone(), id).to_hash();
    let places = move || app.typed(|draft| draft.picks(Choice::Hung(id)).len() > 1);
    let of = move |test: fn(Arrangement) -> bool| {
        move || {
            app.typed(|draft| {
                let room = draft.rooms.iter().find(|room| room.id == id);
                room.and_then(|room| draft.zone_of(room)).is_some_and(|zone| test(zone.arrangement))
            })
        }
    };
    let more = when(of(Arrangement::has_branches), move || {
        let tees = when(of(|arrangement| arrangement == Arrangement::DiverterTees), move || {
            choice_field(Choice::Diverters(id))
        });
        view! {
            <details class="more">
                <summary>{text::where_it_hangs()}</summary>
                <div class="pair">
                    {tees}
                    {choice_field(Choice::ShutOff(id))}
                </div>
            </details>
        }
        .into_any()
    });
    let dragged = yes(move || drag.room.get() == Some(id));
    let falls = yes(move || drag.over.get().is_some_and(|target| target.before == Some(id)));
    let label = words_of(name);
    view! {
        <li class:dragged=dragged class:drop-before=falls data-room=id.0.to_string()>
            <div class="hung-line">
                {grip(id, drag)}
                <a class="room-link" href=href>
                    <b>{live(move || name.get())}</b>
                    <small>{live(move || app.way_line(id))}</small>
                    <span class="change">
                        {text::change()} <span class="said">" " {live(move || name.get())}</span>
                    </span>
                </a>
            </div>
            <div role="group" aria-label=label>
                <div class="row-acts">
                    {button_on("", "↑", act(text::earlier()), edit(Draft::move_room_earlier))}
                    {button_on("", "↓", act(text::later()), edit(Draft::move_room_later))}
                </div>
                {when(places, move || choice_field(Choice::Hung(id)))}
                {more}
            </div>
        </li>
    }
    .into_any()
}

fn words_of(name: Memo<String>) -> Signal<String> {
    crate::parts::words(move || name.get())
}

/// By mouse, pen or finger alike. Keys have the buttons, so that it is hidden from those who hear.
fn grip(id: RoomId, drag: Drag) -> AnyView {
    let app = use_app();
    let take = move |event: PointerEvent| {
        event.prevent_default();
        let grip: web_sys::Element = event_target(&event);
        // Without capture the row is merely dropped where the pointer leaves the handle.
        let _ = grip.set_pointer_capture(event.pointer_id());
        drag.room.set(Some(id));
    };
    let pull = move |event: PointerEvent| {
        if drag.room.get_untracked() == Some(id) {
            let over = target_at(event.client_x(), event.client_y());
            if drag.over.get_untracked() != over {
                drag.over.set(over);
            }
            scroll_near_an_edge(event.client_y());
        }
    };
    let drop = move |_: PointerEvent| {
        if let Some(Target { hung, before }) = drag.end() {
            app.edit(EditKey::Single, |draft| draft.place_room(id, hung, before));
        }
    };
    let stop = move |_: PointerEvent| {
        drag.end();
    };
    view! {
        <span
            class="grip"
            aria-hidden="true"
            on:pointerdown=take
            on:pointermove=pull
            on:pointerup=drop
            on:pointercancel=stop
        ></span>
    }
    .into_any()
}

/// What a room dropped there would come before: the row under the pointer by its upper half, the next
/// one by its lower half.
fn target_at(x: i32, y: i32) -> Option<Target> {
    let under = document().element_from_point(x as f32, y as f32)?;
    let list = under.closest("[data-loop]").ok()??;
    let address = list.get_attribute("data-loop")?;
    let (zone, branch) = address.split_once('-')?;
    let hung = Hung { zone: ZoneId(zone.parse().ok()?), branch: branch.parse().ok()? };
    let row = under.closest("[data-room]").ok()?;
    let before = row.and_then(|row| {
        let at = row.get_bounding_client_rect();
        match f64::from(y) < at.top() + at.height() / 2.0 {
            true => Some(row),
            false => row.next_element_sibling(),
        }
    });
    let before = before.and_then(|row| row.get_attribute("data-room")?.parse().ok());
    Some(Target { hung, before: before.map(RoomId) })
}

/// A list longer than the screen moves along.
fn scroll_near_an_edge(y: i32) {
    const EDGE: f64 = 90.0;
    const STEP: f64 = 14.0;
    let height = window().inner_height().ok().and_then(|height| height.as_f64()).unwrap_or(0.0);
    let y = f64::from(y);
    if y < EDGE {
        window().scroll_by_with_x_and_y(0.0, -STEP);
    } else if y > height - EDGE {
        window().scroll_by_with_x_and_y(0.0, STEP);
    }
}

impl App {
    /// The pipe to a room, and its element.
    fn way_line(self, id: RoomId) -> String {
        let system = self.system();
        let way = self.typed(|draft| way_to(draft, id).map(|way| text::way(way, system)));
        let element = self.design(|solved| {
            let (_, design) = solved.as_ref()?;
            Some(design.room(id)?.element.choice.nominal)
        });
        let mut parts: Vec<String> = way.into_iter().collect();
        if let Some(element) = element.filter(|element| *element > Length::ZERO) {
            parts.push(format!("{} {}", in_system(element, system), text::from_elements()));
        }
        parts.join(" · ")
    }
}
