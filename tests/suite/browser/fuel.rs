//! Fuel bills by date: typed, named where they overlap, and held against the calculated house.

use serde_json::json;

use super::figures::compare;
use super::jobs::{file, whole_draft};
use super::page::{Page, View};
use super::place::Place;
use super::solved::solve;
use super::visit;

/// Month, day and year as the box of an American browser takes them, then therms.
const BILLS: [(&str, &str, &str); 4] = [
    ("11012024", "12052024", "94"),
    ("12052024", "01072025", "138"),
    ("01072025", "02062025", "149"),
    ("05102025", "06122025", "22"),
];

/// Types a date, digit by digit, as a person would into the box of the browser.
fn date(page: &Page, bill: &str, label: &str, digits: &str) {
    page.wait(&format!("the box {label} of {bill}"), || {
        let focus = "const [bill, label] = arguments;
            const part = [...document.querySelectorAll('fieldset')]
              .find((part) => part.querySelector('legend').innerText === bill);
            const box = [...part?.querySelectorAll('input') ?? []]
              .find((box) => box.labels[0].innerText === label);
            box?.focus(); return document.activeElement === box";
        match page.script(focus, vec![json!(bill), json!(label)]) == json!(true) {
            true => Ok(()),
            false => Err("it does not take the focus".to_owned()),
        }
    });
    page.press_keys(digits);
    // On the way to a year lie many that are wrong; nothing is said of them.
    let told = page.texts_of("fieldset .error");
    assert_eq!(told, [""; 0], "{bill}, {label}");
    page.leave();
}

#[test]
fn bills_are_typed_by_date_and_held_against_the_house() {
    visit(View::Phone, |page| {
        let (mut draft, _) = whole_draft();
        draft.bills = Default::default();
        page.open_job(&file(draft), Place::HeatLoss);
        page.press("Against the bills");
        page.wait_for_text("Add the fuel bills of a winter");
        for (index, (from, to, therms)) in BILLS.iter().enumerate() {
            let bill = format!("Bill {}", index + 1);
            page.press("Add a bill");
            // One bill begins where the last ended.
            let begins = page.within(&bill, || page.value_of("From"));
            assert_eq!(begins.is_empty(), index == 0, "{bill} begins {begins:?}");
            date(page, &bill, "From", from);
            date(page, &bill, "To", to);
            page.within(&bill, || page.type_into("Amount", therms));
        }
        page.leave();
        page.wait_for_text("By its bills the house loses");
        page.wait_until_saved();
        let solved = solve(page);
        let ends: Vec<_> = solved.draft.bills.list.iter().map(|bill| bill.to.as_str()).collect();
        assert_eq!(ends, ["2024-12-05", "2025-01-07", "2025-02-06", "2025-06-12"]);
        compare(page, &solved, Place::Bills);
        let said = page.text_of("[data-figure='bills']");

        // The third begins before the second ends.
        date(page, "Bill 3", "From", "01012025");
        page.wait_for_text(
            "These days are on bill 2 too. Let one bill end on the day the next begins.",
        );
        let third = "fieldset:has([aria-invalid=true])";
        assert!(page.text_of(third).starts_with("Bill 3"), "{}", page.text_of(third));
        // Nothing else waits for it.
        assert_eq!(page.texts_of(".plate.stale"), [""; 0]);
        page.go(Place::Rooms);
        let mend = page.text_of(".mend");
        assert!(mend.contains("Bill 3, From: These days are on bill 2 too."), "{mend}");
        page.press("Bill 3, From");
        page.wait("the focus in the third bill", || {
            let id = page.script("return document.activeElement.id", vec![]);
            let id = id.as_str().unwrap_or_default().to_owned();
            if id.ends_with(".from") { Ok(()) } else { Err(format!("it is in {id:?}")) }
        });
        date(page, "Bill 3", "From", "01072025");
        page.wait_until_gone("These days are on bill 2 too");
        page.wait("the same result as before", || {
            let now = page.text_of("[data-figure='bills']");
            if now == said { Ok(()) } else { Err(now) }
        });

        // A bill that ends before it begins, and one that is removed.
        date(page, "Bill 4", "To", "04012025");
        page.wait_for_text("The bill ends before it begins. Correct one of the two days.");
        page.press("Remove Bill 1");
        page.wait_until_gone("Bill 4");
        assert!(page.text_of(third).starts_with("Bill 3"), "its number has moved up");
        page.press("Undo");
        page.press("Undo");
        page.wait_until_gone("The bill ends before it begins");
        page.wait_until_saved();
        compare(page, &solve(page), Place::Bills);
    });
}
