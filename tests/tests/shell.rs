//! The shell in a real browser: the first frame, installing, opening without a network, the policy, the way out.
use fivebar_tests::host::Host;
use fivebar_tests::{Browser, Look, Page, Phone, app};
use serde_json::json;

const PROBE: &str = "fetch('./nothing-of-this-name?' + Math.random()).then(r => 'answered ' + r.status, () => 'refused')";

fn profile() -> tempfile::TempDir {
    tempfile::tempdir().expect("a folder")
}

/// The first frame as it stands before the app: the script that starts it never arrives.
fn first_frame(browser: &mut Browser, phone: Phone, look: Look) -> Page {
    let page = browser.page(phone);
    browser.look(&page, look);
    browser.on(&page, "Network.setBlockedURLs", json!({ "urls": ["*/boot.js"] }));
    browser.open(&page, app::address());
    browser.wait(&page, "document.readyState === 'complete' && document.fonts.status === 'loaded'");
    page
}

#[test]
fn inv13_opens_whole_without_a_network_after_a_kill() {
    let profile = profile();
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON);
    app::ready_offline(&mut browser, &page);
    browser.keep(&page, "oak");
    assert_eq!(browser.errors(), [""; 0]);
    browser.kill();

    let mut browser = Browser::start(profile.path());
    browser.offline(true);
    let page = app::opened(&mut browser, Phone::COMMON);
    assert_eq!(browser.kept(&page), "oak");
    assert_eq!(browser.errors(), [""; 0]);
    assert_eq!(browser.eval(&page, "document.fonts.load('800 60px Overpass').then(f => f.length)"), 1);
    assert_eq!(browser.eval(&page, PROBE), "refused");
}

#[test]
fn inv13_what_a_version_lacks_is_an_error_even_with_a_network() {
    let profile = profile();
    let mut browser = Browser::start(profile.path());
    let host = Host::serve(&app::root().join("target/app-under-test"), "/");
    app::shell();
    let page = browser.page(Phone::COMMON.quick());
    browser.open(&page, &host.address());
    app::ready_offline(&mut browser, &page);
    host.asked();
    assert_eq!(browser.eval(&page, PROBE), "refused");
    assert_eq!(browser.eval(&page, "fetch('./app.css?' + Math.random()).then(r => r.ok)"), true);
    let asked = host.asked();
    assert!(asked.iter().all(|path| path == "/sw.js"), "only the worker's own address is asked for: {asked:?}");
}

#[test]
fn inv13_files_thrown_away_by_the_browser_are_fetched_anew() {
    let profile = profile();
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    app::ready_offline(&mut browser, &page);
    browser.keep(&page, "ash");
    browser.eval(&page, "caches.keys().then(all => Promise.all(all.map(name => caches.delete(name)))).then(() => true)");
    browser.open(&page, app::address()); // an error: there is no version to serve
    browser.open(&page, app::address());
    app::ready(&mut browser, &page);
    app::ready_offline(&mut browser, &page);
    assert_eq!(browser.caches(&page).len(), 1);
    assert_eq!(browser.kept(&page), "ash");
}

#[test]
fn a_phone_offers_to_install_the_app() {
    let profile = profile();
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    app::ready_offline(&mut browser, &page);
    assert_eq!(browser.on(&page, "Page.getInstallabilityErrors", json!({}))["installabilityErrors"], json!([]));
    let manifest = browser.on(&page, "Page.getAppManifest", json!({}));
    assert_eq!(manifest["errors"], json!([]), "{manifest}");
    let shortcuts =
        browser.eval(&page, "fetch('./manifest.webmanifest').then(r => r.json()).then(m => m.shortcuts.map(s => s.name + ' ' + s.url))");
    assert_eq!(shortcuts, json!(["Count ./#count", "Bench ./#bench", "Price ./#price"]));
}

#[test]
fn inv12_the_policy_refuses_what_is_not_the_apps_own() {
    let profile = profile();
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    let elsewhere = Host::serve(&app::root().join("target/app-under-test"), "/");
    let refused = |browser: &mut Browser, act: &str| {
        let script = format!(
            "new Promise(r => {{ addEventListener('securitypolicyviolation', e => r(e.effectiveDirective), {{ once: true }}); setTimeout(() => {{ {act} }}) }})"
        );
        browser.eval(&page, &script)
    };
    let at = elsewhere.address();
    let acts = [
        ("const s = document.createElement('script'); s.textContent = '1'; document.body.append(s)".into(), "script-src-elem"),
        ("try { eval('1') } catch {}".into(), "script-src"),
        ("document.body.setAttribute('style', 'color: red')".into(), "style-src-attr"),
        (format!("fetch('{at}', {{ mode: 'no-cors' }}).catch(() => 0)"), "connect-src"),
        (format!("new Image().src = '{at}icon.svg'"), "img-src"),
        (format!("import('{at}boot.js').catch(() => 0)"), "script-src-elem"),
        (format!("navigator.sendBeacon('{at}', 'oak')"), "connect-src"),
    ];
    for (act, directive) in acts {
        assert_eq!(refused(&mut browser, &act), directive, "{act}");
    }
    assert_eq!(elsewhere.asked(), [""; 0]);
    let asked =
        "performance.getEntriesByType('resource').map(r => new URL(r.name).origin).filter(o => o !== location.origin && o !== 'null')";
    let foreign = browser.eval(&page, asked);
    assert!(foreign.as_array().is_some_and(|all| all.iter().all(|o| at.starts_with(o.as_str().unwrap_or("?")))), "{foreign}");
}

