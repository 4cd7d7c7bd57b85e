//! What is said politely, and what went wrong: what happened, why, what is safe, what to do.
use crate::parts::fraction::worded;
use crate::view::{El, el};
use crate::words::en::parts as words;

/// The one polite region of the page; put it on every screen, empty if there is nothing to say.
pub fn live<M>(said: impl Into<String>) -> El<M> {
    el("p", "vh").key("live").attr("role", "status").attr("aria-live", "polite").text(said.into())
}

/// A sentence in plain sight.
pub fn notice<M>(said: impl Into<String>) -> El<M> {
    worded("p", "notice", said.into())
}

/// Trouble, worded.
#[derive(Clone, Debug, Default)]
pub struct Trouble {
    pub what: String,
    pub why: String,
    pub safe: String,
    pub to_do: String,
}

/// The trouble and its three lines; lines without words stay away.
pub fn trouble<M>(trouble: Trouble) -> El<M> {
    let lines = [(words::WHY, trouble.why), (words::SAFE, trouble.safe), (words::TO_DO, trouble.to_do)];
    let rows = lines
        .into_iter()
        .filter(|(_, said)| !said.is_empty())
        .map(|(head, said)| el("tr", "").kid(el("th", "").attr("scope", "row").text(head)).kid(worded("td", "", said)));
    el("section", "trouble")
        .attr("role", "alert")
        .kid(worded("h2", "", trouble.what))
        .kid(el("table", "three").kid(el("tbody", "").kids(rows)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn trouble_says_only_what_it_knows() {
        let shown = trouble::<()>(Trouble { what: "Not counted".into(), safe: "119 pieces".into(), ..Trouble::default() }).html();
        assert_eq!(shown.matches("<tr>").count(), 1, "{shown}");
    }
}
