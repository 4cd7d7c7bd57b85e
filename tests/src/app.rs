//! The app under test: packed once for each test program, served on a free port.
use crate::{Browser, Page, Phone};
use fivebar_host::shell::Shell;
use fivebar_host::{pack, serve};
use std::path::Path;
use std::sync::OnceLock;

/// The workspace.
pub fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().expect("the workspace")
}

/// The packed files, built when first asked for. Put another byte in and write it elsewhere: that is the next version.
pub fn shell() -> &'static Shell {
    static PACKED: OnceLock<Shell> = OnceLock::new();
    PACKED.get_or_init(|| pack::pack(root(), &root().join("target/app-under-test")).unwrap_or_else(|why| panic!("{why}")))
}

/// The address of the app as `cargo run` serves it, headers and all.
pub fn address() -> &'static str {
    static AT: OnceLock<String> = OnceLock::new();
    AT.get_or_init(|| {
        shell();
        let listener = serve::listen(0, false).expect("a port");
        let port = listener.local_addr().expect("bound").port();
        std::thread::spawn(move || {
            let run = tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime");
            run.block_on(serve::on(listener, &root().join("target/app-under-test"))).expect("serves");
        });
        format!("http://localhost:{port}/")
    })
}

/// A tab with the app open and its book read.
pub fn opened(browser: &mut Browser, phone: Phone) -> Page {
    let page = browser.page(phone);
    browser.open(&page, address());
    read(browser, &page);
    page
}

/// Waits until the book was read and is shown; until then a tap counts, and the page may still change under it.
pub fn read(browser: &mut Browser, page: &Page) {
    ready(browser, page);
    browser.wait(page, "performance.getEntriesByName('fold').length > 0");
}

/// Waits until the app has taken over the first frame.
pub fn ready(browser: &mut Browser, page: &Page) {
    browser.wait(page, "document.documentElement.dataset.app === 'open'");
}

/// Waits until this version is whole on the phone and the page is served from it.
pub fn ready_offline(browser: &mut Browser, page: &Page) {
    browser.wait(page, "!!navigator.serviceWorker.controller");
}

/// Waits until all that is shown is saved: "not saved yet" does not count.
pub fn saved(browser: &mut Browser, page: &Page) {
    browser.wait(page, "[...document.querySelectorAll('.head .r p')].some(p => p.textContent.startsWith('saved '))");
}
