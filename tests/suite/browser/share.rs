//! A job travels as a link and as a QR code; opening one shows it first and replaces nothing.

use super::jobs::many_rooms;
use super::page::{Page, View};
use super::place::Place;
use super::visit;
use crate::support::{FOUR_ROOMS, open};
use serde_json::json;

const NAME: &str = "Four rooms, worked by hand (invented numbers)";

/// O9.
#[test]
fn a_link_and_its_code_bring_the_job_to_another_browser() {
    let link = travels(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Share);
        let link = wait_for_link(page);
        assert_eq!(read_code(page), link, "read by rqrr, a QR reader of its own");
        (link, page.stored("given"))
    });
    let (link, stored) = link;
    visit(View::Phone, |page| {
        page.open("/");
        page.wait_for("html[data-boot=started]");
        offer(page, &link);
        page.wait_for_text(NAME);
        page.wait_for_text("4 rooms, 1 zone");
        assert_eq!(jobs(page), 0, "not kept before it is wished");
        page.press("Keep it among my jobs");
        page.wait_for_text("Rooms, in the order");
        assert!(open(&page.stored(&page.job_key())) == open(&stored), "the same job");
        // Once more: both are kept.
        offer(page, &link);
        page.wait_for_text("You have a job of this name already");
        page.press("Keep it among my jobs");
        page.wait_for_text("Rooms, in the order");
        assert_eq!(jobs(page), 2);
    });
}

/// O10. The windows of the system are not opened in tests: what would be handed to them is.
#[test]
fn o10_a_file_goes_by_every_way_the_device_has() {
    const PICKER: &str = "window.kept = {};
        window.fails = null;
        window.showSaveFilePicker = async ({ suggestedName }) => {
          if (window.fails) throw window.fails;
          return { createWritable: async () => ({
            write: async (text) => { window.written = text; },
            close: async () => { window.kept[suggestedName] = window.written; },
          }) };
        };
        navigator.canShare = ({ files }) => files.length === 1 && files[0].type === 'text/plain';
        navigator.share = async ({ files: [file] }) => { window.kept[file.name] = await file.text(); };";
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Rooms);
        page.type_into("Name of the job", "Out and back");
        page.wait_until_saved();
        let stored = page.stored("given");
        page.script(PICKER, vec![]);
        page.open("/#/job/given/share");
        let kept = |page: &Page, name: &str| {
            page.wait(&format!("{name} is handed over"), || {
                match page.script("return window.kept[arguments[0]] ?? null", vec![json!(name)]) {
                    serde_json::Value::Null => Err("not yet".to_owned()),
                    text => Ok(text),
                }
            })
        };
        page.press("Choose where to keep it");
        assert_eq!(kept(page, "Out-and-back.finrun.json"), stored);
        page.wait_for_text("The file is kept where you chose");
        page.press("Send the file");
        assert_eq!(kept(page, "Out-and-back.finrun.txt"), stored);
        page.press("Download");
        assert_eq!(String::from_utf8_lossy(&page.downloaded("Out-and-back.finrun.json")), stored);

        page.script("window.fails = new DOMException('no room', 'QuotaExceededError')", vec![]);
        page.press("Choose where to keep it");
        page.wait_for_text("The file was not kept (no room).");
        // Whoever closes the window of files has nothing to be told.
        page.script("window.fails = new DOMException('closed', 'AbortError')", vec![]);
        page.press("Choose where to keep it");
        page.wait_until_gone("The file was not kept");
    });
}

