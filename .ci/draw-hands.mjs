// Drawing by fingers alone and by keys alone.

const live = (sheet) => sheet.page.locator('.map-live[role=status]').innerText();

// --- fingers ---

class Fingers {
  constructor(cdp) {
    this.cdp = cdp;
  }

  /** Fingers where they are now. */
  put(type, ...points) {
    return this.cdp.send('Input.dispatchTouchEvent', { type, touchPoints: points.map(([x, y], id) => ({ x, y, id })) });
  }

  async tap(point) {
    await this.put('touchStart', point);
    await this.put('touchEnd');
  }

  async drag([x, y], [toX, toY]) {
    await this.put('touchStart', [x, y]);
    for (let i = 1; i <= 6; i++) await this.put('touchMove', [x + ((toX - x) * i) / 6, y + ((toY - y) * i) / 6]);
    await this.put('touchEnd');
  }

  /** Two fingers that go apart about a place. */
  async pinch([x, y]) {
    const at = (far) => [[x - 20 - far, y - 15 - far], [x + 20 + far, y + 15 + far]];
    await this.put('touchStart', at(0)[0]);
    await this.put('touchStart', ...at(0));
    for (let far = 5; far <= 40; far += 5) await this.put('touchMove', ...at(far));
    await this.put('touchEnd', at(40)[1]);
    await this.put('touchEnd');
  }
}

/** Whether so many points are told of, sooner or later. */
const says = (sheet, count) => sheet.page.waitForFunction((text) => document.querySelector('.map-live[role=status]').textContent.startsWith(text), `point · ${count} ·`, { timeout: 5000 }).then(() => true, () => false);

/** Where on the screen a vertex of a ring can be had. */
async function seen(sheet, ring) {
  const { pixel } = await sheet.frame();
  const onMap = ([x, y]) => document.elementFromPoint(x + 10, y + 8)?.closest('.map-ground') != null;
  for (const place of ring) if (await sheet.page.evaluate(onMap, pixel(place))) return pixel(place);
  throw new Error('no vertex is in sight');
}

export async function byTouch(bench) {
  const sheet = await bench.open(await bench.drawn('touch', bench.exampleArgs), { width: 360, height: 740, touch: true });
  const fingers = new Fingers(await sheet.page.context().newCDPSession(sheet.page));
  await sheet.page.locator('.map-tools').getByRole('button', { name: 'Draw', exact: true }).tap();
  const box = await sheet.page.locator('.map-ground').boundingBox();
  const at = (x, y) => [Math.round(box.x + x * box.width), Math.round(box.y + y * box.height)];
  await fingers.tap(at(0.3, 0.3));
  bench.check('touch: a tap sets a point', await says(sheet, 1), await live(sheet));
  await fingers.tap(at(0.7, 0.32));
  bench.check('touch: the next tap sets the next point', await says(sheet, 2), await live(sheet));
  const before = (await sheet.frame()).per[0];
  await fingers.pinch(at(0.5, 0.45));
  const after = (await sheet.frame()).per[0];
  bench.check(`touch: two fingers scale the map, ${(after / before).toFixed(1)} times`, after > 1.3 * before);
  await fingers.tap(at(0.65, 0.55));
  bench.check('touch: two fingers do not draw: the next tap is the third point', await says(sheet, 3), await live(sheet));
  await sheet.after(() => sheet.button('Done').tap());
  const zones = await sheet.zones();
  const zone = zones.at(-1);
  bench.check('touch: a zone is drawn', zones.length === 10 && zone.geometry.type === 'Polygon', `${zones.length} features`);
  const [x, y] = await seen(sheet, zone.geometry.coordinates[0]);
  await sheet.after(() => fingers.drag([x + 10, y + 8], [x - 20, y + 30]));
  const moved = (await sheet.zones()).at(-1);
  bench.check('touch: a finger beside a vertex drags it', JSON.stringify(moved.geometry) !== JSON.stringify(zone.geometry) && moved.geometry.coordinates[0].length === zone.geometry.coordinates[0].length);
  const steps = await sheet.all('Undo');
  bench.check('touch: zone and drag are a step each', steps === 2, `${steps} steps`);
  const small = await sheet.page.evaluate(() => [...document.querySelectorAll('.zone-map button, [role=tab], .app-header button')]
    .filter((e) => e.offsetParent).map((e) => [e.textContent, e.getBoundingClientRect()])
    .filter(([, r]) => r.width < 43.9 || r.height < 43.9).map(([text, r]) => `${text} ${Math.round(r.width)}×${Math.round(r.height)}`));
  bench.check('touch: a glove hits every tool and every tab, 44 px', small.length === 0, small.join(', '));
  await bench.close('touch', sheet);
}

