//! An assembly of one's own: built of layers, used by a wall, deleted, and brought back.

use super::figures::compare;
use super::page::{Page, View};
use super::place::Place;
use super::solved::solve;
use super::visit;
use crate::support::FOUR_ROOMS;

const LIVING: Place = Place::Room(6);
const LOAD: &str = "[data-figure='plate.load']";
const NAME: &str = "Double stud wall";

fn build(page: &Page) {
    page.press("Own assemblies");
    page.press("Add an assembly");
    page.type_into("Name of the assembly", NAME);
    page.within(NAME, || {
        for (row, material, inches) in
            [("Layer 1", "Drywall", "1/2"), ("Layer 2", "Cellulose", "9"), ("Layer 3", "OSB", "0.5")]
        {
            page.press("Add a layer");
            page.within(row, || {
                let all = page.script(
                    "return [...document.querySelector('fieldset select').options].map((o) => o.label)",
                    vec![],
                );
                let all: Vec<String> = serde_json::from_value(all).expect("a list of names");
                let whole = all.iter().find(|name| name.starts_with(material)).expect(material);
                page.choose("Material", whole);
                page.type_into("Thickness", inches);
            });
        }
        page.within("Layer 2", || page.choose("Placed", "Between studs, joists or rafters"));
        page.choose("Framing", "Studs 24 in on center, insulated corners and headers");
    });
    page.leave();
}

#[test]
fn an_own_assembly_is_built_used_deleted_and_brought_back() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Rooms);
        let before = page.text_of(LOAD);
        build(page);
        page.wait_until_saved();
        let solved = solve(page);
        let id = solved.draft.assemblies[0].id.0;
        compare(page, &solved, Place::Assemblies);
        let u = page.text_of(&format!("[data-figure='assembly-{id}.u']"));
        assert!(u.starts_with("U 0.0"), "9 in of cellulose are more than R-20: {u}");
        assert_eq!(page.text_of(LOAD), before, "nothing is built of it yet");

        page.go(LIVING);
        page.press("South wall");
        page.within("South wall", || {
            // Before the window's list, which has the same name.
            page.press("Remove Window");
            page.choose("Built like", NAME);
            page.wait_for_text(&u);
        });
        page.wait_until_saved();
        let used = page.text_of(LOAD);
        assert_ne!(used, before);
        compare(page, &solve(page), Place::HeatLoss);
        compare(page, &solve(page), Place::Certainty);

        page.go(Place::Assemblies);
        page.press(&format!("Remove {NAME}"));
        page.wait_until_gone(NAME);
        page.wait_for_text("a field cannot be read");
        page.press("Show the field");
        page.wait_for_text("The assembly that it was built of is gone. Choose another, or undo.");
        let wall = "details.surface:has([aria-invalid=true])";
        let said = page.text_of(wall);
        assert!(said.starts_with("South wall"), "{said}");
        assert_eq!(page.texts_of(&format!("{wall} .bad .error")).len(), 1);
        page.go(Place::Rooms);
        let mend = page.text_of(".mend");
        assert!(mend.contains("Living room, South wall, U-value: The assembly"), "{mend}");

        page.press("Undo");
        page.wait_until_gone("The assembly that it was built of is gone");
        assert_eq!(page.text_of(LOAD), used);
        page.go(LIVING);
        page.press("South wall");
        page.within("South wall", || assert_eq!(page.value_of("Built like"), NAME));
        page.wait_until_saved();
        compare(page, &solve(page), Place::Assemblies);
    });
}
