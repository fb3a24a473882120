//! Set-ups drawn once for all legs and teams that share them, and never for those that do not.
