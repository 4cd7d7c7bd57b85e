//! A field: its label above, its unit beside, and why it was not taken below.
use crate::parts::fraction::worded;
use crate::view::{El, el};

/// What a field asks.
#[derive(Clone, Debug, Default)]
pub struct Field {
    /// One of its own on the screen; ties label, field and sentence together.
    pub id: &'static str,
    pub label: String,
    pub value: String,
    pub unit: String,
    pub keyboard: Keyboard,
    /// Why it was not taken; empty if nothing is wrong.
    pub wrong: String,
    /// It begins empty each time: what is half-typed in it is not kept over a reload.
    pub fleeting: bool,
}

/// The keyboard a phone should offer.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Keyboard {
    #[default]
    Words,
    Whole,
    Decimal,
    Phone,
}

impl Keyboard {
    fn mode(self) -> &'static str {
        match self {
            Keyboard::Words => "text",
            Keyboard::Whole => "numeric",
            Keyboard::Decimal => "decimal",
            Keyboard::Phone => "tel",
        }
    }
}

/// A field of one line; `typed` makes the message from what it holds.
pub fn field<M: 'static>(field: Field, typed: impl Fn(String) -> M + 'static) -> El<M> {
    let input = el("input", "").attr("type", "text").attr("inputmode", field.keyboard.mode()).attr("autocomplete", "off");
    around(&field, input.attr("value", field.value.clone()).on_typed(typed))
}

/// A field of several lines.
pub fn lines<M: 'static>(field: Field, typed: impl Fn(String) -> M + 'static) -> El<M> {
    around(&field, el("textarea", "").attr("rows", "3").text(field.value.clone()).on_typed(typed))
}

fn around<M>(field: &Field, input: El<M>) -> El<M> {
    let why = format!("{}-why", field.id);
    let wrong = !field.wrong.is_empty();
    let input = input.attr("id", field.id).flag("data-fleeting", field.fleeting);
    let input = if wrong { input.attr("aria-invalid", "true").attr("aria-describedby", why.clone()) } else { input };
    let unit = (!field.unit.is_empty()).then(|| el("span", "unit").text(field.unit.clone()));
    el("div", "field")
        .kid(el("label", "").attr("for", field.id).text(field.label.clone()))
        .kid(el("div", if wrong { "box wrong" } else { "box" }).kid(input).kids(unit))
        .kids(wrong.then(|| worded("p", "why", field.wrong.clone()).attr("id", why)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_refusal_is_tied_to_its_field() {
        let asked = Field { id: "width", label: "How wide".into(), wrong: "Not taken: 1,125".into(), ..Field::default() };
        let shown = field(asked, |s| s).html();
        for part in [r#"for="width""#, r#"id="width""#, r#"aria-describedby="width-why""#, r#"id="width-why""#, r#"aria-invalid="true""#] {
            assert!(shown.contains(part), "{part}: {shown}");
        }
    }
}
