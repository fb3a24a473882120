//! What the parser stumbled over, as one of the ways in which XML is broken.

use quick_xml::{
    Error,
    encoding::EncodingError,
    errors::{IllFormedError, SyntaxError},
    events::attributes::AttrError,
};

use crate::fault::{
    gpx::{Attribute, Unclosed, Xml},
    place::Excerpt,
};

use super::fix::excerpt;

/// What the parser stumbled over; reading fails here only where the running event passed the limit.
pub(super) fn of(error: &Error, most_mib: u64) -> Xml {
    match error {
        Error::Io(_) => Xml::Overlong(most_mib),
        Error::Syntax(e) => syntax(*e),
        Error::IllFormed(e) => ill_formed(e),
        Error::InvalidAttr(e) => Xml::Attribute(attribute(e)),
        Error::Encoding(EncodingError::Utf8(_)) => Xml::NotUtf8,
        Error::Encoding(_) => Xml::Encoding,
        Error::Escape(_) | Error::Namespace(_) => Xml::Other(error.to_string()),
    }
}

fn syntax(error: SyntaxError) -> Xml {
    Xml::Unclosed(match error {
        SyntaxError::InvalidBangMarkup => return Xml::Bang,
        SyntaxError::UnclosedPI => Unclosed::Instruction,
        SyntaxError::UnclosedXmlDecl => Unclosed::Declaration,
        SyntaxError::UnclosedComment => Unclosed::Comment,
        SyntaxError::UnclosedDoctype => Unclosed::Doctype,
        SyntaxError::UnclosedCData => Unclosed::Cdata,
        SyntaxError::UnclosedTag => Unclosed::Tag,
        SyntaxError::UnclosedSingleQuotedAttributeValue
        | SyntaxError::UnclosedDoubleQuotedAttributeValue => Unclosed::Value,
    })
}

fn ill_formed(error: &IllFormedError) -> Xml {
    match error {
        IllFormedError::MismatchedEndTag { expected, found } => Xml::Mismatched {
            found: tag(found),
            expected: tag(expected),
        },
        IllFormedError::UnmatchedEndTag(found) => Xml::Unmatched(tag(found)),
        IllFormedError::UnclosedReference => Xml::Ampersand,
        other => Xml::Other(other.to_string()),
    }
}

/// `</trkpt>`, however long or odd the name.
fn tag(name: &str) -> Excerpt {
    excerpt(&format!("</{name}>"))
}

/// How an attribute is malformed.
pub(super) fn attribute(error: &AttrError) -> Attribute {
    match error {
        AttrError::ExpectedEq(_) => Attribute::NoValue,
        AttrError::ExpectedValue(_) => Attribute::NothingAfter,
        AttrError::UnquotedValue(_) => Attribute::Unquoted,
        AttrError::ExpectedQuote(..) => Attribute::Open,
        AttrError::Duplicated(..) => Attribute::Twice,
    }
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