/// O9: the inflated size is capped.
#[test]
fn a_broken_or_swollen_link_changes_nothing() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Share);
        let link = wait_for_link(page);
        let damaged = "The link is damaged: it was cut off or changed on its way.";
        for (broken, said) in [
            (link[..link.len() - 40].to_owned(), damaged),
            (link.replace("#/open/", "#/open/_-"), damaged),
            (before_payload(&link) + "%25%3Cscript%3E", damaged),
            (before_payload(&link) + &page_packs(page, "' '.repeat(5e7)"), "too large"),
            (before_payload(&link) + &page_packs(page, "'{\"finrun\":99}'"), "newer"),
            (before_payload(&link) + &page_packs(page, "'[' .repeat(1e6)"), "no Finrun job"),
        ] {
            offer(page, &broken);
            page.wait(&format!("{said:?} for {broken:.80}"), || {
                let shown = page.text_of("[role=alert]");
                shown.contains(said).then_some(()).ok_or(shown)
            });
        }
        assert_eq!(jobs(page), 1);
    });
}

#[test]
fn forty_rooms_fit_a_link_and_the_page_says_whether_they_fit_a_code() {
    visit(View::Phone, |page| {
        page.open_job(&many_rooms(40), Place::Share);
        let link = wait_for_link(page);
        println!("40 rooms: {} letters", link.len());
        assert!(link.len() < 8000, "{}", link.len());
        // A QR code of the largest size holds 2,953 bytes (ISO/IEC 18004, from memory).
        match link.len() <= 2953 {
            true => assert_eq!(read_code(page), link),
            false => page.wait_for_text("The job is too long for a QR code"),
        }
    });
}

/// As [`visit`], with something to bring along.
fn travels<T>(view: View, act: impl FnOnce(&mut Page) -> T) -> T {
    let mut brought = None;
    visit(view, |page| brought = Some(act(page)));
    brought.expect("the visit has ended")
}

fn jobs(page: &Page) -> u64 {
    let script = "return Object.keys(localStorage).filter(k => k.startsWith('finrun.job.')).length";
    page.script(script, vec![]).as_u64().expect("a count")
}

fn wait_for_link(page: &Page) -> String {
    page.wait("the link", || match page.value_of("Link") {
        link if link.is_empty() => Err("none yet".to_owned()),
        link => Ok(link),
    })
}

/// Opens a link, of whatever server, on the server of this page.
fn offer(page: &Page, link: &str) {
    let (_, hash) = link.split_once('#').expect("a link with a #");
    page.script("location.hash = arguments[0]", vec![json!(hash)]);
}

fn before_payload(link: &str) -> String {
    let (before, _) = link.split_once("#/open/").expect("a link");
    format!("{before}#/open/")
}

/// Some text packed as a link packs it, by the browser and without the program.
fn page_packs(page: &Page, text: &str) -> String {
    let script = format!(
        "return (async () => {{
            const through = new Blob([{text}]).stream().pipeThrough(new CompressionStream('deflate-raw'));
            const bytes = new Uint8Array(await new Response(through).arrayBuffer());
            let latin = '';
            for (const byte of bytes) latin += String.fromCharCode(byte);
            return btoa(latin).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
        }})()"
    );
    page.script(&script, vec![]).as_str().expect("text").to_owned()
}

/// What stands in the drawn code.
fn read_code(page: &Page) -> String {
    page.wait_for(".code svg");
    let drawn = page.script(
        "const svg = document.querySelector('.code svg');
         return [svg.viewBox.baseVal.width, svg.querySelector('path').getAttribute('d')]",
        vec![],
    );
    let size = drawn[0].as_u64().expect("a size") as usize;
    let mut dark = vec![false; size * size];
    let path = drawn[1].as_str().expect("a path").to_owned();
    for square in path.split('M').skip(1) {
        let place = square.strip_suffix("h1v1h-1z").expect("a square of one");
        let (x, y) = place.split_once(' ').expect("two numbers");
        let at = |text: &str| text.parse::<usize>().expect("a whole number");
        dark[at(y) * size + at(x)] = true;
    }
    let scale = 4;
    let mut image =
        rqrr::PreparedImage::prepare_from_greyscale(size * scale, size * scale, |x, y| {
            if dark[y / scale * size + x / scale] { 0 } else { 255 }
        });
    let codes = image.detect_grids();
    let [code] = codes.as_slice() else { panic!("{} codes", codes.len()) };
    let (_, text) = code.decode().expect("a code that can be read");
    text
}
