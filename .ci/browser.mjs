// What only a browser can tell of the report: node browser.mjs SCHRUND TOOLS_DIR REPOSITORY
// Prints one line a check and ends with a non-zero code if any failed.
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { chromium } from 'playwright-core';

const [, , schrund, tools, repository] = process.argv;
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const WIDTHS = [360, 768, 1280];
// Paper and the CSS pixels of its printable width and height, margins of the style sheet taken off.
const MM = 96 / 25.4;
const PAPERS = [
  { format: 'A4', width: (210 - 24) * MM, height: (297 - 22) * MM, textHeight: 297 / 25.4 * 72 },
  { format: 'A5', width: (148 - 18) * MM, height: (210 - 18) * MM, textHeight: 210 / 25.4 * 72 },
];
let passed = 0;
let failed = 0;

function check(what, ok, detail = '') {
  console.log(`${ok ? 'ok  ' : 'FAIL'} ${what}${ok || !detail ? '' : `: ${detail}`}`);
  if (ok) passed += 1;
  else failed += 1;
}

// --- trips ---

function gpx(name, points) {
  const trkpts = points.map(([lon, lat, ele]) => `<trkpt lat="${lat}" lon="${lon}">${ele === null ? '' : `<ele>${ele}</ele>`}</trkpt>`);
  return document(name, [trkpts]);
}

function document(name, stages) {
  const trks = stages.map((points, i) => `<trk><name>Day ${i + 1}</name><trkseg>${points.join('')}</trkseg></trk>`);
  return `<gpx version="1.1"><metadata><name>${name}</name></metadata>${trks.join('')}</gpx>`;
}

function days(name, points) {
  const trkpts = points.map(([lon, lat]) => `<trkpt lat="${lat}" lon="${lon}"/>`);
  return document(name, [trkpts.slice(0, 60), trkpts.slice(60)]);
}

function square(west, east, properties) {
  const ring = [[west, 46.49], [east, 46.49], [east, 46.51], [west, 46.51], [west, 46.49]];
  return { type: 'Feature', properties, geometry: { type: 'Polygon', coordinates: [ring] } };
}

function line(heights) {
  return Array.from({ length: 140 }, (_, i) => [(8 + i * 0.0004).toFixed(6), (46.5 + 0.002 * Math.sin(i / 9)).toFixed(6), heights ? 2500 + 300 * Math.sin(i / 45) : null]);
}

const hostile = '<script>alert(1)</script>'.repeat(12);
const zones = (name) => JSON.stringify({ type: 'FeatureCollection', features: [
  square(8.004, 8.008, { name, gap_m: 4, snow_depth_m: 1.4 }),
  square(8.015, 8.019, { name, gap_m: 14, snow_depth_m: 0.5, note: name }),
  square(8.030, 8.034, { name, gap_m: 40 }),
] });
// Pages seen here and one or two more: fonts differ from machine to machine.
const trips = [
  { name: 'three', route: gpx('Over the pass', line(true)), zones: zones('Icefall'), args: ['--party', '3', '--rope', '60'], pages: { A4: 7, A5: 12 } },
  { name: 'pair', route: gpx('Over the pass', line(true)), zones: zones('Icefall'), args: ['--party', '2', '--rope', '80', '--practice', 'short-alpine'], pages: { A4: 8, A5: 13 } },
  { name: 'eleven-over-two-days-without-heights', route: days('Over the pass', line(false)), zones: zones('Icefall'), args: ['--party', '11', '--units', 'imperial'], pages: { A4: 10, A5: 16 } },
  { name: 'hostile', route: gpx(hostile.replaceAll('<', '&lt;'), line(true)), zones: zones(hostile), args: ['--party', '4', '--rope', '50'], pages: { A4: 9, A5: 16 } },
];
// Out and back on one line: every place on the map is met twice.
trips.push({ name: 'out-and-back', route: gpx('To the pass and back', [...line(true), ...line(true).reverse().slice(1)]), zones: zones('Icefall'), args: ['--party', '3', '--rope', '60'], pages: { A4: 9, A5: 15 } });
const example = join(repository, 'examples', 'vordalen');
if (existsSync(join(example, 'route.gpx'))) {
  trips.push({ name: 'example', files: ['route.gpx', 'zones.geojson'].map((f) => join(example, f)), args: ['--trip', join(example, 'trip.toml')], pages: { A4: 9, A5: 16 } });
}

