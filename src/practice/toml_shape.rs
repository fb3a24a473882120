//! What a broken TOML text looks like, statement by statement: why it is none is read off the text itself, whatever words
//! a parser has for it.

use crate::fault::toml::NotClosed;

/// Nested deeper than this, or with more parts in a name, a text is called too deep. Our judgement; a parser gives up
/// somewhere beyond.
const DEEP: usize = 64;

/// A name with its value, or the name of a table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Statement {
    /// Where it begins, in bytes.
    pub(super) from: usize,
    /// Where it ends, or where it is seen that something in it is not closed.
    pub(super) to: usize,
    /// What is not closed.
    pub(super) open: Option<NotClosed>,
    /// Whether it is nested too deeply.
    pub(super) deep: bool,
}

/// All statements of a text; behind one that is never closed there is none.
pub(super) fn statements(text: &str) -> Vec<Statement> {
    let mut all = Vec::new();
    let mut from = 0;
    while from < text.len() {
        let statement = Scan::new(text, from).statement();
        from = statement.to + 1;
        all.push(statement);
    }
    all
}

/// The statement that holds a byte; at the end of the text the last that is not closed.
pub(super) fn at(all: &[Statement], byte: usize) -> Option<&Statement> {
    let after = all.partition_point(|s| s.from <= byte);
    let found = all.get(after.checked_sub(1)?)?;
    let beyond = byte > found.to || after == all.len() && found.open.is_none() && !found.deep;
    let graver = |s: &&Statement| s.open.is_some() || s.deep;
    let open = || all.iter().rev().find(graver);
    if beyond && found.to <= byte {
        open().or(Some(found))
    } else {
        Some(found)
    }
}

/// Reads one statement.
struct Scan<'t> {
    bytes: &'t [u8],
    from: usize,
    at: usize,
    /// What was opened, the outermost first.
    opened: Vec<NotClosed>,
    deepest: usize,
}

impl<'t> Scan<'t> {
    fn new(text: &'t str, from: usize) -> Self {
        Self {
            bytes: text.as_bytes(),
            from,
            at: from,
            opened: Vec::new(),
            deepest: 0,
        }
    }

    fn statement(mut self) -> Statement {
        while matches!(self.peek(), Some(b' ' | b'\t')) {
            self.at += 1;
        }
        let open = if self.peek() == Some(b'[') {
            self.table_name()
        } else {
            self.name().or_else(|| self.value())
        };
        Statement {
            from: self.from,
            to: self.at,
            open,
            deep: self.deepest > DEEP,
        }
    }

    fn peek(&self) -> Option<u8> {
        self.bytes.get(self.at).copied()
    }

    /// `[assume]`, `[[rope]]`.
    fn table_name(&mut self) -> Option<NotClosed> {
        let mut brackets = 0_i64;
        let mut dots = 0;
        while let Some(byte) = self.peek().filter(|b| *b != b'\n') {
            match byte {
                b'[' => brackets += 1,
                b']' => brackets -= 1,
                b'.' => dots += 1,
                b'#' if brackets == 0 => {
                    self.skip_line();
                    break;
                }
                _ => {}
            }
            self.at += 1;
        }
        self.deepest = dots;
        (brackets > 0).then_some(NotClosed::Name)
    }

    /// What stands before the sign of equality.
    fn name(&mut self) -> Option<NotClosed> {
        let mut dots = 0;
        let mut open = None;
        while let Some(byte) = self.peek().filter(|b| !matches!(b, b'=' | b'\n')) {
            match byte {
                b'.' => dots += 1,
                b'#' => self.skip_line(),
                b'"' | b'\'' if open.is_none() => open = self.quoted(byte),
                _ => {}
            }
            if self.peek().is_some_and(|b| b != b'\n') {
                self.at += 1;
            }
        }
        self.deepest = dots;
        open
    }

    fn value(&mut self) -> Option<NotClosed> {
        while let Some(byte) = self.peek() {
            match byte {
                b'#' => self.skip_line(),
                b'"' | b'\'' => {
                    if let Some(open) = self.quoted(byte) {
                        return Some(open);
                    }
                }
                b'[' => self.opened.push(NotClosed::List),
                b'{' => self.opened.push(NotClosed::Braces),
                b']' | b'}' => drop(self.opened.pop()),
                b'\n' if self.opened.is_empty() => return None,
                b'\n' if self.opened.last() == Some(&NotClosed::Braces) => break,
                b'=' if self.opened.last() == Some(&NotClosed::List) => break,
                _ => {}
            }
            self.deepest = self.deepest.max(self.opened.len());
            if self
                .peek()
                .is_some_and(|b| b != b'\n' || !self.opened.is_empty())
            {
                self.at += 1;
            }
        }
        self.opened.last().copied()
    }

    /// A text between its marks; the last mark is left to be stepped over.
    fn quoted(&mut self, mark: u8) -> Option<NotClosed> {
        let three = [mark; 3];
        let rest = self.bytes.get(self.at..).unwrap_or_default();
        let many = rest.starts_with(&three);
        self.at += if many { 3 } else { 1 };
        while let Some(byte) = self.peek() {
            let rest = self.bytes.get(self.at..).unwrap_or_default();
            match byte {
                b'\\' if mark == b'"' => self.at += 1,
                b'\n' if !many => return Some(NotClosed::Text),
                _ if many && rest.starts_with(&three) => {
                    self.at += 2;
                    return None;
                }
                _ if !many && byte == mark => return None,
                _ => {}
            }
            self.at += 1;
        }
        self.at = self.at.min(self.bytes.len());
        Some(NotClosed::Text)
    }

    fn skip_line(&mut self) {
        while self.peek().is_some_and(|b| b != b'\n') {
            self.at += 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shapes(text: &str) -> Vec<(&str, Option<NotClosed>)> {
        let all = statements(text);
        let shape = |s: &Statement| (text[s.from..s.to.min(text.len())].trim(), s.open);
        all.iter().map(shape).collect()
    }

    #[test]
    fn whole_statements_are_closed_whatever_stands_in_them() {
        let text = "a = [1, # ] {\n 2]\n[b.c] # [\nd = \"x # [ \\\" y\"\ne = '''\n]\n'''\nf = { g = [1] }\n";
        let want = [
            "a = [1, # ] {\n 2]",
            "[b.c] # [",
            "d = \"x # [ \\\" y\"",
            "e = '''\n]\n'''",
            "f = { g = [1] }",
        ];
        assert_eq!(shapes(text), want.map(|s| (s, None)));
    }

    #[test]
    fn what_is_open_is_seen_where_it_stands() {
        let open = |text: &str| shapes(text)[0].1;
        assert_eq!(open("a = [1, 2\nb = 3\n"), Some(NotClosed::List));
        assert_eq!(open("a = {\n"), Some(NotClosed::Braces));
        assert_eq!(open("[a\n"), Some(NotClosed::Name));
        assert_eq!(open("[[a]\n"), Some(NotClosed::Name));
        assert_eq!(open("a = \"x\n"), Some(NotClosed::Text));
        assert_eq!(open("a = '''x\n"), Some(NotClosed::Text));
        assert_eq!(open("a = \"\\"), Some(NotClosed::Text));
    }

    #[test]
    fn anything_ends() {
        for text in [
            "", "=", "\"", "[", "a", "a=", "a='", "{", "]]", "\r\n", "a = ]\n", "ä = 'ö",
        ] {
            assert!(statements(text).len() <= 2, "{text:?}");
        }
    }
}
