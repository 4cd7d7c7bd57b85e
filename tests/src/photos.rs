//! A maker with one job, a camera and a list of files: the photo is drawn in the page.
use crate::{Browser, Page, Phone, app};
use fivebar_core::ledger::line;
use fivebar_core::story::tell;
use std::time::Duration;

/// A camera and a list of files. The photo is larger than what is kept, and says where it was taken, as cameras write it.
const HANDS: &str = "navigator.canShare = () => true;
  navigator.share = async ({ files }) => sessionStorage.setItem('test:copy', await files[0].text());
  const drawn = async () => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [2400, 1800];
    const pen = canvas.getContext('2d');
    pen.fillStyle = '#dde3de'; pen.fillRect(0, 0, 2400, 1800);
    pen.fillStyle = '#c8b99a'; pen.fillRect(0, 1400, 2400, 400);
    pen.fillStyle = window.second ? '#8c5a2b' : '#e6cfa3';
    pen.fillRect(600, 700, 1200, 120); pen.fillRect(660, 820, 120, 700); pen.fillRect(1620, 820, 120, 700);
    const bytes = new Uint8Array(await (await new Promise((done) => canvas.toBlob(done, 'image/jpeg'))).arrayBuffer());
    const said = new TextEncoder().encode('Exif\\0\\0SecretCamera 52.5N 13.4E');
    const segment = [0xff, 0xe1, (said.length + 2) >> 8, (said.length + 2) & 255, ...said];
    return new File([bytes.slice(0, 2), new Uint8Array(segment), bytes.slice(2)], 'IMG_GPS.jpg', { type: 'image/jpeg' });
  };
  HTMLInputElement.prototype.click = async function () {
    window.asked = [this.accept, this.getAttribute('capture')];
    const file = this.accept !== 'image/*' ? new File([window.bring ?? ''], 'fivebar.json')
      : window.broken ? new File(['no picture'], 'x.jpg', { type: 'image/jpeg' }) : await drawn();
    const list = new DataTransfer();
    list.items.add(file);
    this.files = list.files;
    this.dispatchEvent(new Event('change'));
  };
  const put = IDBObjectStore.prototype.put;
  IDBObjectStore.prototype.put = function (...given) {
    if (window.full && this.name === 'pictures') throw new DOMException('no room', 'QuotaExceededError');
    return put.apply(this, given);
  };";

impl Browser {
    /// A tap on the key whose first line reads so, wherever it is scrolled to.
    pub fn tap_key(&mut self, page: &Page, text: &str) {
        let found =
            format!("[...document.querySelectorAll('button')].find((key) => (key.firstElementChild ?? key).textContent === {text:?})");
        self.wait(page, &format!("!!{found}"));
        self.eval(page, &format!("{found}.scrollIntoView({{ block: 'center' }}), {found}.click()"));
        std::thread::sleep(Duration::from_millis(120));
    }

    /// One after the other.
    pub fn tap_keys(&mut self, page: &Page, keys: &[&str]) {
        keys.iter().for_each(|key| self.tap_key(page, key));
    }

    /// The nth place of the bar. Right after the text has grown the bar may move once more under the finger: whoever sees another place then
    /// taps again.
    pub fn place(&mut self, page: &Page, nth: usize) {
        let (key, is_there) = (format!(".places > :nth-child({nth})"), format!(".places > :nth-child({nth})[aria-current]"));
        for _ in 0..3 {
            self.tap(page, &key);
            std::thread::sleep(Duration::from_millis(120));
            if self.eval(page, &format!("!!document.querySelector({is_there:?})")) == true {
                return;
            }
            std::thread::sleep(Duration::from_millis(500));
        }
    }

    /// Waits until so many pictures are drawn, each of them read.
    pub fn drawn(&mut self, page: &Page, n: usize) {
        self.wait(page, &format!("(all => all.length === {n} && all.every(img => 0 < img.naturalWidth))([...document.images])"));
    }

    /// A maker with one job.
    pub fn with_job(&mut self, phone: Phone) -> Page {
        self.with_told(phone, "")
    }

    /// The same, and what was told beyond it.
    pub fn with_told(&mut self, phone: Phone, more: &str) -> Page {
        let story = tell(&format!(
            "2026-03-02 09:00 -05:00 workshop USD inch\njob stand \"Ash plant stand\" 3 spec\n\
         about stand size 9 1/2 x 9 1/2 x 18 7/8 in weight 6.9 lb wood \"ash, cherry pegs\" finish \"oil, three coats\" \
         care \"wipe dry, saucer under the pot\" delivery \"take it home today\"\ntag 145 stand\nperson dana buyer \"Dana Reed\"\n{more}",
        ));
        assert_eq!(story.refused, []);
        let page = self.page(phone);
        self.before_each_page(&page, HANDS);
        self.open(&page, app::address());
        app::read(self, &page);
        let lines: Vec<String> = story.book.entries().map(|(entry, _)| line::write(entry)).collect();
        let people: Vec<(String, String)> = story.people.iter().map(|(id, person)| (id.to_string(), person.name.clone())).collect();
        self.write_book(&page, &lines);
        self.write_people(&page, &people);
        self.eval(&page, "location.hash = 'jobs'");
        self.reload(&page);
        app::ready(self, &page);
        page
    }

    /// The page of its photos.
    pub fn open_photos(&mut self, page: &Page) {
        self.place(page, 4);
        self.tap_text(page, "Ash plant stand");
        self.tap_key(page, "Photos");
        self.wait(page, "document.querySelector('[data-place]').dataset.place === 'jobs/photos'");
    }
}
