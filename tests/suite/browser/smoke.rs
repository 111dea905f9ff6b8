//! The page opens, takes over from its static shell, and goes on without its server.

use serde_json::json;

use super::axe::axe;
use super::looks::Theme;
use super::page::{Page, View};
use super::visit;

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

#[test]
fn the_start_page_is_open_to_everyone() {
    for view in [View::Narrow, View::Phone, View::Desk] {
        visit(view, |page| {
            page.open("/");
            shows_the_program(page);
            for theme in [Theme::Light, Theme::Dark] {
                page.emulate(theme);
                page.screenshot(&format!("start-{view:?}-{theme:?}").to_lowercase());
                let found: Vec<_> = axe(page).iter().map(ToString::to_string).collect();
                assert!(found.is_empty(), "{view:?}, {theme:?}:\n{}", found.join("\n"));
            }
            assert_eq!(page.sideways(), "", "{view:?}");
        });
    }
}

/// The static shell has the name too; only the program takes its place.
#[track_caller]
fn shows_the_program(page: &Page) {
    page.wait_for("html[data-boot=started]");
    page.wait_for_text("Finrun");
    page.wait_until_gone("Loading");
}
