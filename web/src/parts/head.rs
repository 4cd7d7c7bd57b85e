//! The head of a screen: where and what on the left, facts of the moment on the right.
use crate::parts::fraction::worded;
use crate::parts::ink::{path, sized};
use crate::view::{El, el};

/// A fact at the right of the head.
pub enum Fact {
    /// The one that matters now, such as the moment it was saved.
    Strong(String),
    Plain(String),
    /// What must not be passed by.
    Warning(String),
    /// Shown but not saved yet: a hollow mark stands before it.
    Unsaved(String),
}

/// What stands in the head.
pub struct Head<M> {
    pub small: String,
    pub title: String,
    pub facts: Vec<Fact>,
    /// A key in place of the facts.
    pub key: Option<El<M>>,
}

impl<M> Head<M> {
    /// A head with a small line and a title.
    pub fn new(small: impl Into<String>, title: impl Into<String>) -> Self {
        Head { small: small.into(), title: title.into(), facts: vec![], key: None }
    }
    /// With one more fact at the right.
    pub fn fact(mut self, fact: Fact) -> Self {
        self.facts.push(fact);
        self
    }
    /// With a key at the right.
    pub fn with_key(mut self, key: El<M>) -> Self {
        self.key = Some(key);
        self
    }
}

/// The head. Its title takes the focus when the place changes.
pub fn head<M>(head: Head<M>) -> El<M> {
    let title = worded("h1", "focus-here", head.title).attr("tabindex", "-1");
    let left = el("div", "").kids((!head.small.is_empty()).then(|| worded("p", "s", head.small))).kid(title);
    let facts = (!head.facts.is_empty()).then(|| el("div", "r").kids(head.facts.into_iter().map(fact)));
    el("header", "head").kid(left).kids(facts).kids(head.key)
}

fn fact<M>(fact: Fact) -> El<M> {
    match fact {
        Fact::Strong(text) => el("p", "s").kid(el("b", "").text(text)),
        Fact::Plain(text) => worded("p", "s", text),
        Fact::Warning(text) => el("p", "s").kid(el("b", "c-under").text(text)),
        Fact::Unsaved(text) => el("p", "s unsaved").kid(hollow_mark()).kid(el("span", "").text(text)),
    }
}

fn hollow_mark<M>() -> El<M> {
    sized("glyph", (8.0, 14.0)).kid(path("", "M2 3a2 2 0 0 1 4 0v8a2 2 0 0 1-4 0z"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_title_can_take_the_focus() {
        let shown = head::<()>(Head::new("Haul, Tue 3 March", "133 pieces").fact(Fact::Strong("saved 09:42".into()))).html();
        assert!(shown.contains(r#"<h1 class="focus-here" tabindex="-1">133 pieces</h1>"#), "{shown}");
        assert!(shown.contains("<b>saved 09:42</b>"), "{shown}");
    }
}
