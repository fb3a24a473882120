//! What speed was measured: `cargo bench`. Prints seconds (median of five) and peak memory of whole runs.
//!
//! `cargo bench --bench speed -- growth [SIZE]` prints how the cost grows instead, and `-- write FOLDER [SCALE]` writes
//! the workloads for `beside.py`; `-- planet FOLDER [SHARE]` holds a line and many against all the glaciers of a world. No test times anything.

mod growth;
mod planet;
mod workload;

use std::{
    env, fs,
    io::Result,
    path::Path,
    process::{Command, ExitCode, Stdio},
    time::{Duration, Instant},
};

const RUNS: usize = 5;

fn main() -> Result<ExitCode> {
    // Cargo adds `--bench`.
    let args: Vec<String> = env::args().skip(1).filter(|a| a != "--bench").collect();
    let args: Vec<&str> = args.iter().map(String::as_str).collect();
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("speed");
    fs::create_dir_all(&folder)?;
    match args.as_slice() {
        [] => {
            whole_runs(&folder)?;
            fs::remove_dir_all(&folder)?;
        }
        ["growth"] => return Ok(ended(growth::table(&folder, 4)?)),
        ["growth", size] if size.parse::<u32>().is_ok_and(|n| n > 0) => {
            return Ok(ended(growth::table(&folder, size.parse().unwrap_or(1))?));
        }
        ["planet", to] => planet::table(Path::new(to), 1.0)?,
        ["planet", to, share] if share.parse::<f64>().is_ok_and(|n| n > 0.0 && n <= 1.0) => {
            planet::table(Path::new(to), share.parse().unwrap_or(1.0))?;
        }
        ["write", to] => workload::all(Path::new(to), 1.0)?,
        ["write", to, scale] if scale.parse::<f64>().is_ok_and(|n| n > 0.0 && n <= 1.0) => {
            workload::all(Path::new(to), scale.parse().unwrap_or(1.0))?;
        }
        _ => {
            eprintln!(
                "nothing, or: growth [SIZE, 1 and more] | planet FOLDER [SHARE, up to 1] | write FOLDER [SCALE, up to 1]"
            );
            return Ok(ExitCode::from(2));
        }
    }
    Ok(ExitCode::SUCCESS)
}

fn ended(well: bool) -> ExitCode {
    if well {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    }
}

fn whole_runs(folder: &Path) -> Result<()> {
    let path = |name: &str| folder.join(name).display().to_string();
    workload::zones(&folder.join("few.geojson"), workload::FEW)?;
    workload::zones(&folder.join("many.geojson"), workload::MANY)?;
    workload::walk(&folder.join("long.gpx"), 1_000_000, 1.0)?;
    workload::walk(&folder.join("short.gpx"), 10_000, 10.0)?;
    println!(
        "{:<38}{:>10}{:>12}{:>12}",
        "", "input MB", "median s", "peak MB"
    );
    for (route, ice) in [
        ("short.gpx", "few.geojson"),
        ("long.gpx", "few.geojson"),
        ("short.gpx", "many.geojson"),
    ] {
        for format in ["table", "json", "geojson", "gpx", "html"] {
            let (route, ice) = (path(route), path(ice));
            report(
                &[
                    "plan", &route, &ice, "--party", "3", "--format", format, "-q",
                ],
                &[&route, &ice],
            );
        }
    }
    let example = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/vordalen");
    let file = |name: &str| example.join(name).display().to_string();
    let (route, ice, trip) = (file("route.gpx"), file("zones.geojson"), file("trip.toml"));
    report(
        &[
            "plan", &route, &ice, "--trip", &trip, "--format", "html", "-q",
        ],
        &[&route, &ice],
    );
    report(
        &["options", &route, &ice, "--trip", &trip, "-q"],
        &[&route, &ice],
    );
    Ok(())
}

fn report(args: &[&str], inputs: &[&str]) {
    let (median, peak_kb) = some_runs(args);
    let bytes: u64 = inputs
        .iter()
        .map(|p| fs::metadata(p).map_or(0, |m| m.len()))
        .sum();
    let names: Vec<&str> = inputs
        .iter()
        .filter_map(|p| Path::new(p).file_name()?.to_str())
        .collect();
    let format = args
        .iter()
        .skip_while(|a| **a != "--format")
        .nth(1)
        .unwrap_or(&args[0]);
    println!(
        "{:<38}{:>10.1}{:>12.3}{:>12.1}",
        format!("{} {format}", names.join(" × ")),
        bytes as f64 / 1e6,
        median.as_secs_f64(),
        peak_kb as f64 / 1e3
    );
}

/// Of some runs the median and the greatest memory, kilobytes.
fn some_runs(args: &[&str]) -> (Duration, u64) {
    let mut runs: Vec<(Duration, u64)> = (0..RUNS).map(|_| run(args)).collect();
    runs.sort();
    let peak_kb = runs.iter().map(|(_, kb)| *kb).max().unwrap_or_default();
    (runs[RUNS / 2].0, peak_kb)
}

/// One run: wall time and the greatest memory the kernel saw (0 where it does not tell).
fn run(args: &[&str]) -> (Duration, u64) {
    let start = Instant::now();
    let mut child = Command::new(env!("CARGO_BIN_EXE_schrund"))
        .args(args)
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .expect("the program runs");
    let status = format!("/proc/{}/status", child.id());
    let mut peak_kb = 0;
    loop {
        peak_kb = peak_kb.max(high_water_kb(&status));
        match child.try_wait() {
            Ok(None) => std::thread::sleep(Duration::from_millis(1)),
            _ => return (start.elapsed(), peak_kb),
        }
    }
}

fn high_water_kb(status: &str) -> u64 {
    let text = fs::read_to_string(status).unwrap_or_default();
    let line = text
        .lines()
        .find(|l| l.starts_with("VmHWM"))
        .unwrap_or_default();
    line.split_whitespace()
        .nth(1)
        .and_then(|n| n.parse().ok())
        .unwrap_or(0)
}