#[test]
fn inv13_the_way_out_opens_without_a_network_and_leaves_the_book() {
    let profile = profile();
    let mut browser = Browser::start(profile.path());
    let page = app::opened(&mut browser, Phone::COMMON.quick());
    app::ready_offline(&mut browser, &page);
    browser.keep(&page, "elm");
    browser.eval(&page, "caches.open('of another app').then(() => true)");
    browser.offline(true);
    browser.open(&page, &format!("{}way-out.html", app::address()));
    browser.wait_text(&page, "There is no network now");
    assert_eq!(browser.axe(&page), [""; 0]);
    browser.shot(&page, "way-out");
    browser.tap(&page, "#clear");
    browser.wait_text(&page, "Your book was not touched.");
    assert_eq!(browser.caches(&page), ["of another app"]);
    assert_eq!(browser.eval(&page, "caches.has('fivebar-spare')"), true, "the book's second place is no file of the app");
    assert_eq!(browser.eval(&page, "navigator.serviceWorker.getRegistrations().then(all => all.length)"), 0);
    assert_eq!(browser.kept(&page), "elm");
    browser.offline(false);
    browser.tap_text(&page, "Open Fivebar");
    app::ready(&mut browser, &page);
    assert_eq!(browser.kept(&page), "elm");
}

#[test]
fn the_first_frame_needs_no_script_and_fits_every_phone() {
    let profile = profile();
    let mut browser = Browser::start(profile.path());
    for (phone, size) in [(Phone::COMMON.quick(), "390"), (Phone::SMALL.quick(), "320"), (Phone::LAPTOP, "1280")] {
        for (dark, theme) in [(false, "light"), (true, "dark")] {
            let page = first_frame(&mut browser, phone, Look { dark, ..Look::default() });
            browser.shot(&page, &format!("first-frame-{size}-{theme}"));
            let places = browser.eval(&page, "[...document.querySelectorAll('nav button')].map(a => a.innerText.trim())");
            assert_eq!(places, json!(["Count", "Bench", "Price", "Jobs", "Workshop"]));
            assert_eq!(browser.axe(&page), [""; 0], "{size} {theme}");
            for percent in [100, 200] {
                browser.text_size(&page, percent);
                assert_eq!(browser.sticks_out(&page, phone), [""; 0], "{size} at {percent} %");
                let wide = browser.eval(&page, "document.documentElement.scrollWidth").as_u64();
                assert!(wide <= Some(phone.width.into()), "{size} at {percent} %: {wide:?}");
            }
            browser.shot(&page, &format!("first-frame-{size}-{theme}-200"));
            browser.close(page);
        }
    }
}

#[test]
fn without_scripts_the_page_says_what_it_needs() {
    let profile = profile();
    let mut browser = Browser::start(profile.path());
    let page = browser.page(Phone::COMMON.quick());
    browser.on(&page, "Emulation.setScriptExecutionDisabled", json!({ "value": true }));
    browser.open(&page, app::address());
    browser.wait_text(&page, "Fivebar needs JavaScript to count.");
}

#[test]
fn files_that_did_not_arrive_are_said_in_plain_words() {
    let profile = profile();
    let mut browser = Browser::start(profile.path());
    let page = browser.page(Phone::COMMON.quick());
    browser.on(&page, "Network.setBlockedURLs", json!({ "urls": ["*/fivebar_bg.wasm"] }));
    browser.open(&page, app::address());
    browser.wait_text(&page, "Fivebar did not open");
    assert_eq!(browser.eval(&page, "document.documentElement.dataset.app"), "failed");
    browser.shot(&page, "did-not-open");
    assert_eq!(browser.axe(&page), [""; 0]);
    browser.on(&page, "Network.setBlockedURLs", json!({ "urls": [] }));
    browser.tap_text(&page, "Open again");
    app::ready(&mut browser, &page);
}
