//! The assumptions, numbered: the methods of this job, then every default that stands for a blank.

use super::Seen;
use super::inputs::shown;
use crate::markup::Markup;
use finrun_engine::building::RoomId;
use finrun_engine::job::{self, Draft, Field, InputOrigin};
use finrun_text as text;

pub(super) fn assumptions(out: &mut Markup, seen: &Seen<'_>) {
    out.leaf("h2", &[], text::report_assumptions());
    out.leaf("p", &[], text::assumptions_note());
    out.open("ol", &[("class", "assumptions")]);
    for method in text::methods(seen.draft, seen.system) {
        out.leaf("li", &[], &method);
    }
    for default in defaults(seen) {
        let places: Vec<String> = default
            .places
            .iter()
            .map(|&(room, count)| text::times_in(count, &text::room_name(seen.draft, room)))
            .collect();
        out.leaf("li", &[], &text::assumption(&default.label, &default.shown, &places));
    }
    out.close("ol");
}

/// One value that stands for blanks of one kind.
struct Default {
    label: String,
    shown: String,
    /// The rooms with such blanks, and how many each has; none for what the whole house shares.
    places: Vec<(RoomId, usize)>,
}

/// Blanks of one kind that take one value are one assumption, wherever they are.
fn defaults(seen: &Seen<'_>) -> Vec<Default> {
    let mut all: Vec<Default> = Vec::new();
    for input in job::inputs(seen.draft) {
        if input.origin != InputOrigin::Assumed {
            continue;
        }
        let (label, shown) = match text::without_number(input.field) {
            Some(label) => (label.to_string(), String::new()),
            None => (kind(seen.draft, input.field), shown(input.value, seen.system)),
        };
        let known = all.iter().position(|one| one.label == label && one.shown == shown);
        let at = known.unwrap_or_else(|| {
            all.push(Default { label, shown, places: Vec::new() });
            all.len() - 1
        });
        let room = match input.field {
            Field::Room(room, _)
            | Field::Leg(room, ..)
            | Field::Surface(room, ..)
            | Field::Opening(room, ..) => room,
            _ => continue,
        };
        match all[at].places.iter_mut().find(|(of, _)| *of == room) {
            Some((_, count)) => *count += 1,
            None => all[at].places.push((room, 1)),
        }
    }
    all
}

/// What is alike in several rooms: a label, of an opening or a step with its kind. What the whole house
/// shares is named with what it belongs to.
fn kind(draft: &Draft, field: Field) -> String {
    let label = text::whole_label(field);
    let of = match field {
        Field::Opening(room, surface, opening, _) => {
            draft.opening(room, surface, opening).map(|of| text::opening_kind(of.kind))
        }
        Field::Leg(room, row, _) => {
            let leg = draft.room(room).and_then(|room| room.route.get(row));
            leg.map(|leg| text::leg_kind(leg.kind))
        }
        Field::Room(..) | Field::Surface(..) => None,
        _ => return text::owned_label(draft, field),
    };
    match of {
        Some(of) => text::of_kind(label, of),
        None => label.to_string(),
    }
}
