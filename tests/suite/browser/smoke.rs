//! The page opens, takes over from its static shell, and goes on without its server.

use serde_json::json;

use super::page::{Page, View};
use super::visit;

/// O1, cold.
#[test]
fn the_page_opens_on_a_phone_and_again_without_its_server() {
    visit(View::Phone, |page| {
        page.open("/");
        shows_the_program(page);
        assert_eq!(page.script("return [innerWidth, innerHeight]", vec![]), json!([390, 844]));

        page.wait_for("html[data-offline=ready]");
        page.server.stop();
        page.reload();
        shows_the_program(page);

        // Opened cold on another day, still without a server.
        page.close_and_reopen();
        page.open("/");
        shows_the_program(page);
    });
}

/// The static shell has the name too; only the program takes its place.
#[track_caller]
fn shows_the_program(page: &Page) {
    page.wait_for("html[data-boot=started]");
    page.wait_for_text("Finrun");
    page.wait_until_gone("Loading");
}

/// Before the program, or where it cannot run: what this is, and what it needs.
#[test]
fn without_scripts_the_page_says_what_it_is_and_needs() {
    visit(View::Phone, |page| {
        page.devtools("Emulation.setScriptExecutionDisabled", json!({ "value": true }));
        page.open("/");
        page.wait_for_text("Hot-water fin-tube baseboard for your house");
        page.wait_for_text("needs JavaScript");
        page.wait_for_text("necesita JavaScript");
        let text = page.script("return document.body.innerText", vec![]);
        assert!(!text.to_string().contains("Loading"), "{text}");
    });
}
