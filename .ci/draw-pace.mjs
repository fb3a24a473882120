// How fast the page follows and whether it stays small. Figures are printed, since machines differ; only what grows fails.
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inventory, ring } from './draw-bench.mjs';

const EDITS = 30;
const COLLECTIONS = 5;
// A whole day on the ice, with tens of outlines and a model.
const REAL = { route: 'gpx/made_by_us_exploradores_bayo_traverse.gpx', ice: 'outlines/rgi60_exploradores_47.geojson', terrain: 'dem/exploradores_aster_utm18s_float32.tif' };
const REAL_ARGS = ['--gap', '6', '--party', '3', '--rope', '60', '--start', '05:00'];

const sorted = (times) => [...times].sort((a, b) => a - b);
const median = (times) => sorted(times)[times.length >> 1];

/** Types a number into a field as one step: after how long the plan of it was painted and was in the page, and how long the program took. */
const edit = (field, value, painted = true) => field.evaluate((input, [text, paints]) => new Promise((done) => {
  const start = performance.now();
  const watch = new MutationObserver(() => {
    watch.disconnect();
    const known = performance.now() - start;
    if (!paints) done();
    else requestAnimationFrame(() => setTimeout(() => done([performance.now() - start, known, Number(document.body.dataset.took)])));
  });
  watch.observe(document.body, { attributeFilter: ['data-planned'] });
  input.value = text;
  input.dispatchEvent(new Event('input'));
  input.dispatchEvent(new Event('change'));
}), [String(value), painted]);

async function timed(sheet, field, what) {
  for (let i = 0; i < 5; i++) await edit(field, 3 + i);
  const times = [];
  for (let i = 0; i < EDITS; i++) times.push(await edit(field, 4 + (i % 11) / 2));
  const figures = (at) => {
    const of = times.map((one) => one[at]);
    return `median ${median(of).toFixed(0)} ms, worst ${sorted(of).at(-1).toFixed(0)} ms`;
  };
  console.log(`     ${what}: ${EDITS} edits to the picture on the screen: ${figures(0)}; to the plan in the page: ${figures(1)}; of it the program: ${figures(2)}`);
}

const gapOf = (sheet) => sheet.page.locator('.app-zone input.app-number').first();

/** A slider that is dragged: nothing queues, and what is shown in the end is the last. */
async function newestWins(bench, sheet) {
  const slide = (slider) => slider.evaluate(async (input) => {
    for (let i = 0; i <= 60; i++) {
      input.value = String(4 + i / 10);
      input.dispatchEvent(new Event('input'));
      await new Promise((done) => requestAnimationFrame(done));
    }
    return Number(document.body.dataset.planned);
  });
  const before = await sheet.count();
  const during = await slide(sheet.page.locator('.app-zone input.app-slider').first());
  await sheet.page.waitForFunction(() => !document.querySelector('[aria-busy=true]'));
  const after = await sheet.count();
  bench.check(`slider: of 61 edits ${during - before} plans while it slides, ${after - during} after it; nothing queues`, after - during <= 2 && during > before);
}

export async function pace(bench) {
  const sheet = await bench.open(await bench.drawn('pace', bench.exampleArgs));
  await sheet.choose('Halbre plateau');
  const field = await gapOf(sheet).elementHandle();
  await sheet.tab('Plan');
  await timed(sheet, field, 'the example');
  await newestWins(bench, sheet);
  await bench.close('pace', sheet);
  const data = process.env.SCHRUND_REAL_DATA;
  const [route, ice, terrain] = Object.values(REAL).map((file) => join(data ?? '', file));
  if (!data || ![route, ice, terrain].every((file) => existsSync(file))) {
    console.log('     a real day: not run, since SCHRUND_REAL_DATA names no folder with one');
    return;
  }
  const day = await bench.open(await bench.drawn('day', [route, ice, '--terrain', terrain, ...REAL_ARGS]));
  await day.tab('Trip');
  const gap = await day.page.getByLabel('Gap width for zones that give none', { exact: true }).elementHandle();
  await day.tab('Plan');
  await timed(day, gap, 'a real day');
  await bench.close('a real day', day);
}

/** Lets whoever looks ask how much memory the program in the worker holds. */
const reported = () => {
  const Plain = Blob;
  const tells = '{ const Plain = WebAssembly.Instance; WebAssembly.Instance = function (module, imports) { const made = new Plain(module, imports); self.held = made.exports.memory; return made; }; }\n';
  globalThis.Blob = class extends Plain {
    constructor(parts, options) {
      super(options?.type === 'text/javascript' ? [tells, ...parts] : parts, options);
    }
  };
};

