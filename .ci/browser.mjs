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
// A telephone: what is seen first, and how far it scrolls as it is opened, CSS pixels.
const FIRST_SCREEN = 740;
const MOST_SCREENS = 9600;
// Smallest print, points.
const SMALLEST = 7;
// Paper and the CSS pixels of its printable width and height, margins of the style sheet taken off.
const MM = 96 / 25.4;
const PAPERS = [
  { format: 'A4', width: (210 - 24) * MM, height: (297 - 22) * MM, textHeight: 297 / 25.4 * 72 },
  { format: 'A5', width: (148 - 18) * MM, height: (210 - 18) * MM, textHeight: 210 / 25.4 * 72 },
];
// Words with their boxes take more than the megabyte that is read unasked.
const TEXT = { encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 };
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

function line(heights, length = 140) {
  return Array.from({ length }, (_, i) => [(8 + i * 0.0004).toFixed(6), (46.5 + 0.002 * Math.sin(i / 9)).toFixed(6), heights ? 2500 + 300 * Math.sin(i / 45) : null]);
}

const hostile = '<script>alert(1)</script>'.repeat(12);
const zones = (name) => JSON.stringify({ type: 'FeatureCollection', features: [
  square(8.004, 8.008, { name, gap_m: 4, snow_depth_m: 1.4 }),
  square(8.015, 8.019, { name, gap_m: 14, snow_depth_m: 0.5, note: name }),
  square(8.030, 8.034, { name, gap_m: 40 }),
] });
const eight = JSON.stringify({ type: 'FeatureCollection', features: [2, 5, 9, 14, 18, 22, 11, 7].map((gap_m, i) => square(8.004 + i * 0.014, 8.008 + i * 0.014, { name: ['North fall', 'Long tongue', 'Under the horn', 'Little sea', 'Old road', 'Wide saddle', 'Grey steps', 'South fall'][i], gap_m, snow_depth_m: 0.4 + 0.2 * i })) });
// Pages that could be printed before anything was folded, and still are at most, unasked; the whole annex asked for brings the two sides of the sheet.
const trips = [
  { name: 'three', route: gpx('Over the pass', line(true)), zones: zones('Icefall'), args: ['--party', '3', '--rope', '60'], pages: { A4: 7, A5: 12 } },
  { name: 'pair', route: gpx('Over the pass', line(true)), zones: zones('Icefall'), args: ['--party', '2', '--rope', '80', '--practice', 'short-alpine'], pages: { A4: 8, A5: 13 } },
  { name: 'eleven-over-two-days-without-heights', route: days('Over the pass', line(false)), zones: zones('Icefall'), args: ['--party', '11', '--units', 'imperial'], unfolds: 3, pages: { A4: 10, A5: 16 } },
  { name: 'hostile', route: gpx(hostile.replaceAll('<', '&lt;'), line(true)), zones: zones(hostile), args: ['--party', '4', '--rope', '50'], pages: { A4: 9, A5: 16 } },
];
// Out and back on one line: every place on the map is met twice.
trips.push({ name: 'out-and-back', route: gpx('To the pass and back', [...line(true), ...line(true).reverse().slice(1)]), zones: zones('Icefall'), args: ['--party', '3', '--rope', '60'], pages: { A4: 9, A5: 15 } });
// As many roped legs as two sides have room for.
trips.push({ name: 'eight-legs', route: gpx('Over eight glaciers', line(true, 300)), zones: eight, args: ['--party', '3', '--rope', '60'], pages: { A4: 12, A5: 22 } });
// The same as the sheet meets it at its worst: several teams, each with set-ups of its own, and a rope that is nowhere long enough.
for (const [name, args] of [
  ['seven-on-eight-legs', ['--party', '7', '--rope', '60', '--rope', '60']],
  ['eight-on-eight-legs', ['--party', '8', '--rope', '60', '--rope', '60']],
  ['two-on-eight-legs-and-a-short-rope', ['--party', '2', '--rope', '60']],
]) {
  trips.push({ name, route: gpx('Over eight glaciers', line(true, 300)), zones: eight, args: [...args, '--start', '05:00', '--bridges-until', '10:00'], onlySheet: true });
}
// As many zones as an inventory holds along a day, near each other.
const thirty = JSON.stringify({ type: 'FeatureCollection', features: Array.from({ length: 30 }, (_, i) => square(8.002 + i * 0.0039, 8.0035 + i * 0.0039, { name: `Glacier ${i + 1}`, gap_m: 2 + i % 9 })) });
trips.push({ name: 'thirty-zones', route: gpx('Over thirty glaciers', line(true, 300)), zones: thirty, args: ['--party', '3', '--rope', '60'], pages: { A4: 12, A5: 22 } });
const example = join(repository, 'examples', 'vordalen');
if (existsSync(join(example, 'route.gpx'))) {
  const files = ['route.gpx', 'zones.geojson'].map((f) => join(example, f));
  const trip = ['--trip', join(example, 'trip.toml')];
  trips.push({ name: 'example-in-german', files, args: [...trip, '--lang', 'de'], more: 'Eine Person mehr:', pages: { A4: 11, A5: 17 } });
  // Two teams, each with set-ups of its own, on the six roped legs of the example.
  trips.push({ name: 'seven-on-two-ropes', files, args: [...trip, '--party', '7', '--rope', '60', '--rope', '60'], unfolds: 3, pages: { A4: 13, A5: 22 } });
  trips.push({ name: 'example', files, args: trip, pages: { A4: 10, A5: 16 } });
}

