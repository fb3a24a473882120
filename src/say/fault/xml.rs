//! Broken XML in words a leader can act on.

use super::place::in_quotes;
use crate::fault::gpx::{Attribute, Unclosed, Xml};

/// The cure for a file that was cut off.
const CUT_OFF: &str = "the file was cut off: copy or export it again";
/// The cure for everything else.
const REPAIR: &str = "export the file again, or mend it with a text editor";

pub(super) fn says(why: &Xml) -> String {
    let says = match why {
        Xml::Second => "a second document begins inside or behind the first",
        Xml::TextOutside => "text stands outside the root element",
        Xml::EndsBefore(tag) => return format!("the file ends before `</{tag}>`"),
        Xml::Overlong(mib) => {
            return format!("one tag, text or comment is longer than {mib} MiB");
        }
        Xml::Bang => "`<!` begins nothing that XML knows",
        Xml::Unclosed(what) => unclosed(*what),
        Xml::Mismatched { found, expected } => {
            let (found, expected) = (in_quotes(found), in_quotes(expected));
            return format!("{found} stands where {expected} is due");
        }
        Xml::Unmatched(found) => {
            return format!("{} closes nothing that is open", in_quotes(found));
        }
        Xml::Ampersand => "a bare `&` stands in the text",
        Xml::Attribute(why) => attribute(*why),
        Xml::NotUtf8 => "the text is not UTF-8",
        Xml::Encoding => "the text is not in the encoding the file says",
        Xml::Other(words) => words,
    };
    says.to_owned()
}

pub(super) fn hint(why: &Xml) -> &'static str {
    match why {
        Xml::Second => "two files were joined: split them again",
        Xml::TextOutside => "take it out, or export the file again",
        Xml::EndsBefore(_) | Xml::Unclosed(_) => CUT_OFF,
        Xml::Ampersand => "write `&amp;` in its place",
        Xml::NotUtf8 => {
            "save it as UTF-8, or begin it with <?xml version=\"1.0\" encoding=\"windows-1252\"?> (or what it is)"
        }
        Xml::Encoding => "save it as UTF-8",
        _ => REPAIR,
    }
}

fn unclosed(what: Unclosed) -> &'static str {
    match what {
        Unclosed::Instruction => "a processing instruction begins here and never ends",
        Unclosed::Declaration => "the XML declaration begins here and never ends",
        Unclosed::Comment => "a comment begins here and never ends",
        Unclosed::Doctype => "a DOCTYPE begins here and never ends",
        Unclosed::Cdata => "a CDATA section begins here and never ends",
        Unclosed::Tag => "a tag begins here and never ends",
        Unclosed::Value => "an attribute value in this tag never ends",
    }
}

fn attribute(why: Attribute) -> &'static str {
    match why {
        Attribute::NoValue => "an attribute has no value",
        Attribute::NothingAfter => "an attribute has nothing after its `=`",
        Attribute::Unquoted => "an attribute value has no quotation marks",
        Attribute::Open => "an attribute value has no closing quotation mark",
        Attribute::Twice => "an attribute is given twice in one tag",
    }
}
