//! Broken XML in words a leader can act on.

use quick_xml::{
    Error,
    encoding::EncodingError,
    errors::{IllFormedError, SyntaxError},
    events::attributes::AttrError,
};

use super::fix::quoted;
use super::source::LONGEST_EVENT_BYTES;

/// The cure for a file that was cut off.
pub(super) const CUT_OFF: &str = "the file was cut off: copy or export it again";
/// The cure for everything else.
const REPAIR: &str = "export the file again, or mend it with a text editor";
const MIB: u64 = 1 << 20;

/// What is wrong and how to mend it.
pub(super) type Words = (String, &'static str);

/// Words for what the parser stumbled over. `overlong`: the running event passed the limit.
pub(super) fn words(error: &Error, overlong: bool) -> Words {
    match error {
        Error::Io(_) if overlong => (
            format!(
                "one tag, text or comment is longer than {} MiB",
                LONGEST_EVENT_BYTES / MIB
            ),
            REPAIR,
        ),
        Error::Io(e) => (format!("reading stopped: {e}"), "read the file again"),
        Error::Syntax(SyntaxError::InvalidBangMarkup) => {
            ("`<!` begins nothing that XML knows".to_owned(), REPAIR)
        }
        Error::Syntax(e) => (unclosed(*e).to_owned(), CUT_OFF),
        Error::IllFormed(e) => ill_formed(e),
        Error::InvalidAttr(e) => attribute(e),
        Error::Encoding(EncodingError::Utf8(_)) => (
            "the text is not UTF-8".to_owned(),
            "save it as UTF-8, or begin it with <?xml version=\"1.0\" encoding=\"windows-1252\"?> (or what it is)",
        ),
        Error::Encoding(_) => (
            "the text is not in the encoding the file says".to_owned(),
            "save it as UTF-8",
        ),
        Error::Escape(_) | Error::Namespace(_) => (error.to_string(), REPAIR),
    }
}

fn unclosed(error: SyntaxError) -> &'static str {
    match error {
        SyntaxError::InvalidBangMarkup => "a mark begins here and never ends",
        SyntaxError::UnclosedPI => "a processing instruction begins here and never ends",
        SyntaxError::UnclosedXmlDecl => "the XML declaration begins here and never ends",
        SyntaxError::UnclosedComment => "a comment begins here and never ends",
        SyntaxError::UnclosedDoctype => "a DOCTYPE begins here and never ends",
        SyntaxError::UnclosedCData => "a CDATA section begins here and never ends",
        SyntaxError::UnclosedTag => "a tag begins here and never ends",
        SyntaxError::UnclosedSingleQuotedAttributeValue
        | SyntaxError::UnclosedDoubleQuotedAttributeValue => {
            "an attribute value in this tag never ends"
        }
    }
}

fn ill_formed(error: &IllFormedError) -> Words {
    match error {
        IllFormedError::MismatchedEndTag { expected, found } => {
            let (found, expected) = (tag(found), tag(expected));
            (format!("{found} stands where {expected} is due"), REPAIR)
        }
        IllFormedError::UnmatchedEndTag(found) => (
            format!("{} closes nothing that is open", tag(found)),
            REPAIR,
        ),
        IllFormedError::UnclosedReference => (
            "a bare `&` stands in the text".to_owned(),
            "write `&amp;` in its place",
        ),
        other => (other.to_string(), REPAIR),
    }
}

/// `"</trkpt>"`, however long or odd the name.
fn tag(name: &str) -> String {
    quoted(&format!("</{name}>"))
}

/// Words for a malformed attribute.
pub(super) fn attribute(error: &AttrError) -> Words {
    let says = match error {
        AttrError::ExpectedEq(_) => "an attribute has no value",
        AttrError::ExpectedValue(_) => "an attribute has nothing after its `=`",
        AttrError::UnquotedValue(_) => "an attribute value has no quotation marks",
        AttrError::ExpectedQuote(..) => "an attribute value has no closing quotation mark",
        AttrError::Duplicated(..) => "an attribute is given twice in one tag",
    };
    (says.to_owned(), REPAIR)
}

/// Where in the tag the attribute fault lies, bytes from the `<`.
pub(super) fn attribute_offset(error: &AttrError) -> usize {
    match *error {
        AttrError::ExpectedEq(at)
        | AttrError::ExpectedValue(at)
        | AttrError::UnquotedValue(at)
        | AttrError::ExpectedQuote(at, _)
        | AttrError::Duplicated(at, _) => at + 1,
    }
}
