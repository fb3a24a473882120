//! The limits of inputs that are in force for this call: the usual ones, but for what `--limit` says.

use std::sync::OnceLock;

use schrund::limits::{InputLimit, InputLimits};

/// What `--limit` says, once for each limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct LimitAsked {
    limit: InputLimit,
    most: u64,
}

static IN_FORCE: OnceLock<InputLimits> = OnceLock::new();

/// Puts them in force; once, before anything is read.
pub(crate) fn set(asked: &[LimitAsked]) {
    let usual = InputLimits::default();
    let limits = asked
        .iter()
        .fold(usual, |limits, asked| limits.with(asked.limit, asked.most));
    let _ = IN_FORCE.set(limits);
}

/// Those in force.
pub(crate) fn in_force() -> InputLimits {
    IN_FORCE.get().copied().unwrap_or_default()
}

/// A limit as it is typed: `text-mib=4`.
///
/// # Errors
/// There is no such limit, or it is no whole number that it takes.
pub(crate) fn asked(typed: &str) -> Result<LimitAsked, String> {
    let (name, number) = typed.split_once('=').unwrap_or((typed, ""));
    let Some(limit) = InputLimit::of(name) else {
        return Err(format!("there is no limit `{name}`; there are {}", names()));
    };
    let most = number.parse().ok();
    let most = most.filter(|most| (1..=InputLimit::MOST).contains(most));
    let wrong = || {
        format!(
            "`{name}` takes a whole number from 1 to {}",
            InputLimit::MOST
        )
    };
    Ok(LimitAsked {
        limit,
        most: most.ok_or_else(wrong)?,
    })
}

fn names() -> String {
    let names: Vec<&str> = InputLimit::ALL.iter().map(|limit| limit.name()).collect();
    names.join(", ")
}

/// What the help says.
pub(crate) fn help() -> String {
    let usual = InputLimits::default();
    let limits = InputLimit::ALL.iter();
    let all: Vec<String> = limits
        .map(|limit| format!("{}={}", limit.name(), usual[*limit]))
        .collect();
    format!(
        "Take more of an input than usual, or less: a limit keeps a damaged or wrong file from filling the memory. Usual are {}",
        all.join(", ")
    )
}
