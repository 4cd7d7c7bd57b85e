//! What the phone can do, against a real browser. What headless browsers lack is stood in for.
#![cfg(target_arch = "wasm32")]
use fivebar_web::phone::{awake, buzz, draft, files, format, installed, now, prefs, print, share, shell, tabs, theme, visible};
use js_sys::Promise;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_test::*;
wasm_bindgen_test_configure!(run_in_browser);

fn script(text: &str) -> JsValue {
    js_sys::eval(text).unwrap()
}
fn said(text: &str) -> String {
    script(text).as_string().unwrap_or_default()
}
async fn a_moment(ms: i32) {
    let wait = Promise::new(&mut |yes, _| {
        web_sys::window().unwrap().set_timeout_with_callback_and_timeout_and_arguments_0(&yes, ms).unwrap();
    });
    JsFuture::from(wait).await.unwrap();
}

#[wasm_bindgen_test]
fn preferences_are_kept_and_forgotten() {
    assert!(prefs::Pref::Hand.set("left"));
    assert_eq!(prefs::Pref::Hand.get().as_deref(), Some("left"));
    prefs::Pref::Hand.forget();
    assert_eq!(prefs::Pref::Hand.get(), None);
}

#[wasm_bindgen_test]
fn drafts_are_kept_by_field_and_can_be_lifted_out_of_the_page() {
    assert!(draft::keep("price", "12,5"));
    assert_eq!(draft::kept("price").as_deref(), Some("12,5"));
    let lifted = draft::lift_all();
    assert_eq!(lifted, [("price".to_owned(), "12,5".to_owned())]);
    assert_eq!(said("JSON.stringify(sessionStorage)"), "{}", "nothing is left for the buyer's face");
    draft::lay_back(&lifted);
    assert_eq!(draft::kept("price").as_deref(), Some("12,5"));
    draft::throw_away("price");
    assert_eq!(draft::kept("price"), None);
}

#[wasm_bindgen_test]
fn time_and_chance_come_from_the_platform() {
    assert!(now::moment() > 1_700_000_000_000);
    assert!((-14 * 60..=14 * 60).contains(&now::offset_minutes(now::moment())));
    assert_ne!(now::chance(), now::chance());
}

#[wasm_bindgen_test]
async fn tabs_hear_each_other_and_not_themselves() {
    let heard: Rc<RefCell<Vec<(u8, tabs::Word)>>> = Rc::default();
    let ear = |who| {
        let heard = heard.clone();
        move |word| heard.borrow_mut().push((who, word))
    };
    let (one, two) = (tabs::Tabs::join("talk", ear(1)), tabs::Tabs::join("talk", ear(2)));
    one.tell(tabs::Word::Grew);
    a_moment(50).await;
    two.tell(tabs::Word::Removed);
    a_moment(50).await;
    assert_eq!(*heard.borrow(), [(2, tabs::Word::Grew), (1, tabs::Word::Removed)]);
}

#[wasm_bindgen_test]
fn figures_are_exact_and_written_as_the_language_has_them() {
    let english = format::Figures::new("en-GB");
    assert_eq!(english.number("12345678901234567.25", 2, 2), "12,345,678,901,234,567.25", "no float on the way");
    assert_eq!(english.number("0.125", 0, 2), "0.13");
    assert_eq!(english.money("1250.5", "EUR"), "€1,250.50");
    assert_eq!(english.money("1250", "JPY"), "¥1,250");
    let german = format::Figures::new("de-DE");
    assert_eq!(german.number("1250.5", 1, 1), "1.250,5");
    assert_eq!((german.decimal_sign(), german.thousands_sign()), (',', Some('.')));
    assert_eq!((english.decimal_sign(), english.thousands_sign()), ('.', Some(',')));
    assert_eq!(format::Figures::new("fr-FR").thousands_sign(), Some('\u{202f}'));
    assert!(!format::locale().is_empty());
}

#[wasm_bindgen_test]
fn moments_are_written_by_the_clock_of_their_own_place() {
    let english = format::Figures::new("en-GB");
    let ms = 1_795_599_720_000; // 2026-11-25 09:42 world time
    assert_eq!(english.moment(format::Moment::Clock, ms, 0), "09:42");
    assert_eq!(english.moment(format::Moment::Clock, ms, 345), "15:27");
    assert_eq!(english.moment(format::Moment::Day, ms, -600), "24 Nov 2026");
    assert_eq!(english.moment(format::Moment::Weekday, ms, 0), "Wed 25 Nov");
}

