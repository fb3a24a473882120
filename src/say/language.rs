//! The languages there are: a folder of messages each, and how it counts and writes numbers.

/// A language that plans can be read in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Language {
    /// English, the language that every other one is checked against.
    #[default]
    English,
}

/// What makes a language.
struct Row {
    /// Its files, by name.
    files: &'static [(&'static str, &'static str)],
    /// The sign before decimals.
    decimal: char,
    /// The category of a whole number, by which messages choose `[Unicode CLDR plural rules, from memory]`.
    category: fn(usize) -> &'static str,
}

macro_rules! files {
    ($folder:literal) => {
        &[
            (
                "cautions.ftl",
                include_str!(concat!("../../data/words/", $folder, "/cautions.ftl")),
            ),
            (
                "findings.ftl",
                include_str!(concat!("../../data/words/", $folder, "/findings.ftl")),
            ),
            (
                "options.ftl",
                include_str!(concat!("../../data/words/", $folder, "/options.ftl")),
            ),
            (
                "outputs.ftl",
                include_str!(concat!("../../data/words/", $folder, "/outputs.ftl")),
            ),
            (
                "setups.ftl",
                include_str!(concat!("../../data/words/", $folder, "/setups.ftl")),
            ),
        ]
    };
}

const ENGLISH: Row = Row {
    files: files!("en"),
    decimal: '.',
    category: one_or_other,
};

fn one_or_other(n: usize) -> &'static str {
    if n == 1 { "one" } else { "other" }
}

impl Language {
    /// All of them.
    pub const ALL: [Self; 1] = [Self::English];

    fn row(self) -> &'static Row {
        match self {
            Self::English => &ENGLISH,
        }
    }

    /// The files of its catalogue, each with its name.
    #[must_use]
    pub fn files(self) -> &'static [(&'static str, &'static str)] {
        self.row().files
    }

    /// The category of a whole number: `one`, `other`.
    #[must_use]
    pub fn category(self, n: usize) -> &'static str {
        (self.row().category)(n)
    }

    /// A number written with a point, as this language writes it.
    pub(super) fn decimals(self, figure: String) -> String {
        match self.row().decimal {
            '.' => figure,
            sign => figure.replace('.', &sign.to_string()),
        }
    }
}
