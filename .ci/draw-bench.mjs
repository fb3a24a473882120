// What the checks of the page that draws work with: pages made by the program, opened, used and saved from.
import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { inflateRawSync } from 'node:zlib';

export const counts = { passed: 0, failed: 0 };
// Everything of a plan that the page saves.
const FORMATS = ['csv', 'geojson', 'gpx', 'html', 'json', 'kml', 'sheet', 'text'];
const BYTES = { encoding: 'buffer', maxBuffer: 256 * 1024 * 1024 };
const PATIENCE = { timeout: 30_000 };

export class Bench {
  constructor(browser, schrund, tools, repository) {
    Object.assign(this, { browser, schrund, tools });
    this.example = join(repository, 'examples', 'vordalen');
  }

  check(what, ok, detail = '') {
    console.log(`${ok ? 'ok  ' : 'FAIL'} ${what}${ok || !detail ? '' : `: ${detail}`}`);
    if (ok) counts.passed += 1;
    else counts.failed += 1;
  }

  folder(name) {
    return mkdtempSync(join(this.tools, `${name}-`));
  }

  /** A file of the example. */
  given(name) {
    return join(this.example, name);
  }

  /** The arguments that the example is planned and drawn with. */
  get exampleArgs() {
    return [this.given('route.gpx'), this.given('zones.geojson'), '--trip', this.given('trip.toml')];
  }

  /** What the program prints; a plan that stops somewhere is one too. */
  async run(args, cwd) {
    try {
      return (await promisify(execFile)(this.schrund, args, { ...BYTES, cwd })).stdout;
    } catch (error) {
      if (error.code === 5) return error.stdout;
      throw new Error(`${args.join(' ')}: ${error.code} ${error.stderr}`);
    }
  }

  /** The address of a page that the program writes. */
  async drawn(name, args) {
    const file = join(this.folder(name), 'draw.html');
    await this.run(['draw', ...args, '-o', file, '-q']);
    return file;
  }

  /** Opens a page and waits for its program; for its first plan too unless nothing can be planned in it. */
  async open(file, { width = 1280, height = 800, dark = false, touch = false, plans = true, before } = {}) {
    const context = await this.browser.newContext({
      viewport: { width, height }, colorScheme: dark ? 'dark' : 'light', hasTouch: touch, isMobile: touch, reducedMotion: 'reduce', acceptDownloads: true,
    });
    const page = await context.newPage();
    if (before) await page.addInitScript(before);
    const seen = { requests: [], errors: [] };
    page.on('request', (r) => { if (!/^(blob|data):/.test(r.url()) && r.url() !== `file://${file}`) seen.requests.push(r.url()); });
    page.on('console', (m) => { if (['error', 'warning'].includes(m.type())) seen.errors.push(m.text()); });
    page.on('pageerror', (e) => seen.errors.push(String(e.stack ?? e)));
    page.on('dialog', (d) => { seen.errors.push(`dialog: ${d.message()}`); void d.dismiss(); });
    await page.goto(`file://${file}`, { waitUntil: 'load' });
    await page.waitForSelector('body[data-ready]', PATIENCE);
    const sheet = new Sheet(this, page, seen);
    if (plans) await sheet.planned(1);
    if (plans) await page.waitForSelector('.map-ground canvas', PATIENCE);
    return sheet;
  }

  /** Checks that a page asked for nothing and complained of nothing, and closes it. */
  async close(what, sheet) {
    this.check(`${what}: asks the network for nothing`, sheet.seen.requests.length === 0, sheet.seen.requests.join(' '));
    this.check(`${what}: no error, no warning and no dialog`, sheet.seen.errors.length === 0, sheet.seen.errors.join(' | '));
    await sheet.page.context().close();
  }

