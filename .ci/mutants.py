#!/usr/bin/env python3
"""Changes the core a line at a time and sees whether a test notices: python3 .ci/mutants.py [--of TEXT] [--again] [--jobs N]

The changes are those that cargo-mutants lists (cargo install --locked cargo-mutants) for what meets ice, rope, legs, judgement and
rules. All are woven into the sources at once, each behind a switch (.ci/mutants.rs), so the program is built once. Each test is run
once to see which changes it reaches; then each change is switched on for the tests that reach it, the quickest first, until one
fails. What a change does to the building (types that do not fit) is found on the way, and counted apart.

--of TEXT tries only changes whose name holds TEXT; --again takes what was built and reached in the run before; --seconds N stops
asking about a change when tests of so many seconds have noticed nothing; --missed tries what the run before missed. What was found
lies in target/mutants: missed.txt, caught.txt, unbuilt.txt. Why no test has to notice a change stands in .ci/mutants-left.tsv, by its name
without the line; what is missed and has no reason there is printed last.
"""
import argparse, concurrent.futures, json, os, re, shutil, signal, subprocess, sys, threading, time
from pathlib import Path

HERE = Path(__file__).resolve().parent.parent
OUT = HERE / "target" / "mutants"
TREE = OUT / "tree"
OF = ["src/meet/*.rs", "src/rope/*.rs", "src/judge/*.rs", "src/practice/rule*.rs", "src/legs/*.rs"]
SWITCH = """//! Which change is on.
use std::io::Write as _;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};

const UNKNOWN: usize = usize::MAX;
const SEEN: usize = usize::MAX - 1;
static STATE: AtomicUsize = AtomicUsize::new(UNKNOWN);
static REACHED: [AtomicBool; COUNT] = [const { AtomicBool::new(false) }; COUNT];

#[inline]
pub(crate) fn on(number: usize) -> bool {
    let state = STATE.load(Ordering::Relaxed);
    state == number || (state >= SEEN && asked(number))
}

#[cold]
fn asked(number: usize) -> bool {
    if STATE.load(Ordering::Relaxed) == UNKNOWN {
        let on = std::env::var("SWITCH_ON").ok().and_then(|text| text.parse().ok());
        let seen = std::env::var_os("SWITCH_SEEN").map(|_| SEEN);
        STATE.store(on.or(seen).unwrap_or(SEEN - 1), Ordering::Relaxed);
        return on == Some(number) || (seen.is_some() && asked(number));
    }
    if !REACHED[number].swap(true, Ordering::Relaxed)
        && let Some(path) = std::env::var_os("SWITCH_SEEN")
        && let Ok(mut file) = std::fs::OpenOptions::new().append(true).create(true).open(path)
    {
        let _ = file.write_all(format!("{number}\\n").as_bytes());
    }
    false
}

/// What a function that answers with some iterator or other answers with.
pub(crate) enum Either<'a, T, I> {
    Changed(Box<dyn Iterator<Item = T> + 'a>),
    Same(I),
}

impl<T, I: Iterator<Item = T>> Iterator for Either<'_, T, I> {
    type Item = T;

    fn next(&mut self) -> Option<T> {
        match self {
            Self::Changed(changed) => changed.next(),
            Self::Same(same) => same.next(),
        }
    }
}
"""
BUILT = {**os.environ, "CARGO_TARGET_DIR": str(OUT / "built"), "CARGO_INCREMENTAL": "1", "RUSTFLAGS": "-Awarnings",
         "CARGO_PROFILE_DEV_DEBUG": "0", "CARGO_PROFILE_TEST_DEBUG": "0", "CARGO_PROFILE_DEV_OPT_LEVEL": "1", "CARGO_PROFILE_TEST_OPT_LEVEL": "1"}
QUIET = {**os.environ, "PROPTEST_RNG_SEED": "1", "PROPTEST_MAX_SHRINK_ITERS": "0"}


def out_of(*command, **options):
    return subprocess.run(command, check=True, capture_output=True, text=True, **options).stdout


def weaver():
    """The program that weaves, built beside: it is no part of the product, and needs libraries that the product does not."""
    folder = OUT / "weaver"
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "Cargo.toml").write_text(f"""[package]
name = "weave"
version = "0.0.0"
edition = "2024"
[[bin]]
name = "weave"
path = "{HERE / '.ci/mutants.rs'}"
[dependencies]
proc-macro2 = {{ version = "1", features = ["span-locations"] }}
serde_json = "1"
syn = {{ version = "2", features = ["full", "visit"] }}
[workspace]
""")
    subprocess.run(["cargo", "build", "-q", "--target-dir", folder / "target"], cwd=folder, check=True)
    return folder / "target/debug/weave"


