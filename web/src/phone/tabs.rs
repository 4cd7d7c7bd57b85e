//! Tells the other tabs of this phone what changed, and hears it from them.
use super::ears::Ear;
use wasm_bindgen::prelude::*;
use web_sys::{BroadcastChannel, MessageEvent};

/// What tabs tell each other. Nothing of the book itself goes through here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Word {
    /// The book grew: read what came after your last place.
    Grew,
    /// A copy was brought in: besides what came after your last place, read what was set aside.
    Merged,
    /// The book was removed from this phone: start again.
    Removed,
}

impl Word {
    fn text(self) -> &'static str {
        match self {
            Word::Grew => "grew",
            Word::Merged => "merged",
            Word::Removed => "removed",
        }
    }

    /// The word behind a text; a newer tab may say more than this one knows.
    fn read(text: &str) -> Option<Self> {
        [Word::Grew, Word::Merged, Word::Removed].into_iter().find(|word| word.text() == text)
    }
}

/// The talk between tabs that have the same book open.
pub struct Tabs {
    channel: Option<BroadcastChannel>,
    _ear: Option<Ear>,
}

impl Tabs {
    /// Joins the talk about the book `name`; `heard` is called with what the others say. Where the platform
    /// has no such talk, nothing is heard: read again when the page is back in sight.
    pub fn join(name: &str, heard: impl Fn(Word) + 'static) -> Self {
        let there = super::has(&js_sys::global(), "BroadcastChannel");
        let channel = there.then(|| BroadcastChannel::new(name).ok()).flatten();
        let ear = channel.as_ref().map(|channel| {
            Ear::new(channel, "message", move |event| {
                let said = event.unchecked_into::<MessageEvent>().data().as_string();
                if let Some(word) = said.as_deref().and_then(Word::read) {
                    heard(word)
                }
            })
        });
        Tabs { channel, _ear: ear }
    }

    /// Tells the other tabs. This one does not hear it.
    pub fn tell(&self, word: Word) {
        if let Some(channel) = &self.channel {
            let _ = channel.post_message(&word.text().into());
        }
    }
}

impl Drop for Tabs {
    fn drop(&mut self) {
        if let Some(channel) = &self.channel {
            channel.close();
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Word;

    #[test]
    fn words_are_read_as_they_were_said_and_unknown_ones_are_left() {
        for word in [Word::Grew, Word::Merged, Word::Removed] {
            assert_eq!(Word::read(word.text()), Some(word));
        }
        assert_eq!(Word::read("sold out"), None);
    }
}