  /** Plans a saved set again with the native program: every output must be the same, byte for byte. */
  async plansTheSame(what, set, route) {
    const dir = this.folder('set');
    for (const [name, bytes] of set) {
      mkdirSync(dirname(join(dir, name)), { recursive: true });
      writeFileSync(join(dir, name), bytes);
    }
    const zones = [...set.keys()].find((name) => name === 'zones.geojson');
    const { outputs } = JSON.parse(await this.run(['page', 'trip', '--trip', 'trip.toml'], dir));
    const formats = outputs.map(({ format }) => format).sort();
    this.check(`${what}: the set has every output`, formats.join() === FORMATS.join() && outputs.every(({ file }) => set.has(`plan/${file}`)), [...set.keys()].join(' '));
    await Promise.all(outputs.map(async ({ format, file }) => {
      const native = await this.run(['plan', route, zones, '--trip', 'trip.toml', '--format', format, '-q'], dir);
      const saved = set.get(`plan/${file}`) ?? Buffer.alloc(0);
      this.check(`${what}: ${file}, ${saved.length} bytes, is what the native program plans from the saved files`, saved.length > 100 && native.equals(saved), `${native.length} bytes`);
    }));
  }
}

/** One open page. Coordinates are longitude and latitude; places on the screen are found by what the map says of them. */
export class Sheet {
  constructor(bench, page, seen) {
    Object.assign(this, { bench, page, seen });
  }

  button(name) {
    return this.page.getByRole('button', { name, exact: true });
  }

  tab(name) {
    return this.page.getByRole('tab', { name, exact: true }).click();
  }

  /** On a narrow screen there is a map only beside some tabs. */
  async seesMap() {
    if (!(await this.page.locator('.map-ground').isVisible())) await this.tab('Zone');
  }

  async tool(name) {
    await this.seesMap();
    await this.page.locator('.map-tools').getByRole('button', { name, exact: true }).click();
  }

  count() {
    return this.page.evaluate(() => Number(document.body.dataset.planned ?? 0));
  }

  /** Waits until so many plans were shown, and none is being made. */
  planned(count) {
    return this.page.waitForFunction((least) => Number(document.body.dataset.planned ?? 0) >= least && !document.querySelector('[aria-busy=true]'), count, PATIENCE);
  }

  /** Does something and waits for the plan that comes of it. */
  async after(act) {
    const before = await this.count();
    await act();
    await this.planned(before + 1);
  }

  /** Picks a zone in the list; by what its line ends with. */
  async choose(name) {
    await this.tab('Zone');
    const choice = this.page.getByLabel('Picked zone', { exact: true });
    const label = (await choice.locator('option').allInnerTexts()).find((text) => text.endsWith(name));
    await choice.selectOption({ label });
  }

  /** Types into a field of the picked zone. */
  async type(field, text) {
    await this.tab('Zone');
    await this.after(() => this.page.locator('.app-zone').getByRole('textbox', { name: field, exact: true }).fill(text));
  }

  /** Places of the map on which nothing else lies, as far from each other as can be. */
  free() {
    return this.page.evaluate(() => {
      const box = document.querySelector('.map-ground').getBoundingClientRect();
      const spots = [];
      for (let y = 0.1; y < 0.95; y += 0.05) for (let x = 0.05; x < 1; x += 0.05) spots.push([Math.round(box.left + x * box.width), Math.round(box.top + y * box.height)]);
      const free = spots.filter(([x, y]) => document.elementFromPoint(x, y)?.closest('.map-ground'));
      return [free[0], free.at(-1)];
    });
  }

  /** What the map says of a place of the screen. A map that was just shown answers from its next picture on: until then it is asked again. */
  async told([x, y]) {
    const place = this.page.locator('.map-place span').first();
    for (const end = Date.now() + PATIENCE.timeout; Date.now() < end;) {
      await this.page.mouse.move(x, y);
      const says = await place.innerText({ timeout: 250 }).catch(() => null);
      if (says !== null) return says;
    }
    throw new Error(`the map says nothing of ${x}, ${y}`);
  }

  /** How longitude and latitude lie on the screen: straight, so two places tell. */
  async frame() {
    await this.seesMap();
    const ends = await this.free();
    const places = [];
    for (const end of ends) {
      const says = await this.told(end);
      const [, latitude, south, longitude, west] = says.match(/([\d.]+)° ([NS]) ([\d.]+)° ([EW])/);
      places.push([longitude * (west === 'W' ? -1 : 1), latitude * (south === 'S' ? -1 : 1)]);
    }
    const per = [0, 1].map((axis) => (ends[1][axis] - ends[0][axis]) / (places[1][axis] - places[0][axis]));
    return { per, pixel: (place) => [0, 1].map((axis) => ends[0][axis] + (place[axis] - places[0][axis]) * per[axis]) };
  }