function report(trip) {
  const dir = join(tools, trip.name);
  mkdirSync(dir);
  let files = trip.files;
  if (!files) {
    files = [join(dir, 'route.gpx'), join(dir, 'zones.geojson')];
    writeFileSync(files[0], trip.route);
    writeFileSync(files[1], trip.zones);
  }
  const out = join(dir, 'report.html');
  const run = spawnSync(schrund, ['plan', ...files, ...trip.args, '--format', 'html', '-o', out, '-q'], { encoding: 'utf8' });
  check(`${trip.name}: the report is written`, [0, 5].includes(run.status) && existsSync(out), run.stderr);
  return out;
}

// --- checks ---

async function open(browser, file, viewport) {
  const page = await browser.newPage({ viewport });
  const seen = { requests: [], errors: [] };
  page.on('request', (r) => { if (!r.url().startsWith('data:') && r.url() !== `file://${file}`) seen.requests.push(r.url()); });
  page.on('console', (m) => { if (['error', 'warning'].includes(m.type())) seen.errors.push(m.text()); });
  page.on('pageerror', (e) => seen.errors.push(String(e)));
  page.on('dialog', (d) => { seen.errors.push(`dialog: ${d.message()}`); d.dismiss(); });
  await page.goto(`file://${file}`, { waitUntil: 'load' });
  return { page, seen };
}

// Elements whose content leaves the page at its right, those kept only for readers aloud apart.
const tooWide = () => {
  const limit = document.documentElement.clientWidth;
  const wide = [...document.body.querySelectorAll('*')].filter((e) => {
    const box = e.getBoundingClientRect();
    return box.width > 1 && box.right > limit + 0.5 && !e.closest('svg, thead');
  });
  const scrolls = document.documentElement.scrollWidth > limit;
  return { scrolls, wide: wide.slice(0, 3).map((e) => e.outerHTML.slice(0, 90)) };
};

// Words of a drawing that lie on each other.
const overprinted = () => {
  const on = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 2;
  const of = (svg) => {
    const words = [...svg.querySelectorAll('text')].map((e) => [e.textContent, e.getBoundingClientRect()]).filter(([, box]) => box.width > 0);
    return words.flatMap(([word, box], i) => words.slice(i + 1).filter(([, other]) => on(box, other)).map(([other]) => `${word} on ${other}`));
  };
  return [...document.querySelectorAll('.map svg, .insets svg')].flatMap(of);
};

async function onScreens(browser, trip, file) {
  for (const width of WIDTHS) {
    const { page, seen } = await open(browser, file, { width, height: 800 });
    const wide = await page.evaluate(tooWide);
    check(`${trip.name} at ${width} px: no sideways scroll`, !wide.scrolls && wide.wide.length === 0, JSON.stringify(wide));
    const over = await page.evaluate(overprinted);
    check(`${trip.name} at ${width} px: no word of a map lies on another`, over.length === 0, over.slice(0, 5).join(', '));
    check(`${trip.name} at ${width} px: asks the network for nothing`, seen.requests.length === 0, seen.requests.join(' '));
    check(`${trip.name} at ${width} px: no error and no dialog`, seen.errors.length === 0, seen.errors.join(' | '));
    await page.evaluate(axe);
    const result = await page.evaluate(() => globalThis.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }));
    const found = result.violations.map((v) => `${v.id} (${v.nodes.length}): ${v.nodes[0].html.slice(0, 120)}`);
    check(`${trip.name} at ${width} px: axe finds nothing in ${result.passes.length} rules`, found.length === 0 && result.passes.length > 10, found.join(' | '));
    await page.close();
  }
}

