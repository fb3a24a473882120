//! Names of files: as they are typed, and such as are free.

use std::path::Path;

/// This name, or else the first with a number behind it that is free.
pub(crate) fn free(path: &Path) -> String {
    let name = |number: u32| {
        let stem = path
            .file_stem()
            .map_or("plan".into(), |stem| stem.to_string_lossy());
        let end = path
            .extension()
            .map(|end| format!(".{}", end.to_string_lossy()));
        path.with_file_name(format!("{stem}-{number}{}", end.unwrap_or_default()))
    };
    let others = (2..1000).map(name);
    let mut all = std::iter::once(path.to_owned()).chain(others);
    let free = all.find(|path| path.symlink_metadata().is_err());
    free.unwrap_or_else(|| path.to_owned())
        .display()
        .to_string()
}

/// A word as it is typed: between quotation marks where the shell would tear it.
pub(crate) fn typed(word: &str) -> String {
    if word.contains([' ', '\'', '*', '$', '(', '&', ';', '|', '<', '>']) {
        format!("\"{word}\"")
    } else {
        word.to_owned()
    }
}

/// A call of these words, as it is typed.
pub(crate) fn call<'w>(words: impl IntoIterator<Item = &'w str>) -> String {
    let words: Vec<String> = words.into_iter().map(typed).collect();
    format!("schrund {}", words.join(" "))
}
