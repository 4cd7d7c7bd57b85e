//! Figures, sums and dates as the person's language writes them: the platform's `Intl`, given exact decimals as text.
use super::window;
use fivebar_core::quantity::{Listed, Sorted};
use js_sys::{Array, Date, Function, Object, Reflect};
use std::cell::RefCell;
use wasm_bindgen::prelude::*;

#[wasm_bindgen]
extern "C" {
    // js-sys has these too, but a locale or currency the platform does not know ends the app there.
    #[wasm_bindgen(js_namespace = Intl)]
    type NumberFormat;
    #[wasm_bindgen(constructor, js_namespace = Intl, catch)]
    fn new(locale: &str, options: &Object) -> Result<NumberFormat, JsValue>;
    #[wasm_bindgen(method, js_name = formatToParts)]
    fn parts(this: &NumberFormat, number: f64) -> Array;

    #[wasm_bindgen(js_namespace = Intl)]
    type DateTimeFormat;
    #[wasm_bindgen(constructor, js_namespace = Intl, catch)]
    fn new(locale: &str, options: &Object) -> Result<DateTimeFormat, JsValue>;
    #[wasm_bindgen(method, js_name = resolvedOptions)]
    fn options(this: &DateTimeFormat) -> JsValue;

    #[wasm_bindgen(js_namespace = Intl)]
    type PluralRules;
    #[wasm_bindgen(constructor, js_namespace = Intl, catch)]
    fn new(locale: &str) -> Result<PluralRules, JsValue>;
    #[wasm_bindgen(method)]
    fn select(this: &PluralRules, number: f64) -> String;
}

/// The forms a word takes by the number before it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Plural {
    Zero,
    One,
    Two,
    Few,
    Many,
    Other,
}

/// How a moment is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Moment {
    /// 25 Nov 2026
    Day,
    /// Wed 25 Nov
    Weekday,
    /// 09:42
    Clock,
}

const A_MINUTE: i64 = 60_000;
/// So many figures are remembered as written; then all are forgotten, so that a long day does not fill the phone.
const REMEMBERED: usize = 500;

/// Writes figures in one language. What was prepared or written once is kept: a screen writes many, most of them again at each tap,
/// and the platform takes a tenth of a millisecond for each.
pub struct Figures {
    locale: String,
    ready: RefCell<Sorted<String, Option<Function>>>,
    written: RefCell<Sorted<String, String>>,
    plural: Option<PluralRules>,
    signs: (Option<char>, Option<char>),
    halves: bool,
}

impl Figures {
    /// Figures as `locale` writes them, such as `de-CH`; a locale the platform does not know is written as English.
    pub fn new(locale: &str) -> Self {
        let of = |locale| NumberFormat::new(locale, &Object::new()).ok();
        let (locale, plain) = of(locale).map_or_else(|| ("en", of("en")), |plain| (locale, Some(plain)));
        let (ready, written, signs) = (RefCell::default(), RefCell::default(), plain.as_ref().map(signs).unwrap_or_default());
        Figures { locale: locale.into(), ready, written, plural: PluralRules::new(locale).ok(), signs, halves: has_halves(locale) }
    }

    /// An exact decimal, such as `1250.5`, with at least and at most so many decimals.
    pub fn number(&self, decimal: &str, least: u8, most: u8) -> String {
        let options = [
            ("minimumFractionDigits", JsValue::from(least)),
            ("maximumFractionDigits", JsValue::from(most)),
            ("roundingMode", "halfExpand".into()),
        ];
        self.written(&format!("n{least}-{most}"), decimal, || number_format(&self.locale, &options))
    }

    /// An exact sum in the currency of that code, such as `EUR`, with as many decimals as it has.
    pub fn money(&self, decimal: &str, currency: &str) -> String {
        let options = [("style", "currency".into()), ("currency", currency.into()), ("currencyDisplay", "narrowSymbol".into())];
        self.written(&format!("m{currency}"), decimal, || number_format(&self.locale, &options))
    }

    /// A whole sum in the currency of that code, without decimals.
    pub fn whole_money(&self, decimal: &str, currency: &str) -> String {
        let options = [
            ("style", "currency".into()),
            ("currency", currency.into()),
            ("currencyDisplay", "narrowSymbol".into()),
            ("minimumFractionDigits", JsValue::from(0)),
            ("maximumFractionDigits", JsValue::from(0)),
        ];
        self.written(&format!("w{currency}"), decimal, || number_format(&self.locale, &options))
    }

