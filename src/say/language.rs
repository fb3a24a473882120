//! The words of the languages: a row here and a folder of FTL files each.

use std::sync::LazyLock;

use crate::say::catalogue::{Catalogue, FtlFile};

pub use crate::trip::language::Language;

/// Each language with its tag, its decimal mark, its plurals, its files under `data/words/<tag>/`, behind them those that only a
/// feature needs, each after it, and after `else` those of the English ones that it falls back to where it has no message.
macro_rules! languages {
    ($($name:ident $tag:literal $mark:literal $plural:ident [$($file:literal)+] with [$($feature:literal $own:literal)*]
        else [$($english:literal)*] with [$($also:literal $other:literal)*])+) => {
        impl Language {
            /// What stands between the whole of a number and its decimals where people read it. Positions, and all that
            /// programs read, have a dot.
            ///
            /// ```
            /// use schrund::say::language::Language;
            ///
            /// assert_eq!(Language::ALL.iter().map(|l| l.decimal_mark()).collect::<String>(), ".,");
            /// ```
            #[must_use]
            pub fn decimal_mark(self) -> char {
                match self {
                    $(Self::$name => $mark,)+
                }
            }

            /// What can be said.
            pub(crate) fn catalogue(self) -> &'static Catalogue {
                match self {
                    $(Self::$name => {
                        static CATALOGUE: LazyLock<Catalogue> = LazyLock::new(|| {
                            const OWN: &[FtlFile] = &[$((
                                concat!($tag, "/", $file, ".ftl"),
                                include_str!(concat!("../../data/words/", $tag, "/", $file, ".ftl")),
                            ),)+ $(#[cfg(feature = $feature)] (
                                concat!($tag, "/", $own, ".ftl"),
                                include_str!(concat!("../../data/words/", $tag, "/", $own, ".ftl")),
                            ),)*];
                            const ENGLISH: &[FtlFile] = &[$((
                                concat!("en/", $english, ".ftl"),
                                include_str!(concat!("../../data/words/en/", $english, ".ftl")),
                            ),)* $(#[cfg(feature = $also)] (
                                concat!("en/", $other, ".ftl"),
                                include_str!(concat!("../../data/words/en/", $other, ".ftl")),
                            ),)*];
                            Catalogue::of(OWN, ENGLISH, $plural)
                        });
                        &CATALOGUE
                    })+
                }
            }
        }
    };
}

languages! {
    English "en" '.' one_or_other ["faults" "route-file" "zones-file" "terrain-file" "findings" "brief" "setups" "options"
        "outputs" "sheet" "hand" "cautions" "report" "draw" "zone"]
        with ["survey" "survey" "fetch" "fetch" "fetch" "network"] else [] with []
    German "de" ',' one_or_other ["findings" "brief" "setups" "options" "outputs" "sheet" "hand" "cautions" "report" "figures"
        "read" "draw" "zone"] with ["survey" "survey" "fetch" "fetch"]
        else ["faults" "route-file" "zones-file" "terrain-file"] with ["fetch" "network"]
}

impl Language {
    /// What is wrong with the files of the language, and where they say more or less than the English ones.
    /// A test holds that this is nothing.
    ///
    /// ```
    /// use schrund::say::language::Language;
    ///
    /// assert!(Language::ALL.iter().all(|language| language.faults().is_empty()));
    /// ```
    #[must_use]
    pub fn faults(self) -> Vec<String> {
        let catalogue = self.catalogue();
        let differences = catalogue.differences(Self::English.catalogue());
        catalogue.faults().into_iter().chain(differences).collect()
    }
}

/// One, and all others: plurals of English, and of most of its neighbours `[from memory: CLDR, whole numbers]`.
fn one_or_other(n: u64) -> &'static str {
    if n == 1 { "one" } else { "other" }
}

#[cfg(test)]
mod tests {
    use std::path::PathBuf;

    use super::*;
    use crate::say::ftl;

    #[test]
    fn every_language_says_all_that_english_says_and_no_more() {
        for language in Language::ALL {
            assert_eq!(language.faults(), [""; 0], "{language:?}");
        }
    }

    fn files(language: Language) -> impl Iterator<Item = PathBuf> {
        let tag = language.tag();
        let folder = format!("{}/data/words/{tag}", env!("CARGO_MANIFEST_DIR"));
        let files = std::fs::read_dir(folder).unwrap();
        files.map(|file| file.unwrap().path())
    }

    #[test]
    fn every_entry_says_alone_what_its_file_says() {
        for language in Language::ALL {
            let mut compared = 0;
            for file in files(*language) {
                let (entries, faults) = ftl::read("", &std::fs::read_to_string(&file).unwrap());
                assert_eq!(faults, [""; 0], "{file:?}");
                for (key, entry) in entries {
                    let alone = language.catalogue().entry(&key);
                    assert_eq!(format!("{alone:?}"), format!("{:?}", Some(entry)), "{key}");
                    compared += 1;
                }
            }
            assert!(compared > 300, "entries: {compared}");
        }
    }

    #[test]
    fn every_file_of_a_language_is_read() {
        let source = include_str!("language.rs");
        for file in Language::ALL.iter().flat_map(|language| files(*language)) {
            let name = file.file_stem().unwrap().to_string_lossy().into_owned();
            assert!(
                source.contains(&format!("\"{name}\"")),
                "{name} is not in the row"
            );
        }
    }
}