def put_in_place(names):
    """The checkout as it stands; what is already alike keeps its time, so that nothing is built twice."""
    for name in names:
        there, text = TREE / name, (HERE / name).read_bytes()
        if not there.exists() or there.read_bytes() != text:
            there.parent.mkdir(parents=True, exist_ok=True)
            there.write_bytes(text)


def faults(messages):
    """The errors of a build, as places: file, first byte, last byte, and what was said."""
    for line in messages.splitlines():
        said = json.loads(line)
        if said.get("reason") == "compiler-message" and said["message"]["level"] == "error" and said["message"]["spans"]:
            spans = [span for span in said["message"]["spans"] if span["is_primary"]]
            yield [(span["file_name"], span["byte_start"], span["byte_end"]) for span in spans], said["message"]["message"]


def to_blame(name, first, last, stands):
    """The changes that an error comes from: the narrowest one around it; else those of the match that lacks an arm, or of the function
    that is to answer two things."""
    here = [s for s in stands if s["file"] == name]
    around = [s for s in here if s["from"] <= first and last <= s["to"]]
    if around:
        return [min(around, key=lambda s: s["to"] - s["from"])]
    arms = [s for s in here if s["kind"] == "MatchArm" and first <= s["from"]]
    if arms and arms[0]["from"] < last + 400:
        return arms[:1]
    before = [s for s in here if s["kind"] == "FnValue" and s["from"] <= first]
    return [s for s in before if before[-1]["from"] - s["from"] < 600]


def woven(weave, names, listed):
    """Weaves what can be built; returns the numbers of the changes that are in, and why the others are not."""
    unbuilt = {}
    while True:
        put_in_place(names)
        (OUT / "left_out").write_text("\n".join(map(str, unbuilt)))
        stands = json.loads(out_of(weave, OUT / "list.json", OUT / "left_out", TREE))
        stands = sorted(({**s, "kind": listed[s["number"]]["genre"]} for s in stands), key=lambda s: s["from"])
        (TREE / "src/switch.rs").write_text(SWITCH.replace("COUNT", str(len(listed))))
        lib = TREE / "src/lib.rs"
        lib.write_text(lib.read_text().replace("\nmod answered;", "\nmod switch;\nmod answered;", 1))
        built = subprocess.run(["cargo", "check", "--locked", "--lib", "--message-format=json"], cwd=TREE, env=BUILT, capture_output=True, text=True)
        if built.returncode == 0:
            return {stand["number"] for stand in stands}, unbuilt
        size = len(unbuilt)
        for places, said in faults(built.stdout):
            for name, first, last in places:
                for stand in to_blame(name, first, last, stands):
                    unbuilt[stand["number"]] = said
        print(f"{len(unbuilt)} cannot be built", flush=True)
        if len(unbuilt) == size:
            sys.exit(built.stderr + "\n".join(f"{p} {s}" for p, s in faults(built.stdout)))


def test_programs():
    """What was built of tests."""
    built = out_of("cargo", "test", "--locked", "--no-run", "--lib", "--test", "rooms", "--message-format=json", cwd=TREE, env=BUILT)
    for line in built.splitlines():
        said = json.loads(line)
        if said.get("executable") and said["profile"]["test"]:
            yield said["executable"]


def run(program, tests, env, seconds):
    """Whether all of the tests passed; a run that does not end counts as one that failed."""
    with subprocess.Popen([program, "--exact", *tests, "--test-threads=1", "-q"], cwd=TREE, env={**QUIET, **env}, stdin=subprocess.DEVNULL,
                          stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, start_new_session=True) as running:
        try:
            return running.wait(seconds) == 0
        except subprocess.TimeoutExpired:
            os.killpg(running.pid, signal.SIGKILL)
            return False


def reached(programs, jobs):
    """Of each test: what it reaches, and how long it takes. Those that read the repository itself are not asked."""
    tests = []
    for program in programs:
        for name in re.findall(r"^(\S+): test$", out_of(program, "--list"), re.M):
            if not name.startswith(("house::", "project::")):
                tests.append((program, name))

    def alone(numbered):
        at, (program, name) = numbered
        seen = OUT / f"seen-{at}"
        seen.unlink(missing_ok=True)
        start = time.monotonic()
        passed = run(program, [name], {"SWITCH_SEEN": str(seen)}, 300)
        took = time.monotonic() - start
        numbers = sorted({int(n) for n in seen.read_text().split()}) if seen.exists() else []
        seen.unlink(missing_ok=True)
        if not passed:
            print(f"fails unchanged, not asked: {name}", flush=True)
            numbers = []
        return {"program": program, "name": name, "seconds": took, "reaches": numbers}

    with concurrent.futures.ThreadPoolExecutor(jobs) as pool:
        return list(pool.map(alone, enumerate(tests)))


