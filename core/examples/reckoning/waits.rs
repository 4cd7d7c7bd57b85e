//! Every wait of a book.

use fivebar_core::ledger::{Book, fold};
use serde_json::{Value, json};

pub fn of(book: &Book) -> Vec<Value> {
    let one = |wait: &fivebar_core::bench::wait::Wait| {
        json!({
            "id": wait.id.to_string(),
            "operation": wait.op,
            "job": wait.job.map(|job| job.to_string()),
            "pieces": wait.n,
            "what": wait.what.as_str(),
            "stuff": wait.stuff.as_ref().map(|stuff| stuff.as_str()),
            "began": wait.began.at.ms(),
            "off": wait.off().ms(),
            "minutes": wait.span.as_minutes(),
            "ended": wait.ended.map(|off| off.at.at.ms()),
            "early": wait.ended.is_some_and(|off| off.early),
        })
    };
    fold::waits(book).all().map(one).collect()
}
