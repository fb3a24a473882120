//! How what a plan costs grows with each thing that it is made of: `cargo bench --bench speed -- growth`.
//!
//! Instructions counted by callgrind on one core, which hold on a busy machine; seconds where valgrind is not there.
//! A leader's files are small: bounds are so that ten times as much never asks for a hundred times the wait.

use std::{
    fs,
    io::Result,
    path::{Path, PathBuf},
    process::{Command, Stdio},
};

use crate::{run, workload};

/// How many times as much is asked for, one after another.
const TIMES: [u32; 4] = [1, 2, 4, 8];

/// The files and flags of one plan.
struct Asked {
    route: PathBuf,
    ice: PathBuf,
    flags: Vec<String>,
    /// The command and the format of what it writes.
    call: [&'static str; 2],
}

/// A map of the plan: what is drawn besides costs little.
const MAP: [&str; 2] = ["plan", "geojson"];

/// What grows, the exponent that it keeps within (our judgement: in proportion, with a little for sorting and for
/// memory that no longer fits the caches; ropes are given out among teams and may cost their square), and its plans.
type Case = (&'static str, f64, fn(&Path, u32, u32) -> Result<Asked>);

const CASES: [Case; 13] = [
    ("points", 1.15, points),
    ("zones", 1.15, zones),
    ("vertices of a zone", 1.15, vertices),
    // Nearly every edge lies across every other one, which no ice does. Whether a ring crosses itself is asked of no more than
    // 200 000 vertices and a thousand pairs an edge: two seconds at most, whatever is drawn.
    ("ragged outlines", 2.0, ragged),
    ("legs", 1.15, legs),
    ("stages", 1.15, stages),
    ("people", 1.15, people),
    ("ropes", 2.0, ropes),
    ("legs, as JSON", 1.15, |folder, size, times| {
        let call = ["plan", "json"];
        Ok(Asked {
            call,
            ..legs(folder, 4 * size, times)?
        })
    }),
    ("legs, report", 1.15, |folder, size, times| {
        let call = ["plan", "html"];
        Ok(Asked {
            call,
            ..legs(folder, 4 * size, times)?
        })
    }),
    // Each with a zone of its own: over the same zones stages add next to nothing, and how much depends on how full the map is.
    ("stages, report", 1.15, |folder, size, times| {
        let (call, stages) = (["plan", "html"], 8 * size * times);
        Ok(Asked {
            call,
            ..straight(folder, stages, stages, flags(3, 1))?
        })
    }),
    ("people, options", 1.15, |folder, size, times| {
        let call = ["options", "json"];
        Ok(Asked {
            call,
            ..people(folder, size, times)?
        })
    }),
    // No more than thirty are taken (`--limit ropes`): the work is bounded.
    ("ropes, options", 2.5, |folder, size, times| {
        let call = ["options", "json"];
        Ok(Asked {
            call,
            flags: flags(8, 3 * times),
            ..ropes(folder, size, times)?
        })
    }),
];

/// Prints the table; `size` multiplies points, zones, vertices and legs. Whether all keep within their bounds.
pub(crate) fn table(folder: &Path, size: u32) -> Result<bool> {
    let counted = has_valgrind();
    let unit = if counted {
        "millions of instructions (callgrind, one core)"
    } else {
        "milliseconds, median of five (no valgrind on this machine: not to be trusted where it is busy)"
    };
    println!("plan --format geojson unless named otherwise, {unit}");
    println!(
        "{:<20}{:>11}{:>11}{:>11}{:>11}{:>10}{:>11}{:>8}",
        "", "x 1", "x 2", "x 4", "x 8", "exponent", "of added", "bound"
    );
    let mut all_within = true;
    for (name, bound, make) in CASES {
        let mut costs = Vec::new();
        for times in TIMES {
            costs.push(cost(&make(folder, size, times)?, folder, counted)?);
        }
        // Seconds waver too much for a difference of differences.
        let (exponent, rising) = (slope(&costs), counted.then(|| added(&costs)));
        let within = exponent <= bound && rising.is_none_or(|r| r <= bound);
        all_within &= within;
        print!("{name:<20}");
        costs.iter().for_each(|c| print!("{c:>11.1}"));
        let told = if within { "" } else { "  ABOVE" };
        let rising = rising.map_or_else(|| "-".to_owned(), |r| format!("{r:.2}"));
        println!("{exponent:>10.2}{rising:>11}{bound:>8.2}{told}");
    }
    println!(
        "exponent: slope of the least squares line in log-log; of added: of what x 8 adds to x 4 against what x 4 adds to x 2,"
    );
    println!(
        "without what starting up costs, 0 where next to nothing is added, - in seconds. Both are held to the bound."
    );
    Ok(all_within)
}

fn has_valgrind() -> bool {
    let asked = Command::new("valgrind")
        .arg("--version")
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status();
    asked.is_ok_and(|status| status.success())
}

/// What one plan costs: millions of instructions or milliseconds. NaN, which keeps within no bound, where it fails.
fn cost(asked: &Asked, folder: &Path, counted: bool) -> Result<f64> {
    let (route, ice) = (asked.route.display(), asked.ice.display());
    let [command, format] = asked.call;
    let mut args = [command, &route.to_string(), &ice.to_string()]
        .map(str::to_owned)
        .to_vec();
    args.extend(["--format", format, "-q"].map(str::to_owned));
    args.extend(asked.flags.iter().cloned());
    if !counted {
        let args: Vec<&str> = args.iter().map(String::as_str).collect();
        let mut runs: Vec<_> = (0..5).map(|_| run(&args).0).collect();
        runs.sort();
        return Ok(runs[2].as_secs_f64() * 1e3);
    }
    let told = folder.join("callgrind.out");
    let ran = Command::new("valgrind")
        .arg("--tool=callgrind")
        .arg(format!("--callgrind-out-file={}", told.display()))
        .arg(env!("CARGO_BIN_EXE_schrund"))
        .args(args)
        .env("RAYON_NUM_THREADS", "1")
        .output()?;
    // A plan that has something to look at may end otherwise than in success; one that cannot be made prints nothing.
    let made = !ran.stdout.is_empty();
    if !made {
        eprint!("{}", String::from_utf8_lossy(&ran.stderr));
    }
    let text = fs::read_to_string(told)?;
    let total = text.lines().find_map(|l| l.strip_prefix("totals: "));
    let count: Option<f64> = total.and_then(|n| n.trim().parse().ok());
    Ok(count.filter(|_| made).map_or(f64::NAN, |n| n / 1e6))
}

/// The slope of the least squares line through the logarithms.
fn slope(costs: &[f64]) -> f64 {
    let points: Vec<(f64, f64)> = TIMES
        .iter()
        .zip(costs)
        .map(|(n, cost)| (f64::from(*n).ln(), cost.ln()))
        .collect();
    let n = points.len() as f64;
    let mean_x = points.iter().map(|p| p.0).sum::<f64>() / n;
    let mean_y = points.iter().map(|p| p.1).sum::<f64>() / n;
    let shared: f64 = points.iter().map(|p| (p.0 - mean_x) * (p.1 - mean_y)).sum();
    let spread: f64 = points.iter().map(|p| (p.0 - mean_x).powi(2)).sum();
    shared / spread
}

/// The exponent of what is added by the last doubling against the one before: starting up does not count in it.
/// Nought where one of them adds less than a fiftieth (our judgement), of which no exponent can be told.
fn added(costs: &[f64]) -> f64 {
    match costs {
        [.., two, four, eight] if (eight - four).min(four - two) >= eight / 50.0 => {
            ((eight - four) / (four - two)).log2()
        }
        [.., four, eight] if eight.is_finite() && four.is_finite() => 0.0,
        _ => f64::NAN,
    }
}

fn flags(party: u32, ropes: u32) -> Vec<String> {
    let mut flags = vec!["--party".to_owned(), party.to_string()];
    for rope in 0..ropes {
        flags.extend(["--rope".to_owned(), (40 + 3 * rope).to_string()]);
    }
    flags
}

/// The same way, told by more points: every edge is cut into equal parts.
fn points(folder: &Path, size: u32, times: u32) -> Result<Asked> {
    let corners = workload::walked(11, 500 * size, 40.0, (9000.0, 7000.0));
    let line = finer(&corners, times);
    let (route, ice) = (folder.join("way.gpx"), folder.join("way.geojson"));
    workload::gpx(&route, &[line])?;
    workload::zones(&ice, workload::FEW)?;
    Ok(Asked {
        route,
        ice,
        flags: flags(3, 1),
        call: MAP,
    })
}

/// More zones beside the same walk, which meets none of them.
fn zones(folder: &Path, size: u32, times: u32) -> Result<Asked> {
    over(folder, 500 * size, (5, 4 * size * times, 100))
}

/// The same outlines, told by more vertices: every edge is cut into equal parts.
fn vertices(folder: &Path, size: u32, times: u32) -> Result<Asked> {
    let (route, ice) = (folder.join("walk.gpx"), folder.join("walk.geojson"));
    let rings = workload::blobs((5, 4, 100 * size));
    let finer = rings.map(|(mut ring, gap_m)| {
        ring.extend_from_within(..1);
        (finer(&ring, times), gap_m)
    });
    workload::walk(&route, 500, 10.0)?;
    workload::geojson(&ice, finer)?;
    Ok(Asked {
        route,
        ice,
        flags: flags(3, 1),
        call: MAP,
    })
}

/// Outlines as many times as ragged: each new vertex lies further in or out, so that many edges pass through each box.
/// No surveyed outline is like that; it shows what is asked of edges two by two.
fn ragged(folder: &Path, size: u32, times: u32) -> Result<Asked> {
    over(folder, 500, (5, 4, 100 * size * times))
}

/// A line with every edge cut into so many, without its end.
fn finer(line: &[(f64, f64)], times: u32) -> Vec<(f64, f64)> {
    let cut = |ends: &[(f64, f64)]| {
        let (from, to) = (ends[0], ends[1]);
        let part = move |k| {
            let t = f64::from(k) / f64::from(times);
            (from.0 + t * (to.0 - from.0), from.1 + t * (to.1 - from.1))
        };
        (0..times).map(part).collect::<Vec<_>>()
    };
    line.windows(2).flat_map(cut).collect()
}

fn over(folder: &Path, points: u32, grid: (u32, u32, u32)) -> Result<Asked> {
    let (route, ice) = (folder.join("walk.gpx"), folder.join("walk.geojson"));
    workload::walk(&route, points, 10.0)?;
    workload::zones(&ice, grid)?;
    Ok(Asked {
        route,
        ice,
        flags: flags(3, 1),
        call: MAP,
    })
}

/// A straight line of as many points over more zones, 400 m each, with 1100 m between.
fn legs(folder: &Path, size: u32, times: u32) -> Result<Asked> {
    straight(folder, 4 * size * times, 1, flags(3, 1))
}

/// The same line over the same zones, in more stages; at eight times as many each has one zone.
fn stages(folder: &Path, size: u32, times: u32) -> Result<Asked> {
    straight(folder, 32 * size, 4 * size * times, flags(3, 1))
}

/// More people over four zones, with one rope.
fn people(folder: &Path, _: u32, times: u32) -> Result<Asked> {
    straight(folder, 4, 1, flags(6 * times, 1))
}

/// More ropes, each of another length, for eight people over four zones.
fn ropes(folder: &Path, _: u32, times: u32) -> Result<Asked> {
    straight(folder, 4, 1, flags(8, times))
}

fn straight(folder: &Path, zones: u32, stages: u32, flags: Vec<String>) -> Result<Asked> {
    // As many for every stage, so that none ends on ice, where stages divide them.
    const POINTS: u32 = 4096;
    let step = f64::from(zones) * 1500.0 / f64::from(POINTS);
    let at = |k: u32| workload::degrees(f64::from(k) * step, 500.0);
    let each = POINTS / stages;
    let lines: Vec<Vec<_>> = (0..stages)
        .map(|s| (s * each..=(s + 1) * each).map(at).collect())
        .collect();
    let ring = |z: u32| {
        let west = f64::from(z) * 1500.0 + 550.0;
        let corners = [
            (west, 300.0),
            (west + 400.0, 300.0),
            (west + 400.0, 700.0),
            (west, 700.0),
        ];
        (corners.map(|(x, y)| workload::degrees(x, y)).to_vec(), 3.0)
    };
    let (route, ice) = (folder.join("line.gpx"), folder.join("line.geojson"));
    workload::gpx(&route, &lines)?;
    workload::geojson(&ice, (0..zones).map(ring))?;
    Ok(Asked {
        route,
        ice,
        flags,
        call: MAP,
    })
}
