//! A tree as markup, for tests and pictures of screens without a browser. Messages are not shown.
use super::El;

/// Elements that hold nothing and have no end.
const VOID: [&str; 13] = ["area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"];

impl<M> El<M> {
    /// The element as valid markup.
    pub fn html(&self) -> String {
        let mut out = String::new();
        self.write(&mut out, None);
        out
    }

    /// `chosen` is what the menu around holds, if there is one.
    fn write(&self, out: &mut String, chosen: Option<&str>) {
        out.push('<');
        out.push_str(self.tag);
        for (name, value) in self.attrs.iter().filter(|(name, _)| !(self.holds_its_value() && *name == "value")) {
            attribute(out, name, value);
        }
        if self.tag == "option" && chosen.is_some() && chosen == self.attribute("value") {
            attribute(out, "selected", "");
        }
        out.push('>');
        if VOID.contains(&self.tag) {
            return;
        }
        self.write_inside(out, if self.tag == "select" { self.attribute("value") } else { chosen });
        out.push_str("</");
        out.push_str(self.tag);
        out.push('>');
    }

    fn write_inside(&self, out: &mut String, chosen: Option<&str>) {
        let text = if self.tag == "textarea" { self.attribute("value") } else { self.text.as_deref() };
        match text {
            Some(text) => escape(out, text),
            None => self.kids.iter().for_each(|kid| kid.write(out, chosen)),
        }
    }

    /// Markup has no attribute for what these hold.
    fn holds_its_value(&self) -> bool {
        matches!(self.tag, "textarea" | "select")
    }
}

fn attribute(out: &mut String, name: &str, value: &str) {
    out.push(' ');
    out.push_str(name);
    if !value.is_empty() {
        out.push_str("=\"");
        escape(out, value);
        out.push('"');
    }
}

fn escape(out: &mut String, text: &str) {
    for sign in text.chars() {
        match sign {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            sign => out.push(sign),
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::view::{El, el};

    #[test]
    fn what_holds_nothing_has_no_end_and_flags_stand_alone() {
        let field: El<()> = el("input", "").attr("value", "12 \"¾\" & <more>").flag("disabled", true).flag("hidden", false);
        assert_eq!(field.html(), r#"<input value="12 &quot;¾&quot; &amp; &lt;more&gt;" disabled>"#);
        assert_eq!(el::<()>("p", "").text("a < b").html(), "<p>a &lt; b</p>");
    }

    #[test]
    fn a_menu_shows_what_is_chosen_and_a_text_field_what_it_holds() {
        let option = |v: &'static str| el::<()>("option", "").attr("value", v).text(v);
        let menu = el("select", "").attr("value", "b").kids([option("a"), option("b")]);
        assert_eq!(menu.html(), r#"<select><option value="a">a</option><option value="b" selected>b</option></select>"#);
        assert_eq!(el::<()>("textarea", "").attr("value", "x").html(), "<textarea>x</textarea>");
    }

    #[test]
    fn a_drawing_is_markup_too() {
        let drawing = el::<()>("svg", "").attr("viewBox", "0 0 1 1").kid(el("path", "").attr("d", "M0 0h1"));
        assert_eq!(drawing.html(), r#"<svg viewBox="0 0 1 1"><path d="M0 0h1"></path></svg>"#);
    }
}
