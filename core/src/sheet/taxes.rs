//! Sales tax as it was recorded: the lines of a year's sales, added by the rate each was made at. Nothing is worked out again.

use super::shop::Shop;
use crate::ledger::fold::{Lines, jobs};
use crate::quantity::{Currency, Decimal, Listed, Money, Sorted, Wall, order_by_key};
use crate::refusal::Answer;
use std::cmp::Reverse;

/// What was sold at one rate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct AtRate {
    /// Sales of the year, less those brought back in it.
    pub sales: i32,
    /// What buyers handed over, and the tax in it.
    pub taken: Money,
    pub tax: Money,
}

/// The recorded tax of a year, in one currency.
#[derive(Clone, Debug, PartialEq)]
pub struct YearTaxes {
    /// By rate, the lowest first.
    pub by_rate: Sorted<Decimal, AtRate>,
    /// What the maker sends in of what galleries sold, by rate; by none where that was not written down.
    pub by_galleries: Sorted<Option<Decimal>, Money>,
    pub tax: Money,
}

/// The lines of the sales of a year; one brought back takes its line off the year it came back in. A sale is of the year it was in at the place
/// where it was written, whoever looks from where.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn taxes(shop: &Shop, currency: Currency, year: i32) -> Answer<YearTaxes> {
    let none = Money::zero(currency);
    let is_of = |at: Wall| at.day().as_ymd().0 == year;
    let mut found = YearTaxes { by_rate: Sorted::new(), by_galleries: Sorted::new(), tax: none };
    for job in jobs(shop.book).filter(|job| job.currency == currency) {
        for sale in &job.selling.sales {
            let line = |n: i32, of: Lines| (n, of.sum, of.tax);
            let rest = Lines { n: sale.n, sum: sale.sum, tax: sale.tax };
            let sold = is_of(sale.at).then(|| line(1, sale.whole));
            // Of a sale of which only some pieces came back the rest stands.
            let back = sale.back.iter().filter(|back| is_of(back.at)).map(|back| line(0, back.of));
            let gone = sale.reversed.filter(|back| is_of(back.at)).map(|_| line(-1, rest));
            sold.map(|line| found.add(sale.rate, line)).transpose()?;
            for (n, sum, tax) in back.chain(gone) {
                found.add(sale.rate, (n, none.minus(sum)?, none.minus(tax)?))?;
            }
        }
        for paid in job.selling.consignments_paid.iter().filter(|paid| is_of(paid.at)) {
            let Some(tax) = paid.tax else { continue };
            let at = found.by_galleries.entry(paid.taxed.map(|taxed| taxed.rate.normalize())).or_insert(none);
            *at = at.plus(tax)?;
        }
    }
    let lines = found.by_rate.values().map(|at| at.tax).chain(found.by_galleries.values().copied());
    found.tax = Money::sum(currency, lines)?;
    Ok(found)
}

/// The years in which anything was sold, brought back or paid by a gallery, and this one, the latest first.
pub fn years(shop: &Shop, this: i32) -> Vec<i32> {
    let of = |at: Wall| at.day().as_ymd().0;
    let mut all = vec![this];
    for job in jobs(shop.book) {
        for sale in &job.selling.sales {
            all.push(of(sale.at));
            all.extend(sale.back.iter().map(|back| of(back.at)).chain(sale.reversed.map(|back| of(back.at))));
        }
        all.extend(job.selling.consignments_paid.iter().map(|paid| of(paid.at)));
    }
    order_by_key(&mut all, |year| Reverse(*year));
    all.dedup();
    all
}

/// Every currency that anything was made in, in their order.
pub fn currencies(shop: &Shop) -> Vec<Currency> {
    let mut all = Sorted::new();
    for job in jobs(shop.book) {
        all.insert(job.currency, ());
    }
    all.keys().copied().listed()
}

impl YearTaxes {
    fn add(&mut self, rate: Decimal, (sales, sum, tax): (i32, Money, Money)) -> Answer<()> {
        let none = Money::zero(sum.currency());
        let at = self.by_rate.entry(rate.normalize()).or_insert(AtRate { sales: 0, taken: none, tax: none });
        (at.sales, at.taken, at.tax) = (at.sales.saturating_add(sales), at.taken.plus(sum)?, at.tax.plus(tax)?);
        Ok(())
    }

