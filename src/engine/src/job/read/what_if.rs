//! Changes that are only weighed: nothing of the job waits for them, but what is wrong with them is
//! said.

use super::{Problem, Reader};
use crate::job::draft::UValue;
use crate::job::field::{ChangeField, Field};
use crate::job::what_if::{ChangeDraft, ChangeKind, Counted, Whose};

pub(super) fn note_errors(reader: &mut Reader<'_>) {
    let draft = reader.draft;
    for change in &draft.what_if {
        note(reader, change);
    }
}

fn note(reader: &mut Reader<'_>, change: &ChangeDraft) {
    let field = |field| Field::Change(change.id, field);
    let typed = |reader: &Reader<'_>, at| reader.draft.entry(at).is_some();
    if typed(reader, field(ChangeField::Cost)) {
        reader.si(field(ChangeField::Cost));
    }
    // Of one that is off nothing is missing.
    for &at in change.asked() {
        if change.counted == Counted::On || typed(reader, field(at)) {
            reader.si(field(at));
        }
    }
    if change.counted == Counted::Off {
        return;
    }
    let known = match change.whose {
        Whose::House => change.kind != ChangeKind::RoomLike,
        Whose::Room(id) if change.kind == ChangeKind::RoomLike => {
            reader.draft.rooms.iter().any(|room| room.id == id)
        }
        Whose::Room(id) => !change.kind.has_whose() || reader.draft.room(id).is_some(),
    };
    if !known {
        reader.fail(field(ChangeField::Whose), Problem::RoomGone);
    }
    if let (Some(_), UValue::Own(id)) = (change.kind.used(), change.build)
        && reader.draft.assembly(id).is_none()
    {
        reader.fail(field(ChangeField::U), Problem::AssemblyGone);
    }
}