#[wasm_bindgen_test]
fn what_the_platform_does_not_know_is_written_all_the_same() {
    let odd = format::Figures::new("not a language");
    assert_eq!(odd.number("1250.5", 1, 1), "1,250.5");
    assert_eq!(odd.money("12", "not a currency"), "12");
    assert_eq!(format::Figures::new("en").plural(1), format::Plural::One);
    assert_eq!(format::Figures::new("pl").plural(3), format::Plural::Few);
    assert_eq!(format::Figures::new("ja").plural(1), format::Plural::Other);
}

/// A share sheet that takes files whose name ends in `takes`, and then does `does`.
fn sheet(takes: &str, does: &str) {
    script(&format!(
        "window.__given = [];
         Object.defineProperty(navigator, 'canShare', {{ configurable: true, value: (d) => d.files[0].name.endsWith('{takes}') }});
         Object.defineProperty(navigator, 'share', {{ configurable: true, value: (d) => {{
           window.__given.push(d.files[0].name + ' ' + d.files[0].type); return {does} }} }});"
    ));
}
fn no_sheet() {
    script("delete navigator.canShare; delete navigator.share");
}
/// Catches downloads on their way.
fn catch_downloads() {
    script(
        "window.__kept = []; window.__click = HTMLAnchorElement.prototype.click;
         HTMLAnchorElement.prototype.click = function () { window.__kept.push(this.download + ' ' + this.href.slice(0, 5)) }",
    );
}

#[wasm_bindgen_test]
async fn a_copy_goes_by_the_sheet_as_json_then_as_text_else_as_a_download() {
    use share::{Handed, Paper, hand_on};
    catch_downloads();
    sheet(".json", "Promise.resolve()");
    assert_eq!(hand_on(Paper::Copy, "fivebar", "{}").await, Handed::Shared("fivebar.json".into()));
    assert_eq!(said("window.__given.join()"), "fivebar.json application/json");
    sheet(".txt", "Promise.resolve()");
    assert_eq!(hand_on(Paper::Copy, "fivebar", "{}").await, Handed::Shared("fivebar.txt".into()));
    assert_eq!(said("window.__given.join()"), "fivebar.txt text/plain");
    sheet(".json", "Promise.reject(new DOMException('', 'AbortError'))");
    assert_eq!(hand_on(Paper::Copy, "fivebar", "{}").await, Handed::PutAway, "put away is not done, and no download comes unasked");
    assert_eq!(said("window.__kept.join()"), "");
    sheet(".json", "Promise.reject(new DOMException('', 'NotAllowedError'))");
    assert_eq!(hand_on(Paper::Copy, "fivebar", "{}").await, Handed::Downloaded("fivebar.json".into()));
    no_sheet();
    assert_eq!(hand_on(Paper::Table, "haul", "a,b").await, Handed::Downloaded("haul.csv".into()));
    assert_eq!(said("window.__kept.join()"), "fivebar.json blob:,haul.csv blob:");
    script("HTMLAnchorElement.prototype.click = window.__click");
}

#[wasm_bindgen_test]
async fn a_file_is_read_exactly_or_refused_with_the_reason() {
    let file = |parts: &str| script(&format!("new File([{parts}], 'copy.json')")).unchecked_into::<web_sys::File>();
    assert_eq!(files::read(&file("'{\"¾\":1}'"), 100).await.as_deref(), Ok("{\"¾\":1}"));
    assert_eq!(files::read(&file("'12345'"), 4).await, Err(files::NoFile::TooLarge { bytes: 5, limit: 4 }));
    assert_eq!(files::read(&file("new Uint8Array([65, 255])"), 9).await, Err(files::NoFile::NotText { at: 1 }));
}

#[wasm_bindgen_test]
fn the_screen_is_kept_awake_only_while_wanted() {
    let watch = awake::Watch::default();
    watch.want(true);
    assert!(matches!(watch.state(), awake::Awake::Wanted | awake::Awake::CanNot));
    watch.want(false);
    assert!(matches!(watch.state(), awake::Awake::NotWanted | awake::Awake::CanNot));
}

