//! `schrund schema`, `completions` and `man`.

use clap::CommandFactory;

use crate::{
    End,
    args::{Args, Document},
    show::Show,
};

pub(crate) fn schema(of: Document, show: &Show) -> End {
    let text = match of {
        Document::Plan => schrund::write::json::schema(),
        Document::Trip => schrund::read::trip::schema(),
        Document::Practice => schrund::read::practice::schema(),
        Document::Zones => Ok(include_str!("../../data/zones.schema.json").to_owned()),
    };
    match text {
        Ok(text) => show.result(|out| out.write_all(text.as_bytes())),
        Err(fault) => show.unexpected(&fault.to_string()),
    }
}

pub(crate) fn completions(shell: clap_complete::Shell, show: &Show) -> End {
    let mut text = Vec::new();
    clap_complete::generate(shell, &mut Args::command(), "schrund", &mut text);
    show.result(|out| out.write_all(&text))
}

pub(crate) fn man(show: &Show) -> End {
    show.result(|out| clap_mangen::Man::new(Args::command()).render(&mut &mut *out))
}
