//! The words of lists to choose from.

use super::{Book, in_both};
use crate::support::{V2_FIXTURE, choices, open};
use finrun_engine::building::AssemblyId;
use finrun_engine::job::{LayerMaterial, Pick, UValue};
use finrun_text as text;
use std::collections::BTreeSet;

/// Each list of a job by its label, with whatever may be picked from it.
#[test]
fn lists_and_what_is_on_them() {
    let mut draft = open(V2_FIXTURE);
    // Names stand as they were typed, in whatever language.
    draft.rooms.iter_mut().chain(&mut draft.spaces).for_each(|room| room.name.clear());
    draft.assemblies.iter_mut().for_each(|assembly| assembly.name.clear());
    let tell = |book: &mut Book| {
        let mut seen = BTreeSet::new();
        for choice in choices(&draft) {
            // One of each kind: every wall has the same lists.
            let name = format!("{choice:?}");
            let name = name.split('(').next().unwrap_or_default();
            if seen.insert(name.to_string()) {
                book.add(name, text::choice_label(choice));
            }
            for pick in draft.picks(choice) {
                let words = text::pick(&draft, pick);
                // Long lists have their names in another book.
                match pick {
                    Pick::Build(UValue::Listed(assembly)) => {
                        assert_eq!(words, text::assembly(assembly))
                    }
                    Pick::LayerMaterial(LayerMaterial::Listed(material)) => {
                        assert_eq!(words, text::material(material));
                    }
                    _ => {
                        let key = format!("{name} {pick:?}");
                        if seen.insert(key.clone()) {
                            book.add(key, words);
                        }
                    }
                }
            }
        }
        // An assembly that is gone stays on its list.
        let gone = Pick::Build(UValue::Own(AssemblyId(9999)));
        book.add(format!("{gone:?}"), text::pick(&draft, gone));
    };
    insta::assert_snapshot!(in_both(tell));
}