function written(trip) {
  const dir = join(tools, trip.name);
  mkdirSync(dir);
  let files = trip.files;
  if (!files) {
    files = [join(dir, 'route.gpx'), join(dir, 'zones.geojson')];
    writeFileSync(files[0], trip.route);
    writeFileSync(files[1], trip.zones);
  }
  const out = join(dir, 'out');
  const run = spawnSync(schrund, ['plan', ...files, ...trip.args, '--out', out, '-q'], TEXT);
  const both = ['report.html', 'sheet.html'].map((f) => join(out, f));
  check(`${trip.name}: report and sheet are written`, [0, 5].includes(run.status) && both.every((f) => existsSync(f)), run.stderr);
  return both;
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

// Words of a drawing that lie on each other, or leave it: maps, profiles, ropes.
const overprinted = () => {
  const MOST = 0.5;
  const on = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > MOST && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > MOST;
  const of = (svg) => {
    const paper = svg.getBoundingClientRect();
    const words = [...svg.querySelectorAll('text')].map((e) => [e.textContent, e.getBoundingClientRect()]).filter(([, box]) => box.width > 0);
    const cut = words.filter(([, box]) => box.left < paper.left - MOST || box.right > paper.right + MOST).map(([word]) => `${word} leaves it`);
    return cut.concat(words.flatMap(([word, box], i) => words.slice(i + 1).filter(([, other]) => on(box, other)).map(([other]) => `${word} on ${other}`)));
  };
  return [...document.querySelectorAll('svg.drawing, svg.line')].flatMap(of);
};

// What every drawing of the whole route must tell, at every width: each leg on the profile.
const untold = () => [...document.querySelectorAll('.profile svg')].length === 0 ? [] : [...document.querySelectorAll('#legs tr[data-leg] th')].map((e) => e.textContent).filter((leg) => {
  const pills = [...document.querySelectorAll('.profile svg text.pill')].filter((e) => e.getBoundingClientRect().width > 0);
  return !pills.some((e) => e.textContent.split(' ')[0] === leg);
});

// What is asked for is unfolded without a script of the page.
const unfold = (page) => page.locator('#unfold').check();

// As it is opened on a telephone, in the hut and in the dark.
async function onTelephone(browser, trip, file) {
  const { page } = await open(browser, file, { width: 360, height: FIRST_SCREEN });
  const wide = await page.evaluate(tooWide);
  check(`${trip.name} on a telephone: no sideways scroll`, !wide.scrolls && wide.wide.length === 0, JSON.stringify(wide));
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  const most = trip.screens ?? MOST_SCREENS;
  check(`${trip.name} on a telephone: ${height} px high, at most ${most}`, height <= most);
  const first = await page.evaluate(() => [...document.querySelectorAll('.stands, .pack, .next')].map((e) => Math.round(e.getBoundingClientRect().bottom)));
  const seen = trip.first ?? FIRST_SCREEN;
  check(`${trip.name} on a telephone: what stops, what to carry and where the rope comes out first by ${Math.max(...first)} px`, first.length > 1 && Math.max(...first) <= seen);
  const small = await page.evaluate(() => [...document.querySelectorAll('summary, .unfold')].map((e) => e.getBoundingClientRect().height).filter((h) => h < 44));
  check(`${trip.name} on a telephone: a glove hits every fold`, small.length === 0, small.join(', '));
  const broken = await page.evaluate(() => [...document.querySelectorAll('td.at')].filter((e) => { const r = document.createRange(); r.selectNodeContents(e); return r.getClientRects().length > 1; }).map((e) => e.textContent));
  check(`${trip.name} on a telephone: no coordinate breaks`, broken.length === 0, broken.slice(0, 3).join(', '));
  for (const colorScheme of ['light', 'dark']) {
    await page.emulateMedia({ colorScheme });
    await page.evaluate(axe);
    const result = await page.evaluate(() => globalThis.axe.run(document, { runOnly: ['color-contrast'] }));
    const faint = result.violations.flatMap((v) => v.nodes.map((n) => `${n.html.slice(0, 80)} ${n.any[0]?.message ?? ''}`));
    check(`${trip.name} on a telephone: it reads in the ${colorScheme}`, faint.length === 0, faint.slice(0, 3).join(' | '));
  }
  await page.close();
}

async function onScreens(browser, trip, file) {
  for (const width of WIDTHS) {
    const { page, seen } = await open(browser, file, { width, height: 800 });
    await unfold(page);
    const wide = await page.evaluate(tooWide);
    check(`${trip.name} at ${width} px: no sideways scroll`, !wide.scrolls && wide.wide.length === 0, JSON.stringify(wide));
    const over = await page.evaluate(overprinted);
    check(`${trip.name} at ${width} px: no word of a drawing lies on another or leaves it`, over.length === 0, over.slice(0, 5).join(', '));
    const missing = await page.evaluate(untold);
    check(`${trip.name} at ${width} px: every leg has its number on the profile`, missing.length === 0, missing.join(', '));
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
  let folds = 0;
  while (folds < 200 && !(await page.evaluate(() => document.activeElement?.id === 'unfold'))) {
    await page.keyboard.press('Tab');
    folds += 1;
  }
  await page.keyboard.press('Space');
  check(`${trip.name}: all is unfolded with a key`, await page.locator('#assumptions table').last().isVisible());
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
  check(`${trip.name}: the annex is folded`, !(await page.locator('#assumptions table').last().isVisible()));
  await unfold(page);
  await page.getByText(trip.more ?? 'One more:', { exact: false }).first().click();
  check(`${trip.name}: the switch works with scripts off`, await page.locator('#panel-2').isVisible());
  await context.close();
}

// What must not be cut is smaller than a page and says so to the printer.
const cuttable = (height) => [...document.querySelectorAll('tr, figure, svg.drawing, svg.line, article.rope, article.card, .verdict, .lines div')]
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
    const unasked = file.replace('.html', `-unasked-${paper.format}.pdf`);
    await page.pdf({ path: unasked, format: paper.format });
    printed(trip, paper, unasked, 'unasked', trip.pages[paper.format]);
    await page.emulateMedia({ media: 'screen' });
    await unfold(page);
    await page.emulateMedia({ media: 'print' });
    const cut = await page.evaluate(cuttable, paper.height);
    check(`${trip.name} on ${paper.format}: no row or figure can be cut`, cut.length === 0, cut.slice(0, 3).join(', '));
    const wide = await page.evaluate(tooWide);
    check(`${trip.name} on ${paper.format}: nothing leaves the paper`, !wide.scrolls && wide.wide.length === 0, JSON.stringify(wide));
    const panels = await page.evaluate(() => [...document.querySelectorAll('.panel')].slice(1).every((p) => p.offsetHeight > 0));
    check(`${trip.name} on ${paper.format}: every other party is printed`, panels);
    const pdf = file.replace('.html', `-${paper.format}.pdf`);
    await page.pdf({ path: pdf, format: paper.format });
    printed(trip, paper, pdf, 'unfolded', trip.pages[paper.format] + (trip.unfolds ?? 2));
    await page.close();
  }
}

