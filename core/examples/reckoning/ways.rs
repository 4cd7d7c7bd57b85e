//! Other ways to the price of a job.

use super::{money, rounded};
use fivebar_core::ledger::fold::GalleryTerms;
use fivebar_core::money::price::Proposed;
use fivebar_core::quantity::{Currency, Decimal, Id, Money};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::offer::Leaves;
use fivebar_core::sheet::ways::{AtTag, Bought, Gallery, Lacks, Like, Materials, Must, Shops, ways};
use serde_json::{Value, json};

/// As the app begins: four tenths of the tag before tax, and the gallery sends in the tax.
const TERMS: GalleryTerms = GalleryTerms { share: Decimal::from_parts(4, 0, 0, false, 1), with_tax: false, maker_pays: false };

pub fn of_job(shop: &Shop, job: Id, currency: Currency) -> Value {
    let sheet = match ways(shop, job, TERMS) {
        Ok(sheet) => sheet,
        Err(refusal) => return json!({ "refused": format!("{refusal:?}") }),
    };
    json!({
        "asked": left(sheet.as_asked, currency),
        "own": sheet.own.map(tag),
        "bought": sheet.bought.map_or_else(lacks, |bought| of_bought(&bought)),
        "shop": of_shop(&sheet.shop, currency),
        "gallery": sheet.gallery.map(|gallery| of_gallery(&gallery, currency)),
        "like": sheet.like.iter().map(|like| of_like(like, currency)).collect::<Vec<_>>(),
        "materials": sheet.materials.map(|materials| of_materials(&materials, currency)),
    })
}

fn tag(proposed: Proposed) -> Value {
    money(proposed.tag)
}

fn left(leaves: Option<Leaves>, currency: Currency) -> Option<String> {
    leaves.map(|leaves| rounded(leaves.per_hour.left, currency.digits()))
}

fn lacks(lacks: Lacks) -> Value {
    match lacks {
        Lacks::Parts => json!({ "lacks": "parts" }),
        Lacks::BoardPrice(wood) => json!({ "lacks": "board price", "wood": wood.map(|wood| wood.to_string()) }),
    }
}

fn of_bought(bought: &Bought) -> Value {
    json!({ "boards": money(bought.boards), "haul": money(bought.haul), "minutes": bought.time.as_minutes(), "tag": bought.proposed.map(tag) })
}

fn of_shop(shop: &Shops, currency: Currency) -> Value {
    let must = |must: Option<Must>| must.map(|must| json!({ "pays": money(must.pays), "tag": money(must.tag) }));
    json!({
        "keeps": rounded(shop.keeps, 4),
        "said": shop.said,
        "costs_covered": must(shop.costs),
        "lowest_pay": must(shop.lowest),
        "your_rate": must(shop.rate),
        "at_tag": shop.at_tag.map(|at| at_tag(&at, currency)),
    })
}

fn at_tag(at: &AtTag, currency: Currency) -> Value {
    json!({ "you_get": money(at.you_get), "under_costs": at.under_costs, "left_per_hour": left(at.leaves, currency) })
}

fn of_gallery(gallery: &Gallery, currency: Currency) -> Value {
    let sum = |sum: Option<Money>| sum.map(money);
    json!({ "lowest_pay": sum(gallery.lowest), "your_rate": sum(gallery.rate), "at_tag": gallery.at_tag.map(|at| at_tag(&at, currency)) })
}

fn of_like(like: &Like, currency: Currency) -> Value {
    json!({ "sum": money(like.seen.sum), "sold": like.seen.sold, "left_per_hour": left(like.leaves, currency) })
}

fn of_materials(of: &Materials, currency: Currency) -> Value {
    let times = rounded(of.times, 0);
    json!({ "spent": money(of.spent), "times": times, "price": money(of.price), "left_per_hour": left(of.leaves, currency) })
}
