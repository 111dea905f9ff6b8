//! What a person does with a page.

use std::path::Path;

use fantoccini::elements::Element;
use fantoccini::error::CmdError;
use fantoccini::key::Key;
use serde_json::{Value, json};

use super::find::Kind;
use super::page::Page;

impl Page {
    /// Everything that `act` does, it does within the part of the page under this heading.
    pub(super) fn within<T>(&self, heading: &str, act: impl FnOnce() -> T) -> T {
        self.parts.borrow_mut().push(heading.to_owned());
        let outcome = act();
        self.parts.borrow_mut().pop();
        outcome
    }

    /// Types in place of whatever a field holds. The field keeps the focus, as a person's would.
    #[track_caller]
    pub(super) fn type_into(&self, label: &str, text: &str) {
        self.steps.set(self.steps.get() + 1);
        self.wait(&format!("typing into {label}"), || {
            let field = self.find(Kind::Field, label)?;
            self.wait_on(async {
                field.click().await?;
                self.client.execute("arguments[0].select()", vec![json!(field)]).await?;
                match text {
                    "" => field.send_keys(&String::from(char::from(Key::Delete))).await,
                    text => field.send_keys(text).await,
                }
            })
            .map_err(in_words)
        });
    }

    #[track_caller]
    pub(super) fn press(&self, name: &str) {
        self.steps.set(self.steps.get() + 1);
        self.wait(&format!("pressing {name}"), || {
            let button = self.find(Kind::Button, name)?;
            self.wait_on(button.click()).map_err(in_words)
        });
    }

    #[track_caller]
    pub(super) fn choose(&self, label: &str, option: &str) {
        self.steps.set(self.steps.get() + 1);
        self.wait(&format!("choosing {option} from {label}"), || {
            let list = self.find(Kind::List, label)?;
            let script =
                "return [...arguments[0].options].findIndex((o) => o.label === arguments[1])";
            let found = self.client.execute(script, vec![json!(list), json!(option)]);
            let found = self.wait_on(found).map_err(in_words)?;
            let index = found.as_u64().ok_or("it is not on the list")?;
            self.wait_on(list.select_by_index(index as usize)).map_err(in_words)
        });
    }

    /// Gives a file to the page, as by its file picker.
    #[track_caller]
    pub(super) fn give_file(&self, label: &str, file: &Path) {
        self.wait(&format!("giving a file to {label}"), || {
            let field = self.find(Kind::File, label)?;
            self.wait_on(field.send_keys(&file.display().to_string())).map_err(in_words)
        });
    }

    /// A key pressed wherever the focus stands; `Key::Tab` leaves a field.
    #[track_caller]
    pub(super) fn press_key(&self, key: Key) {
        self.press_keys(&String::from(char::from(key)));
    }

    /// Keys pressed one after the other, the modifiers among them held to the end.
    #[track_caller]
    pub(super) fn press_keys(&self, keys: &str) {
        let pressed = self.wait_on(async {
            let focus = self.client.active_element().await?;
            focus.send_keys(keys).await
        });
        self.asked("a key", pressed);
    }

    /// Leaves a field as by the key of a phone's keyboard that puts the keyboard away.
    #[track_caller]
    pub(super) fn leave(&self) {
        self.script("document.activeElement.blur()", Vec::new());
    }

    /// What a field or a list holds, as it stands there.
    #[track_caller]
    pub(super) fn value_of(&self, label: &str) -> String {
        self.wait(&format!("reading {label}"), || {
            let found = self.find(Kind::Field, label).or_else(|missing| {
                self.find(Kind::List, label).map_err(|also| format!("{missing}; {also}"))
            })?;
            self.held(&found)
        })
    }

    fn held(&self, element: &Element) -> Result<String, String> {
        let script = "const [e] = arguments; return e.selectedOptions?.[0]?.label ?? e.value";
        let held = self.wait_on(self.client.execute(script, vec![json!(element)]));
        match held.map_err(in_words)? {
            Value::String(text) => Ok(text),
            other => Err(format!("it holds {other}")),
        }
    }
}

/// The driver's own sentence, without its trace of addresses in memory.
fn in_words(error: CmdError) -> String {
    match error {
        CmdError::Standard(answer) => answer.message.lines().next().unwrap_or_default().to_owned(),
        other => other.to_string(),
    }
}
