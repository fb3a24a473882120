// A newcomer at a desk: steps back out of a field, the way of the tabulator, painting by keys, the profile before there is a plan.

import { readFileSync } from 'node:fs';

/** Where the route of the example begins. */
const START = [2, 66.50807];

const focused = (page) => page.evaluate(() => document.activeElement.labels?.[0]?.textContent ?? document.activeElement.getAttribute('aria-label') ?? document.activeElement.textContent);

/** Undo and redo in a field: by keys and out of the menu of the browser. `held` reads the same figure out of what is saved. */
async function steps(bench, sheet, what, field, typed, held) {
  const { page } = sheet;
  const value = () => field.inputValue();
  const before = await value();
  await field.focus();
  await sheet.after(() => page.keyboard.type(typed));
  await page.keyboard.press('Enter');
  await field.focus();
  const seen = [];
  for (const keys of ['Control+z', 'Control+y', 'Control+z', 'Control+Shift+z', 'Meta+z']) {
    await sheet.after(() => page.keyboard.press(keys));
    seen.push(await value());
  }
  bench.check(`${what}: in its field undo and redo are the page's`, seen.join() === [before, typed, before, typed, before].join(), seen.join());
  bench.check(`${what}: field and state show the same number`, (await held()) === before, `${await held()} and ${before}`);
}

export async function undoInFields(bench) {
  const sheet = await bench.open(await bench.drawn('steps', bench.exampleArgs));
  const { page } = sheet;
  await sheet.choose('Halbre plateau');
  const gap = page.locator('.app-zone').getByRole('textbox', { name: 'Widest gap expected', exact: true });
  await steps(bench, sheet, 'gap', gap, '25', async () => String((await sheet.zones())[1].properties.gap_m));
  await sheet.tab('Zone');
  const before = await gap.inputValue();
  await gap.focus();
  await sheet.after(() => page.keyboard.type('19'));
  const cdp = await page.context().newCDPSession(page);
  await sheet.after(() => cdp.send('Input.dispatchKeyEvent', { type: 'rawKeyDown', commands: ['undo'], key: 'F13', code: 'F13' }));
  bench.check('gap: undo out of the menu of the browser is the page\'s, and what was being typed one step', (await gap.inputValue()) === before, await gap.inputValue());
  await sheet.tab('Trip');
  const mass = page.locator('.app-rows .app-number').first();
  await steps(bench, sheet, 'mass', mass, '91', async () => /^mass_kg = (\d+)/m.exec((await sheet.save('Trip file (TOML)')).toString())?.[1]);
  await bench.close('steps in fields', sheet);
}

export async function wayOfTheTabulator(bench) {
  const sheet = await bench.open(await bench.drawn('tabulator', bench.exampleArgs));
  const { page } = sheet;
  await sheet.tab('Trip');
  await page.getByLabel('Person 1', { exact: true }).focus();
  const way = [];
  for (let i = 0; i < 8; i++) {
    way.push(await focused(page));
    await page.keyboard.press('Tab');
  }
  const wanted = ['Person 1', 'With pack, if known', 'Person 2', 'With pack, if known', 'Person 3', 'With pack, if known', 'Add a person', 'Take out person 1'];
  bench.check('trip: the tabulator goes from name to mass to the next name, and what takes out comes last', way.join() === wanted.join(), way.join());
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('ArrowDown');
  await sheet.after(() => page.keyboard.press('Enter'));
  const left = await page.locator('.app-rows input[type=text]').evaluateAll((all) => all.map((one) => one.value).filter((value) => /^\D+$/.test(value)));
  bench.check('trip: by arrow and enter key the second is taken out, and the keys are on a name', left.slice(0, 2).join() === 'Ada,Cleo' && (await focused(page)) === 'Person 2', `${left} ${await focused(page)}`);
  await sheet.after(() => page.keyboard.press('Control+z'));
  bench.check('trip: a step back, and the keys are where they were', (await focused(page)) === 'Person 2' && (await page.getByLabel('Person 2', { exact: true }).inputValue()) === 'Ben', await focused(page));
  await page.getByRole('button', { name: 'Take out rope 1', exact: true }).focus();
  await sheet.after(() => page.keyboard.press('Enter'));
  bench.check('trip: after a rope is taken out the keys are on the name of another', (await focused(page)) === 'Rope 1', await focused(page));
  await bench.close('tabulator', sheet);
}

/** How strong the bar under the hill is drawn at a kilometre. */
const barAt = (page, km, length) => page.waitForTimeout(300).then(() => page.locator('.profile-strip canvas').evaluate((canvas, share) => {
  const { width, height } = canvas.getBoundingClientRect();
  const [x, y] = [42 + share * (width - 54), height - 28];
  // Read from a copy: who reads a canvas that is drawn on slows it down.
  const copy = Object.assign(document.createElement('canvas'), { width: 1, height: 1 });
  const pen = copy.getContext('2d', { willReadFrequently: true });
  pen.drawImage(canvas, -Math.round((x * canvas.width) / width), -Math.round((y * canvas.height) / height));
  return pen.getImageData(0, 0, 1, 1).data[3];
}, km / length));

