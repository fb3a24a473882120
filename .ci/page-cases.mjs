// Every case of tests/cases, answered by the program as WebAssembly: the same bytes as natively, and the same again from
// the same instance; then what a page asks of the example. Called by .ci/page-cases with the bundled loader.
//   node page-cases.mjs LOADER CORE_WASM PATH_TO_schrund
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, readdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";

const [loader, wasm, schrund] = process.argv.slice(2);
const { Core } = await import(pathToFileURL(loader));
const core = await Core.open(readFileSync(wasm));
const root = join(import.meta.dirname, "../tests/cases");

/** The files of a folder, by the names that a call from the case has for them. */
function files(folder, name) {
  const entries = readdirSync(folder, { withFileTypes: true });
  return entries.flatMap((entry) => {
    const [path, known] = [join(folder, entry.name), join(name, entry.name)];
    if (entry.isDirectory()) return files(path, known);
    return [[known, readFileSync(path)]];
  });
}

/** The case's own files, and those beside whatever it names further up. */
function beside(folder, args) {
  const up = args.filter((arg) => arg.startsWith("../")).map(dirname);
  const folders = ["", ...new Set(up)].filter((name) => existsSync(join(folder, name)));
  return new Map(folders.flatMap((name) => files(join(folder, name), name)));
}

const expected = (folder, name) => {
  const path = join(folder, "expect", name);
  return existsSync(path) ? readFileSync(path, "utf8") : "";
};

/** The first line that is another. */
function first(want, got) {
  const [wanted, gotten] = [want.split("\n"), got.split("\n")];
  const at = wanted.findIndex((line, i) => line !== gotten[i]);
  const line = at < 0 ? wanted.length : at;
  return `line ${line + 1}\n  want ${wanted[line]}\n  got  ${gotten[line]}`;
}

let asked = 0;
const wrong = [];
// Twice: the second time every case follows all others.
for (const round of [1, 2]) {
  for (const name of readdirSync(root).sort()) {
    const folder = join(root, name);
    const args = readFileSync(join(folder, "args"), "utf8").split(/\s+/).filter(Boolean);
    // In a page zones are painted, and nobody types: its program explains no codes and holds no other tracks.
    if (["zone", "survey", "fetch"].includes(args[0]) || args.includes("--explain")) continue;
    const answer = core.run(args, beside(folder, args));
    const got = { code: `${answer.code}\n`, stdout: new TextDecoder().decode(answer.out), stderr: answer.err };
    for (const [what, text] of Object.entries(got)) {
      const want = expected(folder, what);
      if (want !== text) wrong.push(`${name} ${what}, time ${round}: ${first(want, text)}`);
    }
    asked += 1;
  }
}
// What a page asks, natively and as WebAssembly; the third time the models are open and every fall is followed.
const example = join(import.meta.dirname, "../examples/vordalen");
const given = new Map(files(example, ""));
const job = ["route.gpx", "zones.geojson", "--trip", "trip.toml"];
const questions = [
  ["page", "ground", "route.gpx", "--trip", "trip.toml"],
  ["page", "panel", ...job],
  ["page", "panel", ...job, "--lang", "de", "--units", "imperial", "--party", "2", "--bridges-until", "10:00"],
  ["page", "panel", "route.gpx", "zones.geojson"],
  ["page", "ways", ...job],
  ["page", "ways", "route.gpx", "zones.geojson", "--party", "5", "--rope", "30", "--rope", "60", "--lang", "de"],
  ["page", "trip", "--trip", "trip.toml", "--rope", "45"],
  ["page", "trip", "--lang", "de"],
  ...["html", "sheet", "json", "geojson", "kml", "gpx", "csv", "text"].map((format) => ["plan", ...job, "-q", "--format", format]),
];
for (const round of [1, 2, 3]) {
  for (const args of questions) {
    const native = spawnSync(schrund, args, { cwd: example, maxBuffer: 1 << 28 });
    const answer = core.run(args, given);
    const [want, got] = [native.stdout.toString(), new TextDecoder().decode(answer.out)];
    if (native.status !== answer.code) wrong.push(`${args.join(" ")}: ends with ${answer.code}, natively ${native.status}`);
    if (want !== got) wrong.push(`${args.join(" ")}, time ${round}: ${first(want, got).slice(0, 600)}`);
    asked += 1;
  }
}

for (const fault of wrong) console.error(fault);
console.log(`${asked} answers, ${wrong.length} not the bytes of the native program; ${core.memory >> 20} MiB of memory`);
process.exit(wrong.length > 0 || asked < 200 ? 1 : 0);
