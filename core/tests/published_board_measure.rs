//! Topic 2 of `check_values.json`, board measure and units: hardwood trade guides, NIST SP 811, the FAO conversion appendix; each
//! row names its own source. A row that is not ours says where it belongs.

mod published;

use fivebar_core::quantity::reading::{Sign, Typing, distance, length, thickness};
use fivebar_core::quantity::{Decimal, Length, Units, Volume, half_up};
use published::Ours::{Elsewhere, Figures};
use published::{Row, check_all, topic};

const INCH: Typing = Typing { units: Units::Inch, sign: Sign::Point };

const LIQUIDS: &str =
    "no liquid is measured in gallons or ounces: a pack of finish is reckoned by its share used, in the maker's own figures";

#[test]
fn every_row_of_board_measure() {
    check_all(
        &topic("2-board-measure"),
        &[
            ("bf-definition", Figures(|_| vec![cubic_inches_of_a_foot() / cube(Length::FOOT).board_feet()])),
            ("bf-m3", Figures(|_| vec![cubic_metres(board_foot())])),
            ("bf-thousand", Figures(|_| vec![cubic_metres(board_foot().times(1_000).unwrap())])),
            ("si-cubic-foot", Figures(|_| vec![cubic_metres(cube(Length::FOOT))])),
            ("si-cubic-inch", Figures(|_| vec![cubic_metres(cube(Length::INCH))])),
            ("si-inch", Figures(|_| vec![metres(Length::INCH)])),
            ("si-mile", Figures(|_| vec![metres(distance("1 mi", INCH).unwrap()) / Decimal::ONE_THOUSAND])),
            ("bf-tally-half", Elsewhere("we round no surface: what is there is counted, and no half foot is ever met")),
            ("bf-tally-length", Elsewhere("an export tally, which cuts back to the whole foot; offcuts are counted as long as they are")),
            ("bf-tally-*", Figures(tally)),
            ("bf-under-one-inch", Figures(tally)),
            ("bf-quarters", Figures(|_| ["4/4", "5/4", "6/4", "8/4"].map(|name| inches(thickness(name, INCH).unwrap())).into())),
            ("bf-ps20", Elsewhere("dressed softwood: sizes of offcuts are measured, never taken from a name")),
            ("si-US-gallon", Elsewhere(LIQUIDS)),
            ("si-imperial-gallon", Elsewhere(LIQUIDS)),
            ("si-US-fluid-ounce", Elsewhere(LIQUIDS)),
            ("si-cord", Elsewhere("firewood by the cord is never counted here: rejects are counted in pieces")),
        ],
    );
}

#[test]
fn a_board_foot_is_one() {
    assert_eq!((board_foot(), board_foot().board_feet()), (Volume::BOARD_FOOT, Decimal::ONE));
}

/// The trade rounds the surface measure to whole feet, and counts what is thinner than an inch as an inch. We count what is there:
/// ours is the exact figure, and gives theirs once it is rounded where they round.
fn tally(row: &Row) -> Vec<Decimal> {
    let side = |name: &str, unit: &str| length(&format!("{} {unit}", row.input(name)), INCH).unwrap();
    let surface = Volume::of(Length::INCH, side("width_in", "in"), side("length_ft", "ft")).unwrap().board_feet();
    vec![half_up(surface, 0) * inches(side("thickness_in", "in").max(Length::INCH))]
}

fn board_foot() -> Volume {
    Volume::of(Length::FOOT, Length::FOOT, Length::INCH).unwrap()
}

fn cubic_inches_of_a_foot() -> Decimal {
    let side = inches(Length::FOOT);
    side * side * side
}

fn cube(side: Length) -> Volume {
    Volume::of(side, side, side).unwrap()
}

fn cubic_metres(volume: Volume) -> Decimal {
    volume.cubic_metres().to_string().parse().unwrap()
}

fn metres(length: Length) -> Decimal {
    Decimal::new(length.as_nm(), 9)
}

fn inches(length: Length) -> Decimal {
    Decimal::from(length.as_nm()) / Decimal::from(Length::INCH.as_nm())
}