function printed(trip, paper, pdf, what, most) {
  const pages = execFileSync('pdftotext', ['-layout', pdf, '-'], TEXT).split('\f').slice(0, -1);
  check(`${trip.name} on ${paper.format}, ${what}: ${pages.length} pages, at most ${most}`, pages.length > 1 && pages.length <= most);
  check(`${trip.name} on ${paper.format}, ${what}: no empty page`, pages.every((p) => p.trim().length > 20));
  const boxes = execFileSync('pdftotext', ['-bbox', pdf, '-'], TEXT);
  const bottoms = [...boxes.matchAll(/yMax="([\d.]+)"/g)].map((m) => Number(m[1]));
  check(`${trip.name} on ${paper.format}, ${what}: ${bottoms.length} words, none over the edge`, bottoms.length > 300 && Math.max(...bottoms) <= paper.textHeight);
}

// Print that is too small, words of a drawing on each other, and what is neither black nor white nor grey.
const smallPrint = (least) => {
  const px = (e) => {
    const size = parseFloat(getComputedStyle(e).fontSize);
    const svg = e.closest('svg');
    return svg ? size * svg.getBoundingClientRect().width / svg.viewBox.baseVal.width : size;
  };
  const texts = [...document.querySelectorAll('body *')].filter((e) => [...e.childNodes].some((n) => n.nodeType === 3 && n.textContent.trim()) && e.getClientRects().length > 0 && e.localName !== 'title');
  return { count: texts.length, small: texts.filter((e) => px(e) * 0.75 < least - 0.01).map((e) => `${e.outerHTML.slice(0, 60)} ${(px(e) * 0.75).toFixed(2)} pt`) };
};
const coloured = () => {
  const grey = (c) => { const m = c.match(/[\d.]+/g); return !m || m.length < 3 || (m[0] === m[1] && m[1] === m[2]) || m[3] === '0'; };
  const names = ['color', 'fill', 'stroke', 'backgroundColor', 'borderTopColor', 'borderLeftColor', 'borderBottomColor'];
  return [...document.querySelectorAll('body, body *')].filter((e) => e.getClientRects().length > 0).flatMap((e) => names.map((n) => [n, getComputedStyle(e)[n]]).filter(([, c]) => !grey(c)).map(([n, c]) => `${e.localName}.${e.getAttribute('class')} ${n} ${c}`));
};
const onEachOther = () => {
  const on = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.5 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 2;
  return [...document.querySelectorAll('svg.line')].flatMap((svg) => {
    const words = [...svg.querySelectorAll('text')].map((e) => [e.textContent, e.getBoundingClientRect()]);
    return words.flatMap(([word, box], i) => words.slice(i + 1).filter(([, other]) => on(box, other)).map(([other]) => `${word} on ${other}`));
  });
};

