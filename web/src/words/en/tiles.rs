//! English: tiles of a length that was asked.

pub const LENGTH: &str = "Tile length";
pub const LEFT_OPEN: &str =
    "Tile length may stay empty: then one tile is cut of each piece, as long as it gives. With a length, as many as come out of it.";
pub const TOO_LONG: &str = "its whole tiles are longer than a side: say a tile length";

/// "A tile of 700 mm does not come out of these pieces: the longest gives 675 mm between its trimmed ends."
pub fn too_long([tile, longest]: [String; 2]) -> String {
    format!("A tile of {tile} does not come out of these pieces: the longest gives {longest} between its trimmed ends.")
}

/// "A larger field of this pattern is cut to pieces of 2 in at its border, and the least piece is 2 1/2 in: that keeps it so small. …"
pub fn least_piece(cut: &str, least: &str) -> String {
    format!(
        "A larger field of this pattern is cut to pieces of {cut} at its border, and your least piece is {least}: that keeps it so small. To make it larger, set Least piece among the saw’s figures to {cut} or less."
    )
}

/// "Your least piece, 2 1/2 in, keeps this to less than half of what you asked."
pub fn kept_small(least: &str) -> String {
    format!("Your least piece, {least}, keeps this to less than half of what you asked.")
}

/// "The border needs pieces of 2 in, and your least piece is 2 1/2 in: so no more than one tile can be laid."
pub fn border_needs(cut: &str, least: &str) -> String {
    format!("The border needs pieces of {cut}, and your least piece is {least}: so no more than one tile can be laid.")
}

/// "A tile of 50 mm is shorter than your least piece, 60 mm."
pub fn too_short([tile, least]: [String; 2]) -> String {
    format!("A tile of {tile} is shorter than your least piece, {least}.")
}

/// "A herringbone of whole pieces has tiles of 675 mm here, longer than the 600 mm side. Say a tile length."
pub fn to_say([tile, side]: [String; 2]) -> String {
    format!("A herringbone of whole pieces has tiles of {tile} here, longer than the {side} side. Say a tile length.")
}

/// "3 boards: 4 tiles of 160 from each, 31 mm of each left"; of one board "4 tiles of 160, 31 mm left".
pub fn from_each(boards: Option<&str>, (tiles, one): (&str, bool), length: &str, left: Option<&str>) -> String {
    let tiles = format!("{tiles} {} of {length}", if one { "tile" } else { "tiles" });
    let (said, of_each) = boards.map_or((tiles.clone(), ""), |n| (format!("{n} boards: {tiles} from each"), " of each"));
    left.map_or_else(|| said.clone(), |left| format!("{said}, {left}{of_each} left"))
}

/// "A gives two whole tiles in its length, and one is planned: with a tile length, all that come out of it are."
pub fn two_in_length(letters: &[String]) -> String {
    let (all, give) = (super::plan::and(letters), if letters.len() == 1 { "gives" } else { "give" });
    format!("{all} {give} two whole tiles in length, and one is planned. With a tile length, all that come out are.")
}