async function byKeyboard(browser, trip, file) {
  const { page } = await open(browser, file, { width: 768, height: 800 });
  const shown = () => page.evaluate(() => [...document.querySelectorAll('.panel')].map((p) => p.offsetHeight > 0));
  const only = async (i) => { const all = await shown(); return all.length >= 4 && all.every((s, k) => s === (k === i)); };
  check(`${trip.name}: the plan's own party is shown first`, await only(0));
  let steps = 0;
  while (steps < 200 && !(await page.evaluate(() => document.activeElement?.name === 'party'))) {
    await page.keyboard.press('Tab');
    steps += 1;
  }
  check(`${trip.name}: the switch is reached with the tabulator key`, steps < 200);
  const ring = await page.evaluate(() => getComputedStyle(document.querySelector('input:focus-visible + label')).outlineStyle);
  check(`${trip.name}: the focus is seen`, ring === 'solid', ring);
  await page.keyboard.press('ArrowRight');
  check(`${trip.name}: an arrow key shows the next party`, await only(1));
  await page.keyboard.press('ArrowRight');
  check(`${trip.name}: and the one after it`, await only(2));
  await page.close();
}

async function withoutScripts(browser, trip, file) {
  const context = await browser.newContext({ javaScriptEnabled: false, viewport: { width: 768, height: 800 } });
  const page = await context.newPage();
  await page.goto(`file://${file}`);
  const seen = await page.getByRole('heading', { level: 2 }).count();
  check(`${trip.name}: all ${seen} sections are there with scripts off`, seen >= 12);
  await page.getByText('One more:', { exact: false }).first().click();
  check(`${trip.name}: the switch works with scripts off`, await page.locator('#panel-2').isVisible());
  await context.close();
}

// What must not be cut is smaller than a page and says so to the printer.
const cuttable = (height) => [...document.querySelectorAll('tr, figure, svg.drawing, article.rope, .verdict, .lines div')]
  .filter((e) => e.offsetParent !== null || e instanceof SVGElement)
  .filter((e) => {
    const box = e.getBoundingClientRect();
    const kept = getComputedStyle(e).breakInside === 'avoid' || box.height < 40;
    return box.height > height || !kept;
  }).map((e) => `${e.tagName}.${e.getAttribute('class')} ${Math.round(e.getBoundingClientRect().height)} px`);

async function onPaper(browser, trip, file) {
  for (const paper of PAPERS) {
    const { page } = await open(browser, file, { width: Math.floor(paper.width), height: Math.floor(paper.height) });
    await page.emulateMedia({ media: 'print' });
    const cut = await page.evaluate(cuttable, paper.height);
    check(`${trip.name} on ${paper.format}: no row or figure can be cut`, cut.length === 0, cut.slice(0, 3).join(', '));
    const wide = await page.evaluate(tooWide);
    check(`${trip.name} on ${paper.format}: nothing leaves the paper`, !wide.scrolls && wide.wide.length === 0, JSON.stringify(wide));
    const panels = await page.evaluate(() => [...document.querySelectorAll('.panel')].slice(1).every((p) => p.offsetHeight > 0));
    check(`${trip.name} on ${paper.format}: every other party is printed`, panels);
    const pdf = file.replace('.html', `-${paper.format}.pdf`);
    await page.pdf({ path: pdf, format: paper.format });
    printed(trip, paper, pdf);
    await page.close();
  }
}

function printed(trip, paper, pdf) {
  const pages = execFileSync('pdftotext', ['-layout', pdf, '-'], { encoding: 'utf8' }).split('\f').slice(0, -1);
  const most = trip.pages[paper.format];
  check(`${trip.name} on ${paper.format}: ${pages.length} pages, at most ${most}`, pages.length > 1 && pages.length <= most);
  check(`${trip.name} on ${paper.format}: no empty page`, pages.every((p) => p.trim().length > 20));
  const boxes = execFileSync('pdftotext', ['-bbox', pdf, '-'], { encoding: 'utf8' });
  const bottoms = [...boxes.matchAll(/yMax="([\d.]+)"/g)].map((m) => Number(m[1]));
  check(`${trip.name} on ${paper.format}: ${bottoms.length} words, none over the edge`, bottoms.length > 300 && Math.max(...bottoms) <= paper.textHeight);
}

const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
});
for (const trip of trips) {
  const file = report(trip);
  await onScreens(browser, trip, file);
  await byKeyboard(browser, trip, file);
  await withoutScripts(browser, trip, file);
  await onPaper(browser, trip, file);
}
await browser.close();
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
