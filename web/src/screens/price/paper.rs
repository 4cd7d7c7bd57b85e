//! What is for sale, on paper: for the maker's pocket at a fair, never for a buyer.

use super::asks::table;
use super::list::{by_with, end_over_ask, guessed, haul_in_question, in_question, is_over, left_of, not_usual, tag};
use super::{Screen, Seen, back};
use crate::app::price::{Tap, sheet};
use crate::app::{App, Msg};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{dates, price as words};
use fivebar_core::quantity::Listed;
use fivebar_core::sheet::price::ForSale;

/// The sheet as it is printed, and the key that prints it; none where nothing is for sale.
pub fn screen(app: &App, seen: Seen<'_>) -> Option<Screen> {
    let sheet = sheet(app).ok().filter(|sheet| !sheet.for_sale.is_empty())?;
    let top = Head::new(seen.speech.day(seen.now), words::FOR_SALE).fact(Fact::Plain(by_with(&sheet, app)));
    let paper = el("section", "sheet card sale listed").kids(sheet.for_sale.iter().map(|row| listed(row, app, seen)));
    let private = el("div", "col no-print")
        .kid(el("p", "").text(words::PAPER_IS_YOURS))
        .kid(key("key solid h56", dates::PRINT, "", Msg::Price(Tap::Print)))
        .kid(back());
    Some(Screen::new("price/paper", head(top), el("main", "scr price").kid(paper).kid(private)))
}

/// A piece as the list has it, without its keys.
fn listed(row: &ForSale, app: &App, seen: Seen<'_>) -> El<Msg> {
    let tag = tag(row, seen);
    let left = left_of(row, tag.as_deref(), seen);
    let names: Vec<&str> = row.gaps.iter().map(|missing| words::gap(*missing)).listed();
    let name = el("div", "")
        .kid(el("h2", "strong").text(row.name.clone()))
        .kid(el("p", "t14").text(left))
        .kids(not_usual(row, app, seen))
        .kids(end_over_ask(row, seen))
        .kids(is_over(row, seen))
        .kids((!names.is_empty()).then(|| el("p", "t14").text(words::gaps(&names))))
        .kids(guessed(row.by_any, seen))
        .kids(in_question((row.unsettled, row.unsettled_pay, row.ended), seen))
        .kids(haul_in_question(row.hauls_unsettled, seen));
    el("article", "").key(row.job.to_string()).kid(name).kids(table(row, seen))
}
