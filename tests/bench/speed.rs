//! What speed was measured: `cargo bench`. Prints seconds (median of five) and peak memory of whole runs.
//!
//! The workloads are invented here: a wandering track of a million points over 20 zones, and a track of ten
//! thousand over 20 000 zones with four million corners. No test times anything.

use std::{
    fs::{self, File},
    io::{BufWriter, Write},
    path::Path,
    process::{Command, Stdio},
    time::{Duration, Instant},
};

const RUNS: usize = 5;

fn main() {
    let folder = tempfile::tempdir().expect("a folder for the workloads");
    let path = |name: &str| folder.path().join(name).display().to_string();
    zones(&folder.path().join("few.geojson"), 5, 4, 200);
    zones(&folder.path().join("many.geojson"), 200, 100, 205);
    track(&folder.path().join("long.gpx"), 1_000_000, 1.0);
    track(&folder.path().join("short.gpx"), 10_000, 10.0);
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
}

fn report(args: &[&str], inputs: &[&str]) {
    let mut runs: Vec<(Duration, u64)> = (0..RUNS).map(|_| run(args)).collect();
    runs.sort();
    let (median, _) = runs[RUNS / 2];
    let peak_kb = runs.iter().map(|(_, kb)| *kb).max().unwrap_or_default();
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

/// A small generator of numbers in 0..1 (xorshift), so that every run has the same workload.
struct Dice(u64);

impl Dice {
    fn roll(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }
}

/// Irregular blobs on a grid from 6° E 45° N, cells of 0.05° by 0.036°.
fn zones(path: &Path, columns: u32, rows: u32, corners: u32) {
    let mut dice = Dice(7);
    let mut out = BufWriter::new(File::create(path).expect("a file"));
    write!(out, "{{\"type\":\"FeatureCollection\",\"features\":[").expect("written");
    for cell in 0..columns * rows {
        let (x, y) = (f64::from(cell % columns), f64::from(cell / columns));
        let (lon, lat) = (6.0 + (x + 0.5) * 0.05, 45.0 + (y + 0.5) * 0.036);
        let corner = |k: u32, dice: &mut Dice| {
            let (sin, cos) = (std::f64::consts::TAU * f64::from(k) / f64::from(corners)).sin_cos();
            let reach = 0.012 + 0.004 * dice.roll();
            format!("[{:.7},{:.7}]", lon + 1.4 * reach * cos, lat + reach * sin)
        };
        let mut ring: Vec<String> = (0..corners).map(|k| corner(k, &mut dice)).collect();
        ring.push(ring[0].clone());
        let comma = if cell == 0 { "" } else { "," };
        write!(
            out,
            "{comma}\n{{\"type\":\"Feature\",\"properties\":{{\"name\":\"zone {cell}\",\"gap_m\":{:.1}}},\
             \"geometry\":{{\"type\":\"Polygon\",\"coordinates\":[[{}]]}}}}",
            1.0 + 9.0 * dice.roll(),
            ring.join(",")
        )
        .expect("written");
    }
    writeln!(out, "\n]}}").expect("written");
}

/// A walk that wanders over the south-west corner of the grid.
fn track(path: &Path, points: u32, step_m: f64) {
    let (mut dice, mut x, mut y, mut heading) = (Dice(11), 9000.0_f64, 7000.0_f64, 0.0_f64);
    let mut out = BufWriter::new(File::create(path).expect("a file"));
    writeln!(out, "<gpx version=\"1.1\" creator=\"invented\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>")
        .expect("written");
    for i in 0..points {
        let home = (7000.0 - y).atan2(9000.0 - x);
        let away = ((x - 9000.0) / 8000.0).hypot((y - 7000.0) / 6500.0);
        let turn = (home - heading).sin();
        heading += 0.7 * (dice.roll() - 0.5) + if away > 1.0 { 0.3 * turn } else { 0.0 };
        x += step_m * heading.cos();
        y += step_m * heading.sin();
        let height = 2800.0 + 400.0 * (f64::from(i) / 1500.0).sin() + 2.0 * dice.roll();
        writeln!(
            out,
            "<trkpt lat=\"{:.7}\" lon=\"{:.7}\"><ele>{height:.1}</ele><time>2026-07-01T08:00:00Z</time></trkpt>",
            45.0 + y / 111_132.0,
            6.0 + x / 78_700.0
        )
        .expect("written");
    }
    writeln!(out, "</trkseg></trk></gpx>").expect("written");
}
