// Bundles src/page into one script, with the licences of all that is bundled on top.
//   node page-bundle.mjs NODE_MODULES OUT
import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join, resolve } from "node:path";

const [modules, out] = process.argv.slice(2).map((path) => resolve(path));
const { build } = createRequire(join(modules, "esbuild/"))("esbuild");
const source = resolve(import.meta.dirname, "../src/page");

async function bundled(entry, define) {
  const made = await build({
    entryPoints: [join(source, entry)],
    bundle: true,
    minify: true,
    write: false,
    metafile: true,
    format: "iife",
    target: "es2022",
    charset: "utf8",
    legalComments: "none",
    mainFields: ["module", "main"],
    nodePaths: [modules],
    loader: { ".css": "text" },
    define,
    logLevel: "warning",
  });
  return { text: made.outputFiles[0].text, files: Object.keys(made.metafile.inputs) };
}

/** The packages that files lie in. */
function packages(files) {
  const names = files.map((file) => /node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(file)?.[1]);
  return [...new Set(names.filter(Boolean))].sort();
}

/** Licences under which a package may be bundled: those that ask for their text to stand there, which it does. */
const ALLOWED = ["MIT", "ISC", "BSD-2-Clause", "BSD-3-Clause", "MIT OR Apache-2.0"];

/** Name, version, licence and its text, as each package tells them. */
function licence(name) {
  const folder = join(modules, name);
  const { version, license } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  if (!ALLOWED.includes(license)) throw new Error(`${name}: ${license} is none of ${ALLOWED.join(", ")}`);
  const all = readdirSync(folder).filter((file) => /^licen[cs]e/i.test(file)).sort();
  // Of several that may be chosen, the short one.
  const files = license.startsWith("MIT OR") ? all.filter((file) => /mit/i.test(file)) : all;
  const texts = files.map((file) => readFileSync(join(folder, file), "utf8").trim());
  return [`${name} ${version} (${license})`, ...texts].join("\n\n").replaceAll("*/", "* /");
}

const worker = await bundled("worker.ts", {});
const main = await bundled("main.ts", { WORKER: JSON.stringify(worker.text) });
const names = packages([...worker.files, ...main.files]);
const head = `/*\nThis page holds, beside schrund itself:\n\n${names.map(licence).join("\n\n----\n\n")}\n*/\n`;
// A script element ends where its end is written, whatever stands round it.
const script = (head + main.text).replaceAll("</script", "<\\/script").replaceAll("<!--", "<\\!--");
writeFileSync(out, script);
console.log(`${names.join(", ")}: ${script.length} characters`);
