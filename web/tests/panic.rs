//! A fault stops all writing before it says anything.
#![cfg(target_arch = "wasm32")]
use fivebar_web::phone::panic::{LastWords, stop};
use fivebar_web::phone::store::{Store, Trouble, closed};
use wasm_bindgen_test::*;
wasm_bindgen_test_configure!(run_in_browser);

#[wasm_bindgen_test]
async fn inv14_a_fault_stops_writing_and_then_says_so() {
    let book = Store::new("fault", |_| ());
    let entry = |id: &str| [(id.to_owned(), "{}".to_owned())];
    book.append(&entry("a"), &[]).await.unwrap();
    stop(LastWords { said: "Stopped. All that was saved is safe.", reload: "Open again" });
    assert!(closed());
    assert_eq!(book.append(&entry("b"), &[]).await, Err(Trouble::Stopped));
    assert_eq!(book.set_meta("k", "v").await, Err(Trouble::Stopped));
    assert_eq!(book.delete().await, Err(Trouble::Stopped));
    assert_eq!(book.all().await.unwrap().len(), 1, "what was saved is there");
    let document = web_sys::window().unwrap().document().unwrap();
    let notice = document.get_element_by_id("stopped").unwrap();
    assert_eq!(notice.text_content().unwrap(), "Stopped. All that was saved is safe.Open again");
    assert!(notice.query_selector("button").unwrap().is_some());
    stop(LastWords { said: "twice", reload: "Open again" });
    assert_eq!(document.query_selector_all("#stopped").unwrap().length(), 1);
}
