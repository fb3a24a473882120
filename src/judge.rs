//! Numbers → findings → verdicts.

pub(crate) mod falls;
pub(crate) mod leg;
pub(crate) mod of_team;
