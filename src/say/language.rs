//! The languages: a row here and a folder of FTL files each.

use std::sync::LazyLock;

use crate::say::catalogue::Catalogue;

/// Each language with its tag (BCP 47), its plurals, and its files under `data/words/<tag>/`.
macro_rules! languages {
    ($($(#[$meta:meta])* $name:ident $tag:literal $plural:ident [$($file:literal)+])+) => {
        /// A language that everything can be said in.
        ///
        /// ```
        /// use schrund::say::language::Language;
        ///
        /// assert_eq!(Language::default().tag(), "en");
        /// assert!(Language::ALL.iter().all(|language| language.faults().is_empty()));
        /// ```
        #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
        pub enum Language {
            $($(#[$meta])* $name,)+
        }

        impl Language {
            /// All there are; English, which the others follow, first.
            pub const ALL: &[Self] = &[$(Self::$name,)+];

            /// The tag of the language as in BCP 47: `en`.
            #[must_use]
            pub fn tag(self) -> &'static str {
                match self {
                    $(Self::$name => $tag,)+
                }
            }

            /// What can be said, read once.
            pub(crate) fn catalogue(self) -> &'static Catalogue {
                match self {
                    $(Self::$name => {
                        static READ: LazyLock<Catalogue> = LazyLock::new(|| {
                            let files = [$((
                                concat!($tag, "/", $file, ".ftl"),
                                include_str!(concat!("../../data/words/", $tag, "/", $file, ".ftl")),
                            ),)+];
                            Catalogue::read(&files, $plural)
                        });
                        &READ
                    })+
                }
            }
        }
    };
}

languages! {
    /// English.
    #[default]
    English "en" one_or_other ["faults" "route-file" "zones-file" "terrain-file" "findings" "brief" "setups" "options" "outputs" "sheet" "hand" "cautions" "report"]
}

impl Language {
    /// What is wrong with the files of the language, and where they say more or less than the English ones.
    /// A test holds that this is nothing.
    #[must_use]
    pub fn faults(self) -> Vec<String> {
        let catalogue = self.catalogue();
        let differences = catalogue.differences(Self::English.catalogue());
        catalogue
            .faults()
            .iter()
            .cloned()
            .chain(differences)
            .collect()
    }
}

/// One, and all others: plurals of English, and of most of its neighbours `[from memory: CLDR, whole numbers]`.
fn one_or_other(n: u64) -> &'static str {
    if n == 1 { "one" } else { "other" }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_language_says_all_that_english_says_and_no_more() {
        for language in Language::ALL {
            assert_eq!(language.faults(), [""; 0], "{language:?}");
        }
    }

    #[test]
    fn every_file_of_a_language_is_read() {
        for language in Language::ALL {
            let folder = format!(
                "{}/data/words/{}",
                env!("CARGO_MANIFEST_DIR"),
                language.tag()
            );
            let files = std::fs::read_dir(folder).unwrap();
            let source = include_str!("language.rs");
            for file in files.map(|f| f.unwrap().path()) {
                let name = file.file_stem().unwrap().to_string_lossy().into_owned();
                assert!(
                    source.contains(&format!("\"{name}\"")),
                    "{name} is not in the row"
                );
            }
        }
    }
}