    /// Nothing was sold in it.
    pub fn is_empty(&self) -> bool {
        self.by_rate.is_empty() && self.by_galleries.values().all(|tax| tax.is_zero())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::story::tell;

    const START: &str = "2026-03-02 09:00 -05:00 workshop USD inch\ntill tax 0.055 inside\ntax-rate \"Reduced\" 0.02 as low\n\
        job stools \"Stools\" 9 spec\njob desk \"Desk\" 1 spec\njob-tax desk none\n";

    /// Sales, what was taken and its tax by rate, and all tax of a year.
    #[track_caller]
    fn check(lines: &str, year: i32, wanted: &[(&str, i32, &str, &str)], all: &str) {
        let story = tell(&format!("{START}{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        let found = taxes(&Shop::of(&story.book, story.now.at), Currency::USD, year).unwrap();
        let by_rate = found.by_rate.iter().map(|(rate, at)| (rate.to_string(), at.sales, at.taken.to_string(), at.tax.to_string()));
        let wanted = wanted.iter().map(|(rate, n, taken, tax)| (rate.to_string(), *n, format!("{taken} USD"), format!("{tax} USD")));
        assert_eq!(by_rate.collect::<Vec<_>>(), wanted.collect::<Vec<_>>(), "{lines}");
        assert_eq!(found.tax.to_string(), format!("{all} USD"), "{lines}");
    }

    /// 145 at 5.5 % inside holds 7.56, at 2 % 2.84; three lines of 7.56 are 22.68, and 435 at once would be 22.68 too.
    #[test]
    fn each_line_stays_at_the_rate_it_was_sold_at() {
        let sale = "sell 1 stools for 145 notes\n";
        check("", 2026, &[], "0.00");
        check(sale, 2026, &[("0.055", 1, "145.00", "7.56")], "7.56");
        check(&format!("{sale}till tax 0.07\n{sale}"), 2026, &[("0.055", 1, "145.00", "7.56"), ("0.07", 1, "145.00", "9.49")], "17.05");
        check(
            &format!("{sale}sell 1 stools for 145 notes tax low"),
            2026,
            &[("0.02", 1, "145.00", "2.84"), ("0.055", 1, "145.00", "7.56")],
            "10.40",
        );
        check("sell 1 desk for 500 notes", 2026, &[("0", 1, "500.00", "0.00")], "0.00");
        check("sell 1 desk for 500 notes tax usual", 2026, &[("0.055", 1, "500.00", "26.07")], "26.07");
    }

    /// A sale of one year that comes back in the next takes its own line off that next year.
    #[test]
    fn what_comes_back_is_of_the_year_it_came_back_in() {
        let lines = "sell 1 stools for 145 notes as one\ntill tax 0.07\n2027-01-08 10:00 reverse sale one on stools";
        check(lines, 2026, &[("0.055", 1, "145.00", "7.56")], "7.56");
        check(lines, 2027, &[("0.055", -1, "-145.00", "-7.56")], "-7.56");
    }

    #[test]
    fn the_maker_sends_in_what_galleries_sold() {
        let lines = "consign 2 stools tag 145 share 0.4 maker-pays\ngallery pays 90.02 for 1 stools tax 7.56";
        check(lines, 2026, &[], "7.56");
    }

    /// What a gallery sold keeps the rate it was sold at, whatever is set after; a line of before has none, and its tax all the same.
    #[test]
    fn what_a_gallery_sold_keeps_its_rate() {
        let sold = "gallery pays 90.02 for 1 stools tax 7.56\n";
        let lines = format!("consign 3 stools tag 145 share 0.4 maker-pays\n{sold}till tax 0.07\n{sold}");
        let mut book = tell(&format!("{START}{lines}")).book;
        let job = jobs(&book).find(|job| job.name == "Stools").unwrap().id.to_string();
        let id = "019cb3e2-4e40-7000-8000-000000009999";
        let old = format!(
            r#"{{"at":1772545304000,"d":{{"job":"{job}","n":1,"sum":"90.02 USD","tax":"7.56 USD"}},"id":"{id}","k":"ConsignmentPaid","t":[1872545304000,0,"a1"],"tz":-300,"v":1}}"#
        );
        let lines: Vec<String> = book.entries().map(|(entry, _)| crate::ledger::line::write(entry)).chain([old]).collect();
        book = crate::ledger::Book::of_lines(lines.iter().map(String::as_str));
        let found = taxes(&Shop::of(&book, crate::quantity::Moment::FIRST), Currency::USD, 2026).unwrap();
        let by = found.by_galleries.iter().map(|(rate, tax)| (rate.map(|rate| rate.to_string()), tax.to_string())).collect::<Vec<_>>();
        let tax = || "7.56 USD".to_owned();
        assert_eq!(by, [(None, tax()), (Some("0.055".into()), tax()), (Some("0.07".into()), tax())]);
        assert_eq!(found.tax.to_string(), "22.68 USD");
    }

    /// Sold and paid half an hour into the year where the maker stood, which is the year before for who looks in winter; and brought back half
    /// an hour before the next.
    #[test]
    fn the_year_is_that_of_the_place_where_it_was_written() {
        const SOLD: &str = "2026-01-01 00:30 +11:00 workshop AUD metric\ntill tax 0.1 inside\njob desk \"Desk\" 3 spec\n\
            sell 1 desk for 110 notes as one\nconsign 1 desk tag 220 share 0.4 maker-pays\ngallery pays 132 for 1 desk tax 20\n";
        let back = "2026-12-31 23:30 +11:00 reverse sale one on desk\n";
        for (lines, year, tax) in [("", 2025, 0), ("", 2026, 30), (back, 2026, 20), (back, 2027, 0)] {
            for seen in ["+10:00", "+13:00", "-08:00"] {
                let story = tell(&format!("{SOLD}{lines}2027-07-01 09:00 {seen} plan \"oil\" make 5 min for desk"));
                assert_eq!(story.refused, [], "{lines}");
                let found = taxes(&Shop::of(&story.book, story.now.at), Currency::read("AUD").unwrap(), year).unwrap();
                assert_eq!(found.tax.amount(), Decimal::from(tax), "{lines}{year} {seen}");
            }
        }
    }
}
