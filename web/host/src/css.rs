//! The stylesheet: many small sources in the order of their names, one file on the phone.

/// Joins the sheets in the order given, without comments and indentation.
pub fn join<'a>(sheets: impl IntoIterator<Item = &'a str>) -> String {
    let mut joined = String::new();
    for sheet in sheets {
        for line in without_comments(sheet).lines().map(str::trim).filter(|l| !l.is_empty()) {
            joined.push_str(line);
            joined.push('\n');
        }
    }
    joined
}

/// A comment becomes a space, as CSS reads it; what stands in quotes is left alone.
fn without_comments(sheet: &str) -> String {
    let (mut plain, mut rest, mut quote) = (String::with_capacity(sheet.len()), sheet, None);
    while let Some(c) = rest.chars().next() {
        if quote.is_none() && rest.starts_with("/*") {
            plain.push(' ');
            rest = rest.split_once("*/").map_or("", |(_, after)| after);
            continue;
        }
        // What stands behind a backslash closes no quote.
        let length = if c == '\\' { 1 + rest.chars().nth(1).map_or(0, char::len_utf8) } else { c.len_utf8() };
        quote = match (quote, c) {
            (None, '"' | '\'') => Some(c),
            (Some(open), c) if open == c => None,
            (open, _) => open,
        };
        let (taken, after) = rest.split_at(length);
        plain.push_str(taken);
        rest = after;
    }
    plain
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn comments_and_indentation_go_and_the_order_stays() {
        assert_eq!(join(["a {\n  b: c; /* why\n   */\n}\n", "/* d */\ne {}"]), "a {\nb: c;\n}\ne {}\n");
    }

    #[test]
    fn what_stands_in_quotes_is_left_alone() {
        assert_eq!(
            join([r#"a::after { content: "/* no \" comment */" } /* gone */"#]),
            "a::after { content: \"/* no \\\" comment */\" }\n"
        );
        assert_eq!(join(["a { content: '\"' } /* gone */ b {}"]), "a { content: '\"' }   b {}\n");
    }

    #[test]
    fn a_comment_parts_two_words() {
        assert_eq!(join(["a/**/b {}"]), "a b {}\n");
    }

    #[test]
    fn a_comment_that_never_ends_takes_the_rest() {
        assert_eq!(join(["a {} /* b {}"]), "a {}\n");
    }
}
