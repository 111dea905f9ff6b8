//! Undo and redo: whole drafts, because a draft is small and a clone cannot be wrong.

use finrun_engine::job::{Draft, Field};

/// What an edit is about. Edits with the same key in a row become one step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EditKey {
    Field(Field),
    /// A name being typed.
    Name(u32),
    /// What is noted of a step on site, by its place among them.
    Step(usize, Noted),
    /// A step of its own.
    Single,
}

/// One box of what is noted of a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Noted {
    Note,
    Photo,
    Date,
}

/// More steps than anyone goes back.
const DEPTH: usize = 200;

#[derive(Debug, Clone, Default)]
pub struct History {
    past: Vec<Draft>,
    future: Vec<Draft>,
    last: Option<EditKey>,
}

impl History {
    /// Notes that an edit with `key` starts from `before`.
    pub fn note(&mut self, key: EditKey, before: Draft) {
        if self.begun(key).is_none() {
            self.past.push(before);
            if self.past.len() > DEPTH {
                self.past.remove(0);
            }
        }
        self.future.clear();
        self.last = Some(key);
    }

    /// The draft in which the step began that an edit with `key` would go on with.
    pub fn begun(&self, key: EditKey) -> Option<&Draft> {
        let continues = key != EditKey::Single && self.last == Some(key);
        self.past.last().filter(|_| continues)
    }

    pub fn can_undo(&self) -> bool {
        !self.past.is_empty()
    }

    pub fn can_redo(&self) -> bool {
        !self.future.is_empty()
    }

    pub fn undo(&mut self, now: Draft) -> Option<Draft> {
        let before = self.past.pop()?;
        self.future.push(now);
        self.last = None;
        Some(before)
    }

    pub fn redo(&mut self, now: Draft) -> Option<Draft> {
        let after = self.future.pop()?;
        self.past.push(now);
        self.last = None;
        Some(after)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use finrun_engine::job::HouseField;
    use finrun_engine::quantity::System;

    fn named(name: &str) -> Draft {
        Draft::new(name, System::Us)
    }

    #[test]
    fn typing_in_one_field_is_one_step() {
        let field = EditKey::Field(Field::House(HouseField::Outdoors));
        let mut history = History::default();
        history.note(field, named("a"));
        assert_eq!(history.begun(field), Some(&named("a")));
        history.note(field, named("b"));
        assert_eq!(history.begun(field), Some(&named("a")));
        assert_eq!(history.begun(EditKey::Single), None);
        assert_eq!(history.undo(named("c")), Some(named("a")));
        assert_eq!(history.redo(named("a")), Some(named("c")));
        assert!(!history.can_redo());
    }

    #[test]
    fn an_edit_after_undo_ends_the_future() {
        let mut history = History::default();
        history.note(EditKey::Single, named("a"));
        history.undo(named("b"));
        history.note(EditKey::Single, named("a"));
        assert!(!history.can_redo());
    }
}
