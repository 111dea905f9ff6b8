//! Finding what a person points at, by the words on the page.

use fantoccini::elements::Element;
use serde_json::{Value, json};

use super::page::Page;

/// The key under which WebDriver names an element, from its standard.
const ELEMENT: &str = "element-6066-11e4-a52e-4f735466cecf";

#[derive(Clone, Copy, Debug)]
pub(super) enum Kind {
    Field,
    List,
    /// Whatever is pressed: buttons, links, tabs, and choices by their label.
    Button,
    File,
}

impl Kind {
    fn word(self) -> &'static str {
        match self {
            Self::Field => "field",
            Self::List => "list",
            Self::Button => "button",
            Self::File => "file",
        }
    }
}

impl Page {
    /// The one element of this kind with this name within the parts looked at, or why there is none.
    pub(super) fn find(&self, kind: Kind, name: &str) -> Result<Element, String> {
        let arguments = vec![json!(kind.word()), json!(name), json!(*self.parts.borrow())];
        let answer = self
            .wait_on(self.client.execute(include_str!("find.js"), arguments))
            .map_err(|error| error.to_string())?;
        match &answer["target"][ELEMENT] {
            Value::String(id) => {
                Ok(Element::from_element_id(self.client.clone(), id.clone().into()))
            }
            _ => Err(answer["why"].as_str().unwrap_or("the page did not answer").to_owned()),
        }
    }
}