export async function memory(bench) {
  const sheet = await bench.open(await bench.drawn('memory', bench.exampleArgs), { before: reported, width: 360, height: 740 });
  const { page } = sheet;
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Performance.enable');
  const held = async () => {
    // What nobody holds any more goes at one collection or at the next: what stays is counted.
    let nodes = Infinity;
    for (let i = 0; i < COLLECTIONS; i++) {
      await cdp.send('HeapProfiler.collectGarbage');
      nodes = Math.min(nodes, (await cdp.send('Memory.getDOMCounters')).nodes);
      await page.waitForTimeout(50);
    }
    const { metrics } = await cdp.send('Performance.getMetrics');
    const of = (name) => metrics.find((one) => one.name === name)?.value ?? NaN;
    const core = await sheet.page.workers()[0].evaluate(() => self.held?.buffer.byteLength ?? NaN);
    return { heap: of('JSHeapUsedSize'), nodes, core };
  };
  await sheet.choose('Halbre plateau');
  const field = await gapOf(sheet).elementHandle();
  await sheet.tab('Plan');
  const edits = async (count) => { for (let i = 0; i < count; i++) await edit(field, 4.5 + (i % 25) / 2, false); };
  await edits(150);
  const before = await held();
  await edits(50);
  const after = await held();
  const mega = (bytes) => (bytes / 1e6).toFixed(2);
  console.log(`     memory after 150 edits: page ${mega(before.heap)} MB, program ${mega(before.core)} MB, ${before.nodes} nodes; after 200: ${mega(after.heap)} MB, ${mega(after.core)} MB, ${after.nodes} nodes`);
  bench.check('memory: the last 50 of 200 edits add less than 2 MB to the page', after.heap - before.heap < 2e6, `${mega(after.heap - before.heap)} MB`);
  bench.check('memory: the last 50 of 200 edits add less than 2 MB to the program', after.core - before.core < 2e6, `${mega(after.core - before.core)} MB`);
  bench.check('memory: no element more', after.nodes <= before.nodes, `${after.nodes - before.nodes} more`);
  await bench.close('memory', sheet);
}

const PIECES = 50;
const SPOTS = 2000;
const SMOOTH = 20;

/** An inventory that fills the map, a hundred thousand spots in all. */
export async function panning(bench) {
  const dir = bench.folder('many');
  const rings = Array.from({ length: PIECES }, (_, i) => ring([2.01 + (i % 10) * 0.035, 66.5 + Math.floor(i / 10) * 0.015], 0.016, SPOTS));
  const glaciers = join(dir, 'many.geojson');
  writeFileSync(glaciers, inventory(rings));
  const sheet = await bench.open(await bench.drawn('many', [...bench.exampleArgs, '--glaciers', glaciers]));
  const { page } = sheet;
  const box = await page.locator('.map-ground').boundingBox();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.evaluate(() => {
    globalThis.frames = [];
    const tick = (now) => { globalThis.frames.push(now); requestAnimationFrame(tick); };
    requestAnimationFrame(tick);
  });
  const before = (await sheet.frame()).pixel([2, 66.5]);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.evaluate(() => { globalThis.frames.length = 0; });
  const start = Date.now();
  for (let i = 0; Date.now() - start < 3000; i++) await page.mouse.move(x + 180 * Math.sin(i / 12), y + 120 * Math.sin(i / 9));
  const frames = await page.evaluate(() => globalThis.frames);
  await page.mouse.up();
  const gaps = frames.slice(1).map((at, i) => at - frames[i]);
  const rate = (1000 * gaps.length) / (frames.at(-1) - frames[0]);
  const worst = sorted(gaps);
  console.log(`     ${(PIECES * SPOTS).toLocaleString('en')} spots of inventory: ${rate.toFixed(0)} frames a second while panning, 95 % within ${worst[Math.floor(worst.length * 0.95)].toFixed(0)} ms, worst ${worst.at(-1).toFixed(0)} ms; usable: ${rate >= SMOOTH ? 'yes' : 'no'}`);
  const after = (await sheet.frame()).pixel([2, 66.5]);
  bench.check('a hundred thousand spots: the map moves under the hand', Math.hypot(after[0] - before[0], after[1] - before[1]) > 2);
  await bench.close('a hundred thousand spots', sheet);
}
