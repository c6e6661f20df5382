//! The page's markup, as far as the set-up reads and writes it: tags by their name, and no idle blanks.

use std::ops::Range;

/// One opening tag.
#[derive(Debug, Clone, PartialEq)]
pub struct Tag<'a> {
    /// Where it stands.
    pub place: Range<usize>,
    /// It, from `<` to `>`.
    pub text: &'a str,
}

impl<'a> Tag<'a> {
    /// Whether the attribute is there, with a value or without.
    pub fn has(&self, key: &str) -> bool {
        self.attributes().any(|(name, _)| name == key)
    }

    /// The attribute's value, with quotes round it in the page or without.
    pub fn value(&self, key: &str) -> Option<&'a str> {
        self.attributes().find(|(name, _)| *name == key)?.1
    }

    /// Each attribute with its value.
    fn attributes(&self) -> impl Iterator<Item = (&'a str, Option<&'a str>)> {
        let inside = self.text.trim_start_matches('<').trim_end_matches('>');
        let mut rest = inside
            .split_once(|c: char| c.is_whitespace())
            .map_or("", |(_, rest)| rest);
        std::iter::from_fn(move || {
            rest = rest.trim_start_matches(|c: char| c.is_whitespace() || c == '/');
            if rest.is_empty() {
                return None;
            }
            let end = rest
                .find(|c: char| c.is_whitespace() || c == '=')
                .unwrap_or(rest.len());
            let (name, after) = rest.split_at(end);
            let Some(value) = after.strip_prefix('=') else {
                rest = after;
                return Some((name, None));
            };
            let quote = value.chars().next().filter(|c| matches!(c, '"' | '\''));
            let (value, after) = match quote {
                Some(quote) => value[1..].split_once(quote).unwrap_or((&value[1..], "")),
                None => value
                    .split_once(|c: char| c.is_whitespace())
                    .unwrap_or((value, "")),
            };
            rest = after;
            Some((name, Some(value)))
        })
    }
}

/// The opening tags of that name, in the order of the page. A value that holds `>` is not expected.
pub fn tags<'a>(page: &'a str, name: &str) -> impl Iterator<Item = Tag<'a>> {
    let open = format!("<{name}");
    let mut at = 0;
    std::iter::from_fn(move || {
        loop {
            let begin = at + page.get(at..)?.find(&open)?;
            let end = begin + page.get(begin..)?.find('>')? + 1;
            at = end;
            let text = &page[begin..end];
            let whole = text[open.len()..].starts_with(|c: char| c.is_whitespace() || matches!(c, '>' | '/'));
            if whole {
                return Some(Tag {
                    place: begin..end,
                    text,
                });
            }
        }
    })
}

/// The page without comments and without the blanks that lay it out in the source: a line's, and those
/// between a tag's attributes. Scripts keep their lines.
pub fn squeezed(page: &str) -> String {
    const SCRIPT: (&str, &str) = ("<script", "</script>");
    let mut rest = without_comments(page);
    let mut done = String::new();
    while let Some(begin) = rest.find(SCRIPT.0) {
        let end = rest[begin..]
            .find(SCRIPT.1)
            .map_or(rest.len(), |end| begin + end + SCRIPT.1.len());
        done += &lines(&rest[..begin]);
        done += rest[begin..end].trim();
        rest.drain(..end);
    }
    done + &lines(&rest)
}

fn without_comments(page: &str) -> String {
    let mut rest = page;
    let mut done = String::new();
    while let Some((before, after)) = rest.split_once("<!--") {
        done += before;
        rest = after.split_once("-->").map_or("", |(_, rest)| rest);
    }
    done + rest
}

/// Lines joined: without a blank after a tag or before one, with one blank elsewhere.
fn lines(page: &str) -> String {
    let mut done = String::new();
    for line in page.lines().map(str::trim).filter(|line| !line.is_empty()) {
        let apart = !done.is_empty() && !done.ends_with('>') && !line.starts_with(['<', '>', '/']);
        if apart {
            done.push(' ');
        }
        done += line;
    }
    done
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tag_is_read_with_its_quotes_or_without() {
        let page =
            "<linker><link data-trunk\n  rel=\"css\" href='a b.css' />\n<link href=b.css rel=stylesheet>";
        let all: Vec<Tag<'_>> = tags(page, "link").collect();
        assert_eq!(all.len(), 2);
        assert!(all[0].has("data-trunk") && !all[1].has("data-trunk"));
        assert_eq!(
            (all[0].value("rel"), all[0].value("href")),
            (Some("css"), Some("a b.css"))
        );
        assert_eq!(
            (all[1].value("rel"), all[1].value("href")),
            (Some("stylesheet"), Some("b.css"))
        );
        assert_eq!(all[1].value("media"), None);
        assert_eq!(&page[all[1].place.clone()], all[1].text);
        // What only ends like an attribute's name is another.
        assert_eq!(
            tags("<link data-href=x>", "link")
                .next()
                .and_then(|tag| tag.value("href")),
            None
        );
    }

    #[test]
    fn blanks_of_the_source_go_and_those_of_the_words_stay() {
        let page = "<!doctype html>\n<p>\n  Two\n  words <b>stay</b> here.\n  <!-- not\n this --></p>\n<script>\n  a;\n  b;\n</script>\n<i\n  a=\"1\"\n  b\n/>\n";
        assert_eq!(
            squeezed(page),
            "<!doctype html><p>Two words <b>stay</b> here.</p><script>\n  a;\n  b;\n</script><i a=\"1\" b/>"
        );
    }
}