def noticed(number, file, tests, seconds):
    """The tests among which one notices the change, None if none does. Those of its room are asked first if they are quick, then those
    that reach nearly everything, then the quickest."""
    room = Path(file).parts[1] + "::"
    tests = [t for t in tests if number in t["reaches"]]
    most = max((len(t["reaches"]) for t in tests), default=0)
    tests.sort(key=lambda t: (not (t["name"].startswith(room) and t["seconds"] < 0.3), len(t["reaches"]) < 0.9 * most, t["seconds"]))
    left = seconds
    while tests and left > 0:
        count, spent = 0, 0.0
        while count < len(tests) and (count == 0 or spent + tests[count]["seconds"] < 1.5) and count < 60:
            spent += tests[count]["seconds"]
            count += 1
        batch, tests, left = tests[:count], tests[count:], left - spent
        for program in {t["program"] for t in batch}:
            names = [t["name"] for t in batch if t["program"] == program]
            if not run(program, names, {"SWITCH_ON": str(number)}, 20 + 10 * spent):
                return names
    return None


def anew(jobs):
    """The list of changes, the numbers of those that were built, why others were not, and the tests with what they reach."""
    TREE.mkdir(parents=True, exist_ok=True)
    names = out_of("git", "ls-files", cwd=HERE).split("\n")[:-1]
    names = [name for name in names if (HERE / name).is_file()]
    listed = json.loads(out_of("cargo", "mutants", "--list", "--json", *[a for of in OF for a in ("--file", of)], cwd=HERE))
    (OUT / "list.json").write_text(json.dumps(listed))
    built, unbuilt = woven(weaver(), names, listed)
    tests = reached(list(test_programs()), jobs)
    (OUT / "woven.json").write_text(json.dumps({"built": sorted(built), "unbuilt": unbuilt, "tests": tests}))
    return listed, built, unbuilt, tests


def again():
    """The same, of the run before."""
    known = json.loads((OUT / "woven.json").read_text())
    unbuilt = {int(number): why for number, why in known["unbuilt"].items()}
    return json.loads((OUT / "list.json").read_text()), set(known["built"]), unbuilt, known["tests"]


def unexplained(missed):
    """Those of these names that nobody gave a reason for."""
    known = {line.split("\t")[0] for line in (HERE / ".ci" / "mutants-left.tsv").read_text().splitlines()}
    return [name for name in missed if re.sub(r":\d+:\d+:", ":", name, count=1) not in known]


def main():
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    asked.add_argument("--of", default="")
    asked.add_argument("--again", action="store_true")
    asked.add_argument("--missed", action="store_true")
    asked.add_argument("--seconds", type=float, default=15)
    asked.add_argument("--jobs", type=int, default=os.cpu_count())
    asked = asked.parse_args()
    listed, built, unbuilt, tests = again() if asked.again else anew(asked.jobs)
    for test in tests:
        test["reaches"] = set(test["reaches"])
    missed_before = set((OUT / "missed.txt").read_text().splitlines()) if asked.missed else None
    wanted = [n for n in sorted(built) if asked.of in listed[n]["name"] and (missed_before is None or listed[n]["name"] in missed_before)]
    found, lock = {}, threading.Lock()

    def one(number):
        by = noticed(number, listed[number]["file"], tests, asked.seconds)
        with lock:
            found[number] = by
            if by is None:
                unreached = not any(number in t["reaches"] for t in tests)
                print(f"{len(found)}/{len(wanted)} missed{' (no test comes there)' if unreached else ''}: {listed[number]['name']}", flush=True)

    with concurrent.futures.ThreadPoolExecutor(asked.jobs) as pool:
        list(pool.map(one, wanted))
    missed = [n for n in wanted if found[n] is None]
    (OUT / "missed.txt").write_text("".join(listed[n]["name"] + "\n" for n in missed))
    (OUT / "caught.txt").write_text("".join(f"{listed[n]['name']}\t{found[n][0]}\n" for n in wanted if found[n]))
    (OUT / "unbuilt.txt").write_text("".join(f"{listed[n]['name']}\t{why}\n" for n, why in sorted(unbuilt.items())))
    (OUT / "unwoven.txt").write_text("".join(x["name"] + "\n" for n, x in enumerate(listed) if n not in built and n not in unbuilt))
    print(f"{len(listed)} changes: {len(unbuilt)} cannot be built, {len(listed) - len(unbuilt) - len(built)} not woven")
    print(f"of {len(wanted)} tried {len(wanted) - len(missed)} noticed: {100 * (1 - len(missed) / max(1, len(wanted))):.1f} %")
    open_ones = unexplained([listed[n]["name"] for n in missed])
    print(f"of {len(missed)} missed {len(open_ones)} without a reason", *open_ones, sep="\n")


if __name__ == "__main__":
    main()