// --- keys ---

const isMap = () => document.activeElement.classList.contains('map-ground');

export async function byKeys(bench) {
  const sheet = await bench.open(await bench.drawn('keys', bench.exampleArgs));
  const { page } = sheet;
  const press = async (key, times = 1) => { for (let i = 0; i < times; i++) await page.keyboard.press(key); };
  const tabTo = async (is, most = 30) => {
    let steps = 0;
    while (steps < most && !(await page.evaluate(is))) {
      await press('Tab');
      steps += 1;
    }
    return steps < most;
  };
  // Reading takes the focus to the files and back: what is done is done by keys.
  const last = async () => {
    const zones = await sheet.zones();
    await page.locator('.map-ground').focus();
    return { count: zones.length, ring: zones.at(-1).geometry.coordinates[0] };
  };
  const focused = () => page.evaluate(() => document.activeElement.textContent);
  bench.check('keys: the bar of tools is one stop', await tabTo(() => document.activeElement.closest('.map-tools') !== null) && (await focused()) === 'Pick', await focused());
  const way = [];
  for (const key of ['ArrowLeft', 'ArrowRight', 'End', 'Home', 'ArrowRight']) {
    await press(key);
    way.push(await focused());
  }
  bench.check('keys: arrows go on inside the bar and round it', way.join() === 'Signs,Pick,Signs,Pick,Draw', way.join());
  const ring = await page.evaluate(() => getComputedStyle(document.activeElement).outlineStyle);
  bench.check('keys: the focus is seen', ring !== 'none', ring);
  await press('Enter');
  bench.check('keys: the map is reached', await tabTo(isMap));
  await press('Enter');
  await press('Shift+ArrowUp', 3);
  await press('Enter');
  await press('Shift+ArrowRight', 3);
  await press('Enter');
  await press('Shift+ArrowRight', 1);
  await press('Enter');
  await press('Backspace');
  bench.check('keys: the last point is taken back', (await live(sheet)).startsWith('point taken back · 2'), await live(sheet));
  await press('Shift+ArrowUp', 1);
  await press('Enter');
  bench.check('keys: what is done is told', (await live(sheet)).startsWith('point · 3 ·'), await live(sheet));
  await sheet.after(() => press('Enter'));
  const made = await last();
  bench.check('keys: a zone is drawn', made.count === 10 && made.ring.length >= 4, `${made.count} features`);
  await press('Tab');
  await sheet.after(() => press('ArrowRight', 5));
  const moved = await last();
  const changed = made.ring.slice(0, -1).filter((spot, i) => String(spot) !== String(moved.ring[i]));
  bench.check('keys: a vertex is moved, and no other', changed.length === 1 && moved.ring[0][0] > made.ring[0][0], `${changed.length} moved`);
  await sheet.after(() => press('Insert'));
  const more = await last();
  bench.check('keys: a vertex is put in', more.ring.length === moved.ring.length + 1);
  await sheet.after(() => press('Delete'));
  const fewer = await last();
  bench.check('keys: a vertex is deleted', JSON.stringify(fewer.ring) === JSON.stringify(moved.ring));
  await press('Tab', fewer.ring.length + 1);
  bench.check('keys: the map lets the focus go', !(await page.evaluate(isMap)));
  await page.locator('.map-ground').focus();
  await sheet.after(() => press('Delete'));
  bench.check('keys: the zone is deleted', (await last()).count === 9);
  await sheet.after(() => press('Control+z'));
  bench.check('keys: and is back by undo', (await last()).count === 10);
  await bench.close('keys', sheet);
}