// The sheet alone: two sides of A5, nothing cut, nothing small, no colour.
async function theSheet(browser, trip, file) {
  const paper = { format: 'A5', width: (148 - 18) * MM, height: (210 - 16) * MM, wide: 148 / 25.4 * 72, high: 210 / 25.4 * 72 };
  const { page, seen } = await open(browser, file, { width: Math.floor(paper.width), height: Math.floor(paper.height) });
  await page.emulateMedia({ media: 'print' });
  const wide = await page.evaluate(tooWide);
  check(`${trip.name}, the sheet: nothing leaves the paper`, !wide.scrolls && wide.wide.length === 0, JSON.stringify(wide));
  const { count, small } = await page.evaluate(smallPrint, SMALLEST);
  check(`${trip.name}, the sheet: ${count} texts of ${SMALLEST} pt and more`, count > 50 && small.length === 0, small.slice(0, 3).join(', '));
  const colours = await page.evaluate(coloured);
  check(`${trip.name}, the sheet: black and white`, colours.length === 0, colours.slice(0, 3).join(', '));
  const over = await page.evaluate(onEachOther);
  check(`${trip.name}, the sheet: no word of a rope lies on another`, over.length === 0, over.slice(0, 3).join(', '));
  const cut = await page.evaluate(cuttable, paper.height);
  check(`${trip.name}, the sheet: no row or rope can be cut`, cut.length === 0, cut.slice(0, 3).join(', '));
  const pdf = file.replace('.html', '.pdf');
  await page.pdf({ path: pdf, preferCSSPageSize: true });
  const size = execFileSync('pdfinfo', [pdf], TEXT).match(/Page size:.*/)[0];
  check(`${trip.name}, the sheet: sides of A5`, size.includes('(A5)'), size);
  const sides = execFileSync('pdftotext', ['-layout', pdf, '-'], TEXT).split('\f').length - 1;
  check(`${trip.name}, the sheet: ${sides} sides, 2`, sides === 2);
  const boxes = execFileSync('pdftotext', ['-bbox', pdf, '-'], TEXT);
  const ends = (name) => Math.max(...[...boxes.matchAll(new RegExp(`${name}="([\\d.]+)"`, 'g'))].map((m) => Number(m[1])));
  check(`${trip.name}, the sheet: no word over the edge`, ends('xMax') <= paper.wide && ends('yMax') <= paper.high);
  check(`${trip.name}, the sheet: asks for nothing, no error`, seen.requests.length + seen.errors.length === 0, seen.errors.join(' | '));
  await page.emulateMedia({ media: 'screen' });
  await page.evaluate(axe);
  const result = await page.evaluate(() => globalThis.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }));
  const found = result.violations.map((v) => `${v.id} (${v.nodes.length}): ${v.nodes[0].html.slice(0, 120)}`);
  check(`${trip.name}, the sheet: axe finds nothing`, found.length === 0, found.join(' | '));
  await page.close();
}

const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
});
// Two trips at a time: a page waits for its browser more than it reckons.
const waiting = [...trips];
const look = async () => {
  for (let trip = waiting.shift(); trip; trip = waiting.shift()) {
    const [file, sheet] = written(trip);
    await theSheet(browser, trip, sheet);
    if (trip.onlySheet) continue;
    await onTelephone(browser, trip, file);
    await onScreens(browser, trip, file);
    await byKeyboard(browser, trip, file);
    await withoutScripts(browser, trip, file);
    await onPaper(browser, trip, file);
  }
};
await Promise.all([look(), look()]);
await browser.close();
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