#[wasm_bindgen_test]
async fn a_dropped_wake_lock_is_taken_again() {
    script(
        "window.__locks = [];
         Object.defineProperty(navigator, 'wakeLock', { configurable: true, value: { request: async (kind) => {
           const lock = { kind, released: false, release: async () => { lock.released = true } };
           window.__locks.push(lock); return lock; } } });
         Object.defineProperty(document, 'hidden', { configurable: true, get: () => !!window.__hidden });",
    );
    let watch = awake::Watch::default();
    watch.want(true);
    watch.retake(); // asked once, however often it is wanted
    a_moment(10).await;
    assert_eq!(watch.state(), awake::Awake::Held);
    assert_eq!(script("window.__locks.length"), 1);
    script("window.__locks[0].released = true; window.__hidden = true");
    watch.retake();
    assert_eq!(watch.state(), awake::Awake::Wanted);
    script("window.__hidden = false");
    watch.retake();
    a_moment(10).await;
    assert_eq!(watch.state(), awake::Awake::Held);
    watch.want(false);
    assert_eq!(script("window.__locks.map(l => l.released).join()"), "true,true");
    script("delete navigator.wakeLock; delete document.hidden");
}

#[wasm_bindgen_test]
fn the_phone_buzzes_where_it_can() {
    script(
        "window.__buzz = []; Object.defineProperty(navigator, 'vibrate', { configurable: true, value: (p) => { window.__buzz.push(p.join('-')); return true } })",
    );
    assert!(buzz::buzz(buzz::Buzz::Piece(1)) && buzz::buzz(buzz::Buzz::Piece(10)));
    assert_eq!(said("window.__buzz.join()"), "18,30-50-60");
    script("Object.defineProperty(navigator, 'vibrate', { configurable: true, value: undefined })");
    assert!(!buzz::buzz(buzz::Buzz::Ready), "a phone without it goes on");
}

#[wasm_bindgen_test]
fn the_theme_is_drawn_and_kept() {
    theme::choose(theme::Theme::Dark);
    assert_eq!(said("document.documentElement.dataset.theme"), "dark");
    assert_eq!(theme::Theme::chosen(), theme::Theme::Dark);
    theme::choose(theme::Theme::Phone);
    assert!(theme::follow().is_some());
    assert!(matches!(&*said("document.documentElement.dataset.theme"), "light" | "dark"));
}

#[wasm_bindgen_test]
fn a_new_version_is_heard_of_and_taken_on_a_tap() {
    let heard = Rc::new(Cell::new(0));
    let hear = heard.clone();
    let ear = shell::on_new_version(move || hear.set(hear.get() + 1));
    script(
        "window.__took = 0; addEventListener('fivebar-apply-update', () => window.__took++); dispatchEvent(new CustomEvent('fivebar-update'))",
    );
    assert_eq!(heard.get(), 1);
    shell::take_new_version();
    assert_eq!(script("window.__took"), 1);
    drop(ear);
    script("dispatchEvent(new CustomEvent('fivebar-update'))");
    assert_eq!(heard.get(), 1, "a dropped ear hears no more");
}

#[wasm_bindgen_test]
async fn an_offer_to_install_is_kept_until_it_is_wanted() {
    let told = Rc::new(Cell::new(0));
    let tell = told.clone();
    let installing = installed::Installing::listen(move || tell.set(tell.get() + 1));
    assert!(!installing.can_offer());
    assert_eq!(installing.ask().await, installed::Answer::NoOffer);
    let offer = "{ const e = new Event('beforeinstallprompt', { cancelable: true });
                   e.prompt = async () => ({}); e.userChoice = Promise.resolve({ outcome: 'accepted' });
                   dispatchEvent(e); e.defaultPrevented }";
    assert_eq!(script(offer), true);
    assert!(installing.can_offer() && told.get() == 1);
    assert_eq!(installing.ask().await, installed::Answer::Yes);
    assert!(!installing.can_offer());
    assert!(!installed::standalone());
    assert!(!installed::install_before_first_entry());
}

#[wasm_bindgen_test]
fn coming_back_into_sight_is_heard() {
    let heard: Rc<RefCell<Vec<visible::Sight>>> = Rc::default();
    let hear = heard.clone();
    let ears = visible::watch(move |sight| hear.borrow_mut().push(sight));
    script("dispatchEvent(new Event('pagehide')); dispatchEvent(new Event('pageshow'))");
    assert_eq!(*heard.borrow(), [visible::Sight::Hidden, visible::Sight::Back]);
    drop(ears);
}

#[wasm_bindgen_test]
fn paper_has_its_own_title() {
    script("document.title = 'Fivebar'; window.__print = window.print; window.print = () => { window.__title = document.title }");
    assert!(print::print("Shelf, offer 12"));
    script("window.print = window.__print; dispatchEvent(new Event('afterprint'))");
    assert_eq!((said("window.__title"), said("document.title")), ("Shelf, offer 12".into(), "Fivebar".into()));
}
