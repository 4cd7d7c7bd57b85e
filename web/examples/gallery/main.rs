//! Writes `target/gallery/*.html`: the parts put together as in the drawings, to look at in a browser.
use fivebar_web::parts::bars::{Bars, Cut, bars};
use fivebar_web::parts::board::Board;
use fivebar_web::parts::chips::{Chip, bundle, chips};
use fivebar_web::parts::field::{Field, Keyboard, field};
use fivebar_web::parts::head::{Fact, Head, head};
use fivebar_web::parts::key::{figure_key, key};
use fivebar_web::parts::load_bar::load_bar;
use fivebar_web::parts::notches::Notches;
use fivebar_web::parts::notice::{Trouble, trouble};
use fivebar_web::parts::pad::{entry, fraction_keys, pad};
use fivebar_web::parts::ratio::{Ratio, ratios};
use fivebar_web::parts::scale::{Band, Block, Fill, Kind, Look, Mark, Rhythm, Scale, Spoken, scale, slider};
use fivebar_web::parts::seg::{Seg, even, seg};
use fivebar_web::parts::slab::{Slab, slab};
use fivebar_web::parts::so_far::{Stretch, so_far, thin};
use fivebar_web::parts::stack::{Bracket, Part, stack};
use fivebar_web::parts::strip::{Strip, strip};
use fivebar_web::parts::tile::{self, First, Tile, blank, first, tile};
use fivebar_web::parts::undo::{Undo, undo};
use fivebar_web::parts::verdict::{Sign, verdict};
use fivebar_web::parts::{Page, Place, board, caution, glyph, place_bar, rack};
use fivebar_web::view::{El, el};
use std::{fs, path::Path};

mod bench;
mod jobs;
mod price;
mod yard;

type E = El<()>;
type Screen = (&'static str, fn(Page) -> E);

fn main() -> std::io::Result<()> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let mut sheets: Vec<_> = fs::read_dir(root.join("www/css"))?.filter_map(|f| f.ok().map(|f| f.path())).collect();
    sheets.sort();
    let css: String = sheets.iter().map(fs::read_to_string).collect::<Result<_, _>>()?;
    let css = css.replace("./font/", "../../www/font/");
    let out = root.join("target/gallery");
    fs::create_dir_all(&out)?;
    let screens: [Screen; 9] = [
        ("count", yard::count),
        ("bench", bench::bench),
        ("offer", price::offer),
        ("jobs", jobs::jobs),
        ("day-one", yard::day_one),
        ("job", jobs::job),
        ("rate", price::rate),
        ("look-back", jobs::look_back),
        ("trouble", yard::troubled),
    ];
    for (name, screen) in screens {
        for (kind, width, root_size) in [("", 390.0, 100), ("-320", 320.0, 100), ("-large", 390.0, 200), ("-wide", 1280.0, 100)] {
            let body = screen(Page::new(width * 100.0 / f64::from(root_size))).html();
            for (theme, dark) in [("light", ""), ("dark", "-dark")] {
                let page = format!(
                    "<!doctype html><html lang=en data-theme={theme}><meta charset=utf-8><meta name=viewport content=\"width=device-width\"><title>{name}</title><style>{css} html{{font-size:{root_size}%}}</style><body><div id=app>{body}</div>"
                );
                fs::write(out.join(format!("{name}{kind}{dark}.html")), page)?;
            }
        }
    }
    Ok(())
}

fn app(place: Place, parts: impl IntoIterator<Item = E>) -> E {
    el("div", "app").kids(parts).kid(place_bar::place_bar(place, |_| ()))
}
fn p(class: &'static str, text: &str) -> E {
    el("p", class).text(text.to_owned())
}
fn span(class: &'static str, text: &str) -> E {
    fivebar_web::parts::fraction::worded("span", class, text.to_owned())
}
fn row(left: E, right: E) -> E {
    el("p", "row").kid(left).kid(right)
}
fn bundles(at: usize) -> E {
    let chip = |(i, n): (usize, &str)| if i == at { Chip::choice(n, true).under("each tap") } else { Chip::choice(n, false) };
    bundle(["1", "5", "10", "n"].into_iter().enumerate().map(chip).collect(), |_| ())
}