export async function paintsByKeys(bench) {
  const sheet = await bench.open(await bench.drawn('painter', []), { plans: false });
  const { page } = sheet;
  await sheet.after(() => page.locator('input[type=file]').setInputFiles(bench.given('route.gpx')));
  await page.waitForSelector('.map-ground canvas');
  const before = await barAt(page, 3, 17);
  await sheet.tool('Paint');
  const [from, to] = [page.locator('.map-fields input').nth(0), page.locator('.map-fields input').nth(1)];
  await from.focus();
  await page.keyboard.type('2.5');
  await page.keyboard.press('Enter');
  bench.check('painter: the enter key goes on to the kilometre that is missing', await to.evaluate((one) => one === document.activeElement));
  await page.keyboard.type('30');
  await page.keyboard.press('Enter');
  const length = Number(await to.inputValue());
  bench.check(`painter: a kilometre behind the end becomes the last one, ${length}`, length > 16 && length < 18 && (await to.isVisible()));
  await page.keyboard.type('4');
  const start = (await sheet.frame()).pixel(START);
  await sheet.after(() => page.keyboard.press('Enter'));
  bench.check('painter: the enter key does what Done does, and the keys are on the gap', (await focused(page)) === 'Widest gap expected' && !(await to.isVisible()), await focused(page));
  const now = (await sheet.frame()).pixel(START);
  bench.check('painter: the map stays where it was when the row of the zone comes', Math.hypot(now[0] - start[0], now[1] - start[1]) < 3, `${start} and ${now}`);
  bench.check('painter: what is painted stands in the profile without a plan', before === 0 && (await barAt(page, 3, length)) > 0);
  await sheet.after(() => page.keyboard.type('4'));
  await sheet.tool('Paint');
  bench.check('painter: while a new zone is painted none is picked', (await page.getByLabel('Picked zone', { exact: true }).inputValue()) === '' && !(await page.getByRole('textbox', { name: 'Widest gap expected' }).isVisible()));
  await from.fill('5.8');
  await to.fill('6.6');
  await sheet.after(() => to.press('Enter'));
  bench.check('painter: a zone without a gap takes no other from the profile', (await barAt(page, 3, length)) > 0 && (await barAt(page, 6, length)) > 0);
  for (const [width, height] of [[768, 800], [640, 800], [1024, 700]]) {
    await page.setViewportSize({ width, height });
    const map = await page.locator('.map-stage').boundingBox();
    bench.check(`painter: at ${width} × ${height} the map has ${Math.round((100 * map.height) / height)} % of the height beside the gap`, map.height >= 0.45 * height);
  }
  await page.setViewportSize({ width: 1280, height: 800 });
  await page.locator('.map-ground').focus();
  await page.keyboard.press('Escape');
  const box = await page.locator('.map-stage').boundingBox();
  const at = (x, y) => [box.x + x * box.width, box.y + y * box.height];
  for (let i = 0; i < 4; i++) await sheet.drag(at(0.15, 0.8), at(0.85, 0.3));
  await page.waitForTimeout(300);
  const seen = await sheet.frame().then(({ pixel }) => pixel(START));
  bench.check('painter: a map that is dragged away keeps some of the route in sight', seen[0] > box.x && seen[0] < box.x + box.width && seen[1] > box.y && seen[1] < box.y + box.height, seen.join());
  await bench.close('painter', sheet);
}

export async function paintsByDrags(bench) {
  const sheet = await bench.open(await bench.drawn('drags', []), { plans: false });
  const { page } = sheet;
  await sheet.after(() => page.locator('input[type=file]').setInputFiles(bench.given('route.gpx')));
  await page.waitForSelector('.map-ground canvas');
  await sheet.tool('Paint');
  const points = [...readFileSync(bench.given('route.gpx'), 'utf8').matchAll(/<trkpt lat="([^"]+)" lon="([^"]+)"/g)].map(([, lat, lon]) => [Number(lon), Number(lat)]);
  const [first, last] = [0.3, 0.4].map((share) => points[Math.round(share * points.length)]);
  const { pixel } = await sheet.frame();
  await sheet.drag(pixel(first), pixel(last));
  const typed = await page.locator('.map-fields input').evaluateAll((all) => all.map((one) => Number(one.value)));
  bench.check('drags: along the route on the map a stretch is painted', typed[0] > 3 && typed[1] > typed[0] && typed[1] < 9, typed.join());
  const now = (await sheet.frame()).pixel(first);
  bench.check('drags: the map stays where it is meanwhile', Math.hypot(now[0] - pixel(first)[0], now[1] - pixel(first)[1]) < 1, `${pixel(first)} and ${now}`);
  await sheet.after(() => sheet.button('Done').click());
  await sheet.after(() => page.keyboard.type('4'));
  await sheet.tool('Paint');
  const strip = await page.locator('.profile-strip').boundingBox();
  const on = (share) => [strip.x + share * strip.width, strip.y + strip.height / 2];
  await sheet.drag(on(0.6), on(0.7));
  await sheet.after(() => page.keyboard.press('Enter'));
  const rings = (await sheet.zones()).map(({ geometry }) => geometry.coordinates.length);
  bench.check('drags: over the profile too, and the enter key finishes it', rings.join() === '1,1', rings.join());
  await bench.close('drags', sheet);
}
