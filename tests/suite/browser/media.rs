//! The page as people's systems ask for it: without motion, in colours of their own.

use serde_json::json;

use super::open_to_all::{State, open, show};
use super::page::View;
use super::visit;

#[test]
fn nothing_moves_for_who_wants_no_motion() {
    visit(View::Phone, |page| {
        let places = open(page, State::Results);
        let features = json!([{ "name": "prefers-reduced-motion", "value": "reduce" }]);
        page.devtools("Emulation.setEmulatedMedia", json!({ "features": features }));
        for place in places {
            show(page, State::Results, place);
            let moving = page.script(
                "return document.getAnimations().map((one) => one.effect.target.outerHTML.slice(0, 80))",
                vec![],
            );
            assert_eq!(moving, json!([]), "{place:?}");
        }
        // Held against a page that may move, so that the question is known to see motion.
        page.devtools("Emulation.setEmulatedMedia", json!({ "features": [] }));
        let moving = page.script(
            "document.body.insertAdjacentHTML('beforeend', '<p class=\"spins\">.</p>');
             return document.getAnimations().length",
            vec![],
        );
        assert_eq!(moving, json!(1));
    });
}

/// The browser puts its own colours in place of the page's, but for drawings: what is told apart by a
/// background must be so by something else as well. axe does not know of that.
#[test]
fn forced_colours_leave_the_current_station_and_the_drawings_to_be_seen() {
    const TOLD: &str = "
        const line = (link) => getComputedStyle(link).borderTopColor;
        const here = document.querySelector('.stations a[aria-current]');
        const others = [...document.querySelectorAll('.stations a:not([aria-current])')];
        const light = (colour) => {
            const [r, g, b] = colour.match(/[0-9.]+/g).map((part) => {
                const share = part / 255;
                return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
            });
            return 0.2126 * r + 0.7152 * g + 0.0722 * b;
        };
        const contrast = (one, other) => {
            const [low, high] = [light(one), light(other)].sort((a, b) => a - b);
            return (high + 0.05) / (low + 0.05);
        };
        const paper = getComputedStyle(document.querySelector('main')).backgroundColor;
        const behind = paper === 'rgba(0, 0, 0, 0)' ? getComputedStyle(document.body).backgroundColor : paper;
        const faint = [...document.querySelectorAll('main svg .element, main svg .free, main svg .plaster')]
            .filter((drawn) => contrast(getComputedStyle(drawn).stroke, behind) < 3)
            .map((drawn) => drawn.outerHTML.slice(0, 80));
        return [others.every((other) => line(other) !== line(here)), faint, document.querySelectorAll('main svg').length];";
    visit(View::Phone, |page| {
        let places = open(page, State::Results);
        let mut drawings = 0;
        for theme in ["light", "dark"] {
            let features = json!([
                { "name": "forced-colors", "value": "active" },
                { "name": "prefers-color-scheme", "value": theme },
            ]);
            page.devtools("Emulation.setEmulatedMedia", json!({ "features": features }));
            for place in &places {
                show(page, State::Results, *place);
                let told: (bool, Vec<String>, usize) =
                    serde_json::from_value(page.script(TOLD, vec![]))
                        .expect("the script answers so");
                assert!(told.0, "{theme} {place:?}: no station stands out");
                assert!(told.1.is_empty(), "{theme} {place:?}: {:?}", told.1);
                drawings += told.2;
            }
            page.screenshot(&format!("forced-colours-{theme}"));
        }
        assert!(drawings > 10, "{drawings}");
    });
}
