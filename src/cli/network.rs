//! Inputs given as addresses: who asks for them, and how far they have come. No secret of one is ever told.

use std::io::BufRead;

use schrund::{
    fault::{Fault, Wrong, network::address_shown},
    raster,
    say::plain,
};

/// A text in which every address of the call stands without its secrets.
pub(crate) fn bare(text: String) -> String {
    let with_secrets = addresses().filter(|address| address_shown(address) != *address);
    with_secrets.fold(text, |text, address| {
        let shown = address_shown(&address);
        text.replace(&address, &shown)
            .replace(&plain::visible(&address), &shown)
    })
}

/// The addresses of the call, those behind an equals sign too.
fn addresses() -> impl Iterator<Item = String> {
    let words = std::env::args_os().skip(1);
    let words = words.map(|word| word.to_string_lossy().into_owned());
    words.filter_map(|word| {
        let small = word.to_ascii_lowercase();
        let at = small.find("http://").or_else(|| small.find("https://"))?;
        word.get(at..).map(str::to_owned)
    })
}

/// Opens the text that an address gives.
pub(crate) fn open(name: &str) -> Result<Box<dyn BufRead + Send>, Fault> {
    ask::open(name)
}

/// Opens a file on a server that is read here and there.
pub(crate) fn seekable(name: &str) -> Result<raster::RasterSource, Fault> {
    ask::seekable(name)
}

/// Opens a file of outlines on a server, which is read as its index tells.
pub(crate) fn outline_file(name: &str) -> Result<raster::RasterSource, Fault> {
    ask::outline_file(name)
}

/// Of a model on a server what lies round a line, as a file of its own; `None` where that cannot be cut out of it.
#[cfg(feature = "page")]
pub(crate) fn around(
    name: &str,
    line: &schrund::trip::route::Route,
) -> Result<Option<Vec<u8>>, Fault> {
    use schrund::fault::network::InNetwork;
    let Some(all) = line.bounds() else {
        return Ok(None);
    };
    let across_m = all.low.distance_m(all.high);
    match ask::cut(name, all.widened(LEAST_M.max(across_m * BESIDE))) {
        Err(fault) if fault.what == InNetwork::NoGeotiff.into() => Ok(None),
        cut => cut,
    }
}

/// Share of a line's size up to which ground beside it is taken: a little more than the map of a page shows of it. Our judgement.
#[cfg(feature = "page")]
const BESIDE: f64 = 0.2;
/// Least width of that ground, metres. Our judgement.
#[cfg(feature = "page")]
const LEAST_M: f64 = 2000.0;

/// Faults of models as those of the network where one of them broke off while it was read; each of these once.
pub(crate) fn as_they_broke_off(problems: &[Fault]) -> Vec<Fault> {
    let mut told: Vec<Fault> = Vec::new();
    for problem in problems {
        let problem = ask::told_for(problem.clone());
        // No other fault comes twice, and of those there may be tens of thousands.
        let again = matches!(problem.what, Wrong::Network(_)) && told.contains(&problem);
        if !again {
            told.push(problem);
        }
    }
    told
}

#[cfg(feature = "fetch")]
pub(crate) use ask::{fetcher, set};

#[cfg(not(feature = "fetch"))]
mod ask {
    use std::io::BufRead;

    use schrund::{
        fault::{
            Fault, Place,
            network::{InNetwork, address_shown},
        },
        raster,
    };

    pub(super) fn open(name: &str) -> Result<Box<dyn BufRead + Send>, Fault> {
        Err(not_built(name))
    }

    pub(super) fn seekable(name: &str) -> Result<raster::RasterSource, Fault> {
        Err(not_built(name))
    }

    pub(super) fn outline_file(name: &str) -> Result<raster::RasterSource, Fault> {
        Err(not_built(name))
    }

    pub(super) fn told_for(fault: Fault) -> Fault {
        fault
    }

    #[cfg(feature = "page")]
    pub(super) fn cut(name: &str, _: schrund::geometry::Bounds) -> Result<Option<Vec<u8>>, Fault> {
        Err(not_built(name))
    }

    fn not_built(name: &str) -> Fault {
        Fault::new(InNetwork::NotBuilt, Place::file(&address_shown(name)))
    }
}

#[cfg(feature = "fetch")]
mod ask {
    use std::{
        io::{BufRead, BufReader, IsTerminal, stderr},
        sync::{Arc, OnceLock},
    };

    use indicatif::{ProgressBar, ProgressStyle};
    use schrund::{
        fault::Fault,
        fetch::{Address, AddressStore, Fetcher, Manners, Progress, Wanted},
        raster,
    };

    use crate::limits;

    /// Who asks in this call.
    static FETCHER: OnceLock<Fetcher> = OnceLock::new();

    /// How a file that comes is shown.
    const BAR: &str = "{msg} {bytes} of {total_bytes}";
    /// The same where nobody knows how long it is.
    const COUNT: &str = "{msg} {bytes}";

    /// Who asks, as the flags of the call say; once, before anything is asked.
    pub(crate) fn set(offline: bool, quiet: bool) {
        let fetcher = Fetcher::new(manners(), AddressStore::of_user(), offline);
        let shown = !quiet && stderr().is_terminal();
        let fetcher = if shown {
            fetcher.told_to(progress())
        } else {
            fetcher
        };
        let _ = FETCHER.set(fetcher);
    }

    /// Whoever asks.
    pub(crate) fn fetcher() -> &'static Fetcher {
        FETCHER.get_or_init(|| Fetcher::new(manners(), AddressStore::of_user(), false))
    }

    fn manners() -> Manners {
        Manners::of(&limits::in_force())
    }

    /// One line on the terminal, gone when the file is there.
    fn progress() -> Progress {
        let bar = ProgressBar::no_length();
        Arc::new(move |address, got, due| {
            let style = ProgressStyle::with_template(if due.is_some() { BAR } else { COUNT });
            if let Ok(style) = style {
                bar.set_style(style);
            }
            if let Some(due) = due {
                bar.set_length(due);
            }
            bar.set_message(address.to_owned());
            bar.set_position(got);
            if due == Some(got) {
                bar.finish_and_clear();
                bar.reset();
            }
        })
    }

    pub(super) fn open(name: &str) -> Result<Box<dyn BufRead + Send>, Fault> {
        let answer = fetcher().whole(&Address::parse(name)?, Wanted::Data)?;
        Ok(Box::new(BufReader::new(answer.open()?)))
    }

    #[cfg(feature = "page")]
    pub(super) fn cut(
        name: &str,
        window: schrund::geometry::Bounds,
    ) -> Result<Option<Vec<u8>>, Fault> {
        let cut = fetcher().cut(&Address::parse(name)?, &[window], None)?;
        Ok(cut.map(|cut| cut.bytes))
    }

    pub(super) fn told_for(fault: Fault) -> Fault {
        fetcher().told_for(fault)
    }

    pub(super) fn seekable(name: &str) -> Result<raster::RasterSource, Fault> {
        fetcher().model(&Address::parse(name)?)
    }

    pub(super) fn outline_file(name: &str) -> Result<raster::RasterSource, Fault> {
        let address = Address::parse(name)?;
        match fetcher().outline_file(&address)? {
            Some((source, _)) => Ok(source),
            None => fetcher().model(&address),
        }
    }
}