    /// A moment in ms, by the clock of a place `offset` minutes ahead of world time. Nothing shorter than a minute is shown.
    pub fn moment(&self, how: Moment, ms: i64, offset: i32) -> String {
        let minute = ms.saturating_add(i64::from(offset) * A_MINUTE).div_euclid(A_MINUTE);
        let name = match how {
            Moment::Day => "day",
            Moment::Weekday => "weekday",
            Moment::Clock => "clock",
        };
        self.known(format!("{name} {minute}"), || {
            let there = Date::new(&(minute.saturating_mul(A_MINUTE) as f64).into());
            let format = self.prepared(name, || date_format(&self.locale, how));
            let written = format.and_then(|f| f.call1(&JsValue::UNDEFINED, &there).ok());
            written.and_then(|w| w.as_string()).unwrap_or_else(|| there.to_iso_string().into())
        })
    }

    /// Which form of a word goes with `number`.
    pub fn plural(&self, number: u64) -> Plural {
        match self.plural.as_ref().map(|rules| rules.select(number as f64)).as_deref() {
            Some("zero") => Plural::Zero,
            Some("one") => Plural::One,
            Some("two") => Plural::Two,
            Some("few") => Plural::Few,
            Some("many") => Plural::Many,
            _ => Plural::Other,
        }
    }

    /// Whether clocks have twelve hours.
    pub fn has_halves(&self) -> bool {
        self.halves
    }

    /// The sign between units and decimals.
    pub fn decimal_sign(&self) -> char {
        self.signs.0.unwrap_or('.')
    }

    /// The sign between thousands, where the language has one.
    pub fn thousands_sign(&self) -> Option<char> {
        self.signs.1
    }

    /// What is written where the platform can't: the decimal as it is.
    fn written(&self, name: &str, decimal: &str, make: impl FnOnce() -> Option<Function>) -> String {
        self.known(format!("{name} {decimal}"), || {
            let written = self.prepared(name, make).and_then(|f| f.call1(&JsValue::UNDEFINED, &decimal.into()).ok());
            written.and_then(|w| w.as_string()).unwrap_or_else(|| decimal.to_owned())
        })
    }

    /// What was written before under this name, else what is written now.
    fn known(&self, asked: String, write: impl FnOnce() -> String) -> String {
        if let Some(known) = self.written.borrow().get(&asked) {
            return known.clone();
        }
        let text = write();
        let mut known = self.written.borrow_mut();
        if known.len() == REMEMBERED {
            known.clear();
        }
        known.insert(asked, text.clone());
        text
    }

    fn prepared(&self, name: &str, make: impl FnOnce() -> Option<Function>) -> Option<Function> {
        if let Some(ready) = self.ready.borrow().get(name) {
            return ready.clone();
        }
        let made = make();
        self.ready.borrow_mut().insert(name.into(), made.clone());
        made
    }
}

/// The signs between units and decimals, and between thousands.
fn signs(plain: &NumberFormat) -> (Option<char>, Option<char>) {
    let parts = plain.parts(1_234_567.5);
    let sign = |kind| {
        let part = parts.iter().find(|part| member(part, "type").as_deref() == Some(kind))?;
        member(&part, "value")?.chars().next()
    };
    (sign("decimal"), sign("group"))
}

/// The person's language by the phone, such as `en-GB`.
pub fn locale() -> String {
    window().and_then(|w| w.navigator().language()).unwrap_or_else(|| "en".into())
}

/// Whether clocks of this language have twelve hours; a clock of its choice is the phone's own word on it.
fn has_halves(locale: &str) -> bool {
    let hour = object(&[("hour", "numeric".into())]);
    let cycle = DateTimeFormat::new(locale, &hour).ok().and_then(|format| member(&format.options(), "hourCycle"));
    cycle.is_some_and(|cycle| cycle == "h12" || cycle == "h11")
}

fn number_format(locale: &str, options: &[(&str, JsValue)]) -> Option<Function> {
    format_of(NumberFormat::new(locale, &object(options)).ok()?.into())
}

fn date_format(locale: &str, how: Moment) -> Option<Function> {
    let shown: &[(&str, &str)] = match how {
        Moment::Day => &[("day", "numeric"), ("month", "short"), ("year", "numeric")],
        Moment::Weekday => &[("weekday", "short"), ("day", "numeric"), ("month", "short")],
        Moment::Clock if has_halves(locale) => &[("hour", "numeric"), ("minute", "2-digit")],
        Moment::Clock => &[("hour", "2-digit"), ("minute", "2-digit"), ("hourCycle", "h23")],
    };
    let options: Vec<_> = shown.iter().chain([&("timeZone", "UTC")]).map(|(name, value)| (*name, JsValue::from(*value))).listed();
    format_of(DateTimeFormat::new(locale, &object(&options)).ok()?.into())
}

/// The bound function behind `format`.
fn format_of(made: JsValue) -> Option<Function> {
    Reflect::get(&made, &"format".into()).ok()?.dyn_into().ok()
}

fn object(members: &[(&str, JsValue)]) -> Object {
    let made = Object::new();
    for (name, value) in members {
        let _ = Reflect::set(&made, &(*name).into(), value);
    }
    made
}

fn member(of: &JsValue, name: &str) -> Option<String> {
    Reflect::get(of, &name.into()).ok()?.as_string()
}
