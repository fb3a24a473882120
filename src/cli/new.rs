//! `schrund new`: a commented trip file and an empty zones file.

use std::{fs, path::Path};

use schrund::{
    fault::{Fault, files::WrittenAs},
    say::plain,
};

use crate::{
    End,
    save::{self, Saver},
    show::Show,
};

const FILES: [(&str, &str); 2] = [
    ("trip.toml", include_str!("new/trip.toml")),
    ("zones.geojson", include_str!("new/zones.geojson")),
];

pub(crate) fn run(dir: &Path, show: &Show) -> End {
    match write(dir, show) {
        Ok(()) => End::Done,
        Err(problems) => show.problems(&problems),
    }
}

fn write(dir: &Path, show: &Show) -> Result<(), Vec<Fault>> {
    let saver = Saver::new([], false);
    let paths: Vec<_> = FILES.iter().map(|(name, _)| dir.join(name)).collect();
    let refusals = saver.refusals(&paths, WrittenAs::Start);
    if !refusals.is_empty() {
        return Err(refusals);
    }
    fs::create_dir_all(dir)
        .map_err(|fault| vec![save::no_folder(dir, &fault, WrittenAs::Start)])?;
    for (path, (_, text)) in paths.iter().zip(FILES) {
        saver
            .save(path, |out| out.write_all(text.as_bytes()))
            .map_err(|fault| vec![fault])?;
        show.wrote(path);
    }
    show.say("draw the ice in zones.geojson, fill in trip.toml, then:");
    let [trip, zones] = [0, 1].map(|file| plain::visible(&paths[file].display().to_string()));
    show.say(&format!("  schrund plan ROUTE.gpx {zones} --trip {trip}"));
    Ok(())
}
