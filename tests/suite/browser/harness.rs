//! The harness itself: a test that cannot fail would prove nothing about the page.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;
use std::time::Duration;

use fantoccini::key::Key;
use serde_json::json;

use super::axe::axe;
use super::looks::Theme;
use super::page::{Page, View};
use super::visit;

/// A page for these tests, in place of the blank one, that writes down what happens to it.
const PREPARE: &str = "
    document.body.innerHTML = arguments[0];
    for (const event of ['input', 'click', 'change', 'blur'])
      document.addEventListener(event, ({ type, target }) => {
        document.querySelector('output').textContent += `${type}:${target.value || target.textContent} `;
      }, true);";

fn with_prepared(act: impl FnOnce(&mut Page)) {
    visit(View::Narrow, |page| {
        page.script(PREPARE, vec![json!(include_str!("harness.html"))]);
        act(page);
    });
}

#[test]
fn a_person_finds_things_by_their_words_and_place() {
    with_prepared(|page| {
        page.within("Kitchen", || {
            page.within("Window", || {
                page.type_into("Width", "3' 6½\"");
                page.press("Two panes");
                assert_eq!(page.value_of("Width"), "3' 6½\"");
            });
            page.choose("Wall", "2x4, filled");
            assert_eq!(page.value_of("Wall"), "2x4, filled");
        });
        page.type_into("Width ft", "9");
        page.press_key(Key::Tab);
        page.within("Hall", || page.press("Remove"));
        let happened = page.text_of("output");
        for event in
            ["input:3", "blur:9", "change:2x4, filled", "click:2 ", "click:Remove the hall"]
        {
            assert!(happened.contains(event), "{event} in {happened}");
        }
        assert_eq!(page.value_of("Width ft"), "9", "typed in place of what stood there");
        assert_eq!(page.texts_of("section").len(), 2);
    });
}

#[test]
fn what_is_not_there_fails_with_what_is() {
    with_prepared(|page| {
        page.patience = Duration::from_millis(200);
        let page: &Page = page;
        let check = |act: fn(&Page), expected: &str| {
            let panic = catch_unwind(AssertUnwindSafe(|| act(page))).expect_err(expected);
            let message = panic.downcast_ref::<String>().map_or("", String::as_str);
            assert!(message.contains(expected), "{expected} in {message}");
            let picture = message.lines().find_map(|line| line.trim().strip_prefix("picture: "));
            // Here it is no sign of trouble, and would look like one later.
            std::fs::remove_file(picture.expect(message)).expect("the picture was kept");
        };
        check(|page| page.press("Remove"), "2 buttons are called \"Remove\"");
        check(|page| page.press("Add"), "the button \"Add\" is disabled");
        check(|page| page.press("Add a door"), "no buttons are called \"Add a door\"");
        check(|page| page.type_into("Depth", "1"), "there are \"Width ft\", \"Width\"");
        check(|page| page.choose("Wall", "brick"), "choosing brick from Wall");
        check(|page| page.within("Attic", || page.press("Add")), "no parts of the page");
        check(|page| page.wait_for_text("Attic"), "the page does not show it");
        check(|page| page.wait_until_gone("Kitchen"), "the page still shows it");
        check(|page| page.wait_for("table"), "nothing visible is there");
    });
}

#[test]
fn nothing_is_left_unsaid_at_the_end() {
    let page = Page::start(View::Desk);
    page.open("/fonts/OFL.txt");
    page.script(
        "console.error('a fault'); return fetch('http://127.0.0.1:9/').catch(() => {})",
        vec![],
    );
    let complaints = page.close();
    let told = |words: &str| complaints.iter().any(|complaint| complaint.contains(words));
    assert!(told("a fault"), "{complaints:?}");
    assert!(told("asked of another origin: http://127.0.0.1:9/"), "{complaints:?}");
}

#[test]
fn a_page_is_seen_in_its_size_and_theme_and_judged() {
    with_prepared(|page| {
        let sizes = page.script("return [innerWidth, innerHeight, devicePixelRatio]", vec![]);
        assert_eq!(sizes, json!([320, 640, 2]));
        for (theme, dark) in [(Theme::Dark, true), (Theme::Light, false)] {
            page.emulate(theme);
            let seen =
                page.script("return matchMedia('(prefers-color-scheme: dark)').matches", vec![]);
            assert_eq!(seen, json!(dark), "{theme:?}");
        }
        let rules: Vec<_> = axe(page).into_iter().map(|violation| violation.rule).collect();
        assert!(rules.contains(&"document-title".to_owned()), "{rules:?}");
        let pdf = std::fs::read(page.print_pdf("harness")).expect("the print is kept");
        assert!(pdf.starts_with(b"%PDF-"));
    });
}

#[test]
fn files_go_in_and_come_out() {
    visit(View::Desk, |page| {
        page.open("/");
        let picker = "document.body.innerHTML = '<label>A job<input type=file></label><a download=job.txt>Save</a>';
            const [input, link] = document.body.querySelectorAll('input, a');
            input.onchange = () => { link.href = URL.createObjectURL(input.files[0]); };";
        page.script(picker, vec![]);
        let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("Cargo.toml");
        page.give_file("A job", &file);
        page.press("Save");
        assert_eq!(
            page.downloaded("job.txt"),
            std::fs::read(&file).expect("this crate has a manifest")
        );
    });
}

#[test]
fn what_is_stored_is_there_on_another_day() {
    visit(View::Phone, |page| {
        page.open("/");
        page.script("localStorage.setItem('a', 'kept')", vec![]);
        page.close_and_reopen();
        page.server.stop();
        page.server.start_again();
        page.open("/");
        assert_eq!(page.script("return localStorage.getItem('a')", vec![]), json!("kept"));
        let asked = page.requests();
        assert!(asked.iter().any(|url| url.ends_with("/style.css")), "{asked:?}");
    });
}
