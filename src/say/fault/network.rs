//! Addresses and what came from there, in words.

use super::phrase::{Phrase, figure, name, number};
use crate::{
    fault::network::{InNetwork, NotFollowed},
    say::arg::Arg,
};

pub(super) fn phrase(what: &InNetwork) -> Phrase {
    match what {
        InNetwork::NotBuilt => Phrase::plain("network-not-built"),
        InNetwork::NoAddress => Phrase::plain("network-no-address"),
        InNetwork::NotKept => Phrase::plain("network-not-kept"),
        InNetwork::NoServer => Phrase::plain("network-no-server"),
        InNetwork::NoConnection(words) => said("network-no-connection", words),
        InNetwork::Insecure(words) => said("network-insecure", words),
        InNetwork::NoAuthorities => Phrase::plain("network-no-authorities"),
        InNetwork::Late { allowed_s } => {
            Phrase::of("network-late", [("allowed", figure(allowed_s, "s"))])
        }
        InNetwork::WebPage => Phrase::plain("network-web-page"),
        InNetwork::Coding(words) => said("network-coding", words),
        InNetwork::Changed => Phrase::plain("network-changed"),
        InNetwork::NoOutlines => Phrase::plain("network-no-outlines"),
        InNetwork::NoHeights => Phrase::plain("network-no-heights"),
        InNetwork::NoGeotiff => Phrase::plain("network-no-geotiff"),
        InNetwork::NoPlaceholder(words) => said("network-no-placeholder", words),
        InNetwork::Other(words) => said("network-other", words),
        counted => with_figures(counted),
    }
}

fn said(key: &'static str, words: &str) -> Phrase {
    Phrase::of(key, [("words", name(words))])
}

fn with_figures(what: &InNetwork) -> Phrase {
    match what {
        InNetwork::Cut { got, due, tries } => Phrase::of(
            "network-cut",
            [
                ("got", number(got)),
                ("known", Arg::yes(due.is_some())),
                ("due", number(due.unwrap_or(0))),
                ("tries", count(*tries)),
            ],
        ),
        InNetwork::TooBig {
            most_mib, unpacked, ..
        } => Phrase::of(
            "network-too-big",
            [("mib", number(most_mib)), ("unpacked", Arg::yes(*unpacked))],
        ),
        InNetwork::Answered { status } => Phrase::of(
            "network-answered",
            [
                ("status", name(status)),
                ("sort", Arg::Word(sort_of(status))),
            ],
        ),
        InNetwork::Busy {
            status,
            tries,
            wait_s,
        } => Phrase::of(
            "network-busy",
            [
                ("status", name(status)),
                ("tries", count(*tries)),
                ("known", Arg::yes(wait_s.is_some())),
                ("wait", figure(wait_s.unwrap_or(0), "s")),
            ],
        ),
        InNetwork::SentOn { to, why } => sent_on(to, why),
        outlines => of_many(outlines),
    }
}

fn of_many(what: &InNetwork) -> Phrase {
    match what {
        InNetwork::SamePage { page } => {
            Phrase::of("network-same-page", [("page", Arg::Count(*page))])
        }
        InNetwork::FewOutlines { got, said } => Phrase::of(
            "network-few-outlines",
            [("got", number(got)), ("said", number(said))],
        ),
        InNetwork::ManyPages { most } => {
            Phrase::of("network-many-pages", [("most", Arg::Count(*most))])
        }
        InNetwork::NoneHere { outlines, around_m } => Phrase::of(
            "network-none-here",
            [
                ("outlines", Arg::Count(*outlines)),
                ("around", figure(around_m, "m")),
            ],
        ),
        InNetwork::ManyTiles { tiles, most } => Phrase::of(
            "network-many-tiles",
            [("tiles", Arg::Count(*tiles)), ("most", Arg::Count(*most))],
        ),
        InNetwork::ManyCells { cells, most } => Phrase::of(
            "network-many-cells",
            [("cells", number(cells)), ("most", number(most))],
        ),
        _ => Phrase::plain("network-no-address"),
    }
}

/// What a number of an answer asks for: the name that there is no such file, or the right to it.
fn sort_of(status: &str) -> &'static str {
    match status.get(..3) {
        Some("404" | "410") => "gone",
        Some("401" | "403") => "closed",
        Some(number) if number.starts_with('5') => "broken",
        _ => "other",
    }
}

fn sent_on(to: &str, why: &NotFollowed) -> Phrase {
    let (why, most) = match why {
        NotFollowed::NoWeb => ("no-web", 0),
        NotFollowed::Open => ("open", 0),
        NotFollowed::TooOften(most) => ("too-often", *most),
    };
    Phrase::of(
        "network-sent-on",
        [
            ("to", name(to)),
            ("why", Arg::Word(why)),
            ("most", Arg::Count(most)),
        ],
    )
}

fn count(tries: u32) -> Arg<'static> {
    Arg::Count(usize::try_from(tries).unwrap_or(usize::MAX))
}
