//! No word of ours is cut on a drawing, in any language; names that people type may be.

use super::all;
use super::tests::{drawings_of, pieces, read_text, sheet_jobs, solve};
use finrun_engine::job::Draft;
use finrun_text::{DecimalMark, Language, speak};

/// The same job with names that fit anywhere.
fn with_short_names(mut draft: Draft) -> Draft {
    for (at, room) in draft.rooms.iter_mut().chain(&mut draft.spaces).enumerate() {
        room.name = format!("R{at}");
    }
    draft.zones.iter_mut().for_each(|zone| zone.name.clear());
    draft
}

#[test]
fn no_word_of_ours_is_cut() {
    let folder = std::env::var("FINRUN_DRAWINGS").ok();
    let mut all_cut = Vec::new();
    for language in Language::ALL {
        speak(language, DecimalMark::Comma);
        for (name, draft) in sheet_jobs() {
            let draft = with_short_names(draft);
            let (job, design) = solve(&draft);
            let mut drawn = drawings_of(&draft, &job, &design).concat();
            drawn += &all::draw(&draft, &job, &design, draft.units);
            if let Some(folder) = &folder {
                let file = format!("{folder}/{}-{name}.html", language.tag());
                std::fs::write(file, &drawn).expect("a folder to write to");
            }
            let cut = pieces(&drawn).filter(|piece| piece.tag == "text");
            let cut = cut.map(|piece| read_text(&piece)).filter(|text| text.contains('…'));
            all_cut.extend(cut.map(|text| format!("{language:?}, {name}: {text}")));
        }
    }
    speak(Language::English, DecimalMark::Point);
    assert!(all_cut.is_empty(), "{}", all_cut.join("\n"));
}
