//! The spare against the browser's own store of fetched files.
#![cfg(target_arch = "wasm32")]
use fivebar_web::phone::spare::{Held, Spare};
use fivebar_web::phone::store::Aside;
use wasm_bindgen::JsCast;
use wasm_bindgen_test::*;
wasm_bindgen_test_configure!(run_in_browser);

/// A piece of it that is no text of ours.
async fn torn(name: &str) {
    let script = format!("caches.open('fivebar-spare').then(spare => spare.put('{name}', new Response('[torn')))");
    wasm_bindgen_futures::JsFuture::from(js_sys::eval(&script).unwrap().unchecked_into::<js_sys::Promise>()).await.unwrap();
}

/// One test: the spare has one name, and tests run side by side.
#[wasm_bindgen_test]
async fn holds_sheets_what_is_bound_and_the_names_there_are_now() {
    Spare::remove().await.unwrap();
    let spare = Spare::open().await.unwrap();
    assert_eq!(spare.held().await.unwrap(), Held::default());
    assert!(!spare.extent().await.unwrap().wants_binding(0), "an empty book wants none");
    assert!(spare.extent().await.unwrap().wants_binding(1));

    let strange = "{\"d\":\"¾ 木 \u{1f332} \u{0}\"}\r\n \"";
    spare.put_sheet(0, 2, ["a", strange].into_iter()).await.unwrap();
    assert_eq!(spare.extent().await.unwrap().last, 2);
    assert!(spare.extent().await.unwrap().wants_binding(2), "nothing is bound yet");
    assert_eq!(spare.held().await.unwrap().lines, ["a", strange]);

    spare.put_sheet(1, 52, ["y", "z"].into_iter()).await.unwrap();
    spare.bind(51, ["all"].into_iter()).await.unwrap();
    assert_eq!(spare.extent().await.unwrap().last, 52, "the sheet that goes on after 51 stays");
    assert_eq!(spare.held().await.unwrap().lines, ["all", "y", "z"]);
    let extent = spare.extent().await.unwrap();
    let wants = [51, 52, 53, 552, 553].map(|last| extent.wants_binding(last));
    assert_eq!(wants, [true, false, false, false, true], "a few places are brought up by sheets");
    assert_eq!(extent.tail, ["y", "z"]);
    spare.bind(100, ["more"].into_iter()).await.unwrap();
    assert_eq!((spare.held().await.unwrap().lines, spare.extent().await.unwrap().last), (vec!["more".to_owned()], 100));

    let named = |id: &str, line: &str| (id.to_owned(), line.to_owned());
    spare.put_aside(&[Aside { id: String::new(), line: strange.into(), why: "damaged".into() }]).await.unwrap();
    let held = spare.held().await.unwrap();
    assert_eq!((held.aside.len(), held.aside[0].line.as_str(), held.broken), (1, strange, false));
    spare.put_sheet(4, 201, ["v"].into_iter()).await.unwrap();
    assert!(spare.extent().await.unwrap().wants_binding(201), "sheets 2 and 3 lack");
    torn("/fivebar-spare/sheet/4").await;
    let extent = spare.extent().await.unwrap();
    assert!(extent.last == 201 && extent.wants_binding(201), "a torn sheet is written again");
    let held = spare.held().await.unwrap();
    assert_eq!(
        (held.lines, held.broken, held.late),
        (vec!["more".to_owned()], true, false),
        "what can be read is read, and what can't is said"
    );
    spare.put_names(&[named("1", "Ann"), named("2", "{\"name\":\"Bo\"}")]).await.unwrap();
    spare.put_names(&[named("2", "{\"name\":\"Bo\"}")]).await.unwrap();
    assert_eq!(spare.held().await.unwrap().names, [named("2", "{\"name\":\"Bo\"}")], "who is forgotten is in no spare");
    Spare::remove().await.unwrap();
    assert_eq!(Spare::open().await.unwrap().held().await.unwrap(), Held::default());
}
