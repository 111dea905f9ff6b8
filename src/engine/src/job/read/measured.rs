//! What was measured: nothing of the job waits for it, but what is typed wrong is said.

use super::Reader;
use crate::job::field::{Field, MeasuredField, SpotField};
use crate::named::Named;

pub(super) fn note_errors(reader: &mut Reader<'_>) {
    let draft = reader.draft;
    let whole = MeasuredField::ALL.iter().map(|&field| Field::Measured(field));
    let of_rooms = draft
        .rooms
        .iter()
        .flat_map(|room| SpotField::ALL.iter().map(move |&field| Field::Spot(room.id, field)));
    for field in whole.chain(of_rooms) {
        if draft.entry(field).is_some() {
            reader.si(field);
        }
    }
}