  /** Clicks on places of the map, one after the other. */
  async clicks(...places) {
    const { pixel } = await this.frame();
    for (const place of places) {
      const [x, y] = pixel(place);
      await this.page.mouse.move(x, y);
      await this.page.mouse.click(x, y);
    }
  }

  /** Drags from one place of the screen to another. */
  async drag([x, y], [toX, toY]) {
    await this.page.mouse.move(x, y);
    await this.page.mouse.down();
    await this.page.mouse.move(toX, toY, { steps: 6 });
    await this.page.mouse.up();
  }

  /** The bytes of what a button of the files saves. */
  async save(name) {
    await this.tab('Files');
    await this.page.locator('.app-single').evaluate((single) => { single.open = true; });
    const [download] = await Promise.all([this.page.waitForEvent('download', PATIENCE), this.button(name).click()]);
    return readFileSync(await download.path());
  }

  async zonesText() {
    return (await this.save('Zones (GeoJSON)')).toString();
  }

  async zones() {
    return JSON.parse(await this.zonesText()).features;
  }

  /** All that the archive holds, by name. */
  async set() {
    return unzipped(await this.save('Save everything (.zip)'));
  }

  /** Presses a step until there is none left; how many there were. */
  async all(name) {
    const step = this.page.getByRole('button', { name, exact: true }).first();
    const before = await this.count();
    let steps = 0;
    while (await step.isEnabled()) {
      await step.click();
      steps += 1;
    }
    if (steps > 0) await this.planned(before + 1);
    return steps;
  }

  /** Drops files on the page: paths, or pairs of a name and what it holds. */
  drop(...files) {
    const named = files.map((file) => (Array.isArray(file) ? file : [basename(file), readFileSync(file)]));
    return this.page.evaluate((all) => {
      const data = new DataTransfer();
      for (const [name, bytes] of all) data.items.add(new File([Uint8Array.from(atob(bytes), (c) => c.charCodeAt(0))], name));
      document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
    }, named.map(([name, bytes]) => [name, Buffer.from(bytes).toString('base64')]));
  }
}

/** Files of an archive by their names. */
export function unzipped(zip) {
  const files = new Map();
  let at = zip.readUInt32LE(zip.length - 22 + 16);
  while (zip.readUInt32LE(at) === 0x02014b50) {
    const [method, size, nameLength] = [zip.readUInt16LE(at + 10), zip.readUInt32LE(at + 20), zip.readUInt16LE(at + 28)];
    const [extra, comment, from] = [zip.readUInt16LE(at + 30), zip.readUInt16LE(at + 32), zip.readUInt32LE(at + 42)];
    const data = from + 30 + zip.readUInt16LE(from + 26) + zip.readUInt16LE(from + 28);
    const packed = zip.subarray(data, data + size);
    files.set(zip.toString('utf8', at + 46, at + 46 + nameLength), method === 0 ? packed : inflateRawSync(packed));
    at += 46 + nameLength + extra + comment;
  }
  return files;
}

/** A closed ring about a place, not round: by its half width in degrees of longitude and how many spots it has. */
export function ring([longitude, latitude], half, spots, wave = 0.15) {
  const points = Array.from({ length: spots }, (_, i) => {
    const angle = (i / spots) * 2 * Math.PI;
    const far = half * (1 + wave * Math.sin(7 * angle) + 0.02 * Math.sin(37 * angle + latitude * 1000));
    return [Number((longitude + far * Math.cos(angle)).toFixed(6)), Number((latitude + 0.4 * far * Math.sin(angle)).toFixed(6))];
  });
  return [...points, points[0]];
}

/** An inventory of such rings, invented. */
export const inventory = (rings) => JSON.stringify({
  type: 'FeatureCollection',
  features: rings.map((one, i) => ({ type: 'Feature', properties: { name: `Invented ice ${i + 1}` }, geometry: { type: 'Polygon', coordinates: [one] } })),
});
