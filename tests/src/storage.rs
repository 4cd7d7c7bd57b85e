//! What a page keeps on the phone: room for it, and a book of our own to see that the shell leaves it alone.
use crate::{Browser, Page};
use serde_json::{Value, json};

impl Browser {
    /// How many bytes the page's origin may keep; `None` gives back the usual room.
    pub fn quota(&mut self, page: &Page, bytes: Option<u64>) {
        let origin = self.eval(page, "location.origin");
        let mut wish = json!({ "origin": origin });
        if let Some(bytes) = bytes {
            wish["quotaSize"] = bytes.into();
        }
        self.on(page, "Storage.overrideQuotaForOrigin", wish);
    }

    /// Writes one word into a database of the page's origin that is not the app's.
    pub fn keep(&mut self, page: &Page, word: &str) {
        self.eval(page, &in_database(&format!("put({word:?}, 'word')")));
    }

    /// Reads that word back.
    pub fn kept(&mut self, page: &Page) -> Value {
        self.eval(page, &in_database("get('word')"))
    }

    /// The names of the stores of fetched files that hold files; the spare of the book holds none.
    pub fn caches(&mut self, page: &Page) -> Vec<String> {
        let names = self.eval(page, "caches.keys()");
        names.as_array().into_iter().flatten().filter_map(|v| v.as_str().map(String::from)).filter(|name| name != "fivebar-spare").collect()
    }
}

fn in_database(act: &str) -> String {
    format!(
        "new Promise((done, failed) => {{ const open = indexedDB.open('beside-the-app', 1); open.onerror = () => failed(open.error);
           open.onupgradeneeded = () => open.result.createObjectStore('words');
           open.onsuccess = () => {{ const t = open.result.transaction('words', 'readwrite'), r = t.objectStore('words').{act};
             t.oncomplete = () => {{ open.result.close(); done(r.result) }}; t.onabort = () => failed(t.error) }} }})"
    )
}
