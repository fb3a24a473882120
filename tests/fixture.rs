//! What tests are made from: invented trips and their texts, the program itself, pages, files from the field.

pub(crate) mod any;
pub(crate) mod flatgeobuf;
pub(crate) mod ground;
pub(crate) mod page;
pub(crate) mod planned;
pub(crate) mod program;
pub(crate) mod raster;
pub(crate) mod real;
#[cfg(all(unix, not(target_vendor = "apple")))]
pub(crate) mod secret;
pub(crate) mod server;
pub(crate) mod texts;
pub(crate) mod trip;

#[track_caller]
pub(crate) fn close(what: &str, got: f64, want: f64, tolerance: f64) {
    assert!(
        (got - want).abs() <= tolerance,
        "{what}: got {got}, want {want} ± {tolerance}"
    );
}

/// The same for what may be missing.
#[track_caller]
pub(crate) fn close_if(what: &str, got: Option<f64>, want: Option<f64>, tolerance: f64) {
    match (got, want) {
        (Some(got), Some(want)) => close(what, got, want, tolerance),
        _ => assert_eq!(got, want, "{what}"),
    }
}

/// The same for what must be there.
#[track_caller]
pub(crate) fn close_to(what: &str, got: Option<f64>, want: f64, tolerance: f64) {
    let got = got.unwrap_or_else(|| panic!("{what}: nothing there"));
    close(what, got, want, tolerance);
}
