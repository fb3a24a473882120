// When something goes wrong or is missing: a program that breaks off, files in other letters, no plan, no route, a step too far.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Lets the page's workers be ended from outside, as a browser does that runs out of room: at once, or at every plan with a gap of 13 m. */
const mortal = () => {
  const Real = globalThis.Worker;
  const all = [];
  const end = (one) => { one.terminate(); one.dispatchEvent(new ErrorEvent('error', { message: 'ended by the check' })); };
  globalThis.Worker = class extends Real {
    constructor(url) { super(url); all.push(this); }
    postMessage(order) {
      super.postMessage(order);
      const deadly = (order.calls ?? []).some(({ args }) => args[1] === 'panel') && order.files.some(([, holds]) => String(holds).includes('"gap_m": 13'));
      if (deadly) setTimeout(() => end(this));
    }
  };
  globalThis.breakOff = () => end(all.at(-1));
  globalThis.breakOffLate = () => end(all[0]);
  globalThis.begun = () => all.length;
};

const alarm = (sheet) => sheet.page.locator('.app-alarm').innerText();
const gap = (sheet) => sheet.page.locator('.app-zone').getByRole('textbox', { name: 'Widest gap expected', exact: true });

export async function breaksOff(bench) {
  const sheet = await bench.open(await bench.drawn('broken', bench.exampleArgs), { before: mortal });
  const { page } = sheet;
  await sheet.after(() => page.evaluate(() => globalThis.breakOff()));
  bench.check('a program that breaks off: another one is begun and plans', (await alarm(sheet)).includes('started anew') && (await page.locator('.app-leg').count()) > 5, await alarm(sheet));
  await sheet.choose('Halbre plateau');
  await sheet.type('Widest gap expected', '7');
  bench.check('a program that breaks off: with the next change nothing of it is said any more', (await alarm(sheet)) === '');
  await page.evaluate(() => globalThis.breakOffLate());
  bench.check('a program that breaks off: what comes of it later is nothing any more', (await alarm(sheet)) === '' && (await page.evaluate(() => globalThis.begun())) === 2, await alarm(sheet));
  await page.evaluate(() => { globalThis.breakOff(); globalThis.breakOff(); });
  bench.check('a program that breaks off twice: the page says so, and that the work is kept', (await alarm(sheet)).includes('The work is kept'), await alarm(sheet));
  await sheet.tab('Trip');
  await sheet.button('Ways to split the party and use the ropes').click();
  await page.getByText('so nothing came of this').first().waitFor({ timeout: 5000 });
  const zones = await sheet.zones();
  bench.check('a program that breaks off twice: zones can still be saved', zones[1].properties.gap_m === 7);
  await sheet.tab('Files');
  await sheet.button('For programs (JSON)').click();
  await page.locator('.app-saved').getByText('so nothing came of this').waitFor({ timeout: 5000 });
  await page.waitForTimeout(500); // work is kept a moment after the last change
  await sheet.button('Load the page anew').click();
  await page.waitForSelector('body[data-planned]');
  bench.check('a program that broke off twice: loaded anew, the work is there', (await sheet.zones())[1].properties.gap_m === 7);
  await bench.close('a program that breaks off', sheet);
}

export async function breaksOffAtOnePlan(bench) {
  const sheet = await bench.open(await bench.drawn('deadly', bench.exampleArgs), { before: mortal });
  const { page } = sheet;
  await sheet.choose('Halbre plateau');
  await gap(sheet).fill('13');
  await page.locator('.app-alarm').getByText('The work is kept').waitFor({ timeout: 5000 }).catch(() => {});
  await page.waitForTimeout(500); // who begins another one for ever has begun several by now
  const begun = await page.evaluate(() => globalThis.begun());
  bench.check('a plan that the program breaks off in: it is tried twice, and no more', begun === 2 && (await alarm(sheet)).includes('The work is kept'), `${begun} begun, ${await alarm(sheet)}`);
  await bench.close('a plan that the program breaks off in', sheet);
}

/** What a page says of a file that is dropped on it. */
async function dropped(sheet, name, bytes) {
  await sheet.page.evaluate(() => document.querySelector('.app-came').replaceChildren());
  await sheet.drop([name, bytes]);
  await sheet.page.waitForFunction(() => document.querySelector('.app-came').textContent !== '');
  return sheet.page.locator('.app-came').innerText();
}

export async function otherLetters(bench) {
  const sheet = await bench.open(await bench.drawn('letters', bench.exampleArgs));
  for (const text of ['{"type":"anything"}', '{"a":1}', '[1,2]', '{"type":"Topology","objects":{}}', '{"type":"FeatureCollection","features":[7]}']) {
    const says = await dropped(sheet, 'other.geojson', text);
    bench.check(`other files: ${text} is no zones`, says.includes('cannot be used') && says.includes('bad-geojson'), says);
  }
  const route = readFileSync(bench.given('route.gpx'), 'utf8').replace(/^<\?xml.*?\?>\s*/, '').replace(/(<trk>\s*<name>)[^<]*/, '$1Über den Grünfirn');
  const says = (label) => `<?xml version="1.0" encoding="${label}"?>\n${route}`;
  const wide = Buffer.from(`\ufeff${says('UTF-16')}`, 'utf16le');
  const files = { 'UTF-16, low byte first': wide, 'UTF-16, high byte first': Buffer.from(wide).swap16(), 'ISO-8859-1 that says so': Buffer.from(says('ISO-8859-1'), 'latin1'), 'ISO-8859-1 that says so behind white space': Buffer.from('\n \t'.repeat(80) + says('ISO-8859-1'), 'latin1'), 'letters that nothing tells': Buffer.from(route, 'latin1') };
  for (const [what, bytes] of Object.entries(files)) {
    let told = '';
    await sheet.after(async () => { told = await dropped(sheet, 'letters.gpx', bytes); });
    const plan = (await sheet.save('For programs (JSON)')).toString();
    bench.check(`other files: a route in ${what} keeps its name`, plan.includes('Über den Grünfirn'), told);
    bench.check(`other files: a route in ${what} is ${what.includes('nothing') ? '' : 'not '}told to be guessed`, told.includes('names may be wrong') === what.includes('nothing'), told);
  }
  await bench.close('other files', sheet);
}

/** Pixels of the ink on the map in the colour of legs to look at: strong ones and pale ones. */
const orange = () => {
  const canvas = document.querySelector('canvas.map-ink');
  const copy = new OffscreenCanvas(canvas.width, canvas.height).getContext('2d', { willReadFrequently: true });
  copy.drawImage(canvas, 0, 0);
  const { data } = copy.getImageData(0, 0, canvas.width, canvas.height);
  const found = { strong: 0, pale: 0 };
  for (let at = 0; at < data.length; at += 4) {
    const more = data[at] - data[at + 2];
    if (data[at + 3] > 100 && more > 25) found[more > 100 ? 'strong' : 'pale'] += 1;
  }
  return found;
};

export async function noPlan(bench) {
  const sheet = await bench.open(await bench.drawn('refused', bench.exampleArgs));
  const { page } = sheet;
  const seen = async () => { await page.waitForTimeout(300); return page.evaluate(orange); };
  const planned = await seen();
  await sheet.choose('Halbre plateau');
  await sheet.type('Widest gap expected', '');
  const refused = await seen();
  bench.check(`no plan: the legs of before stay on the map, pale (${JSON.stringify(planned)}, then ${JSON.stringify(refused)})`, planned.strong > 50 && refused.strong === 0 && refused.pale > 50);
  await sheet.after(() => sheet.drop(bench.given('terrain.tif')));
  const laid = await seen();
  bench.check(`no plan: on a terrain model that is opened they stay (${JSON.stringify(laid)})`, laid.strong === 0 && laid.pale > 50);
  await sheet.tab('Plan');
  bench.check('no plan: the panel says so', (await page.locator('.app-plan').innerText()).startsWith('As it stands there is no plan'));
  await sheet.type('Widest gap expected', '4');
  bench.check('no plan: with a gap they are as before', (await seen()).strong > 50);
  await bench.close('no plan', sheet);
}

/** The route of the example as far as km 5, 2 km farther north and 1000 m higher: what the trip says of km 6.6 cannot be planned on it. */
function otherRoute(bench) {
  const parts = readFileSync(bench.given('route.gpx'), 'utf8').split(/(?=<trkpt)/);
  const moved = parts.slice(1, 121).map((spot) => spot.replace(/lat="([^"]+)"/, (_, lat) => `lat="${(Number(lat) + 0.02).toFixed(6)}"`).replace(/<ele>([^<]+)/, (_, height) => `<ele>${Number(height) + 1000}`));
  return Buffer.from(`${parts[0]}${moved.join('')}</trkseg></trk></gpx>`);
}

export async function anotherRoute(bench) {
  const sheet = await bench.open(await bench.drawn('another', bench.exampleArgs));
  const { page } = sheet;
  const strip = page.locator('.profile-strip');
  const height = async () => { await strip.focus(); await page.keyboard.press('Home'); return strip.getAttribute('aria-valuetext'); };
  const before = [await height(), await page.evaluate(orange)];
  await page.locator('.map-ground').evaluate((map) => map.setAttribute('data-of-before', ''));
  await sheet.after(() => sheet.drop(['other.gpx', otherRoute(bench)]));
  await page.waitForSelector('.map-ground:not([data-of-before]) canvas');
  await page.waitForTimeout(300);
  await sheet.tab('Plan');
  const says = await page.locator('.app-plan').innerText();
  const after = [await height(), await page.evaluate(orange)];
  const told = JSON.stringify([before, after]);
  bench.check('another route: there is no plan of it', says.startsWith('As it stands there is no plan') && (await page.locator('.app-stale').count()) === 0, says);
  bench.check(`another route: no leg of the old one lies there (${told})`, before[1].strong > 50 && after[1].strong + after[1].pale < 20);
  bench.check('another route: the profile has its heights', /\b17\d\d m/.test(after[0]) && !/\b17\d\d m/.test(before[0]), told);
  await sheet.after(() => sheet.button('Undo').first().click());
  await page.waitForTimeout(300);
  const back = [await height(), await page.evaluate(orange)];
  bench.check('another route: back on the old one its legs are there again', JSON.stringify(back) === JSON.stringify(before), JSON.stringify([before, back]));
  await bench.close('another route', sheet);
}

/** Notices whose zones are others: the same file once more. */
export async function sameFileAgain(bench) {
  const zones = join(bench.folder('again'), 'zones.geojson');
  writeFileSync(zones, readFileSync(bench.given('zones.geojson'), 'utf8').replace(/"gap_min_m"/, '"gap_with_m": 3, "gap_min_m"'));
  const [route, , ...trip] = bench.exampleArgs;
  const sheet = await bench.open(await bench.drawn('again', [route, zones, ...trip]));
  const { page } = sheet;
  await sheet.tab('Plan');
  await page.locator('.app-plan details > summary').last().click();
  const way = page.locator('.app-plan .app-faults button').first();
  const name = await way.innerText();
  await sheet.after(() => sheet.drop(zones));
  await sheet.tab('Plan');
  await way.click();
  const picked = await page.getByLabel('Picked zone', { exact: true }).locator('option:checked').innerText();
  bench.check(`the same file again: a notice still leads to ${name}`, picked.length > 3 && name.includes(picked), picked);
  await bench.close('the same file again', sheet);
}

export async function numbers(bench) {
  const sheet = await bench.open(await bench.drawn('numbers', bench.exampleArgs));
  const { page } = sheet;
  await sheet.choose('Halbre plateau');
  await sheet.type('Widest gap expected', '1,234');
  bench.check('numbers: 1,234 in English is not guessed', (await page.locator('.app-zone-faults').innerText()).includes('can mean'));
  await sheet.after(() => page.locator('.app-language').selectOption('de'));
  const field = page.locator('.app-zone input[inputmode=decimal]').first();
  for (const [typed, shown, kept] of [['6,5', '6,5', 6.5], ['7.25', '7,25', 7.25], ['1,234', '1,234', 1.234], ['0.750', '0,75', 0.75], ['2.750', '2,750', '2,750'], ['1.234,5', '1.234,5', '1.234,5']]) {
    await sheet.after(() => field.fill(typed));
    await field.blur();
    const [download] = await Promise.all([page.waitForEvent('download'), page.evaluate(() => [...document.querySelectorAll('[data-save]')].find((one) => one.textContent === 'Zonen (GeoJSON)').click())]);
    const zone = JSON.parse(readFileSync(await download.path(), 'utf8')).features[1];
    bench.check(`numbers: ${typed} in German stands there as ${shown} and is kept as ${kept}`, (await field.inputValue()) === shown && zone.properties.gap_m === kept, `${await field.inputValue()} ${zone.properties.gap_m}`);
    const faults = await page.locator('.app-zone-faults').innerText();
    if (typed === '2.750') bench.check('numbers: 2.750 in German is not guessed', faults.includes('2.75') && faults.includes('2750'), faults);
  }
  bench.check('numbers: 1.234,5 is refused', (await page.locator('.app-zone-faults .app-fault').count()) > 0);
  await bench.close('numbers', sheet);
}

export async function takesBack(bench) {
  const sheet = await bench.open(await bench.drawn('back', bench.exampleArgs));
  const { page } = sheet;
  const back = page.locator('.app-field-mode .app-wide');
  await sheet.tab('Field');
  const press = (name) => sheet.after(() => page.locator('.app-field-mode').getByRole('button', { name, exact: true }).click());
  for (const name of ['− Ben', '+ Ben']) await press(name);
  bench.check('on the ice: who was left out comes back in from the same place, and nothing is left to take back', !(await back.isVisible()));
  await press('− Ben');
  await sheet.choose('Halbre plateau');
  await sheet.type('Widest gap expected', '7');
  await sheet.tab('Field');
  await page.getByLabel('Kilometre', { exact: true }).fill('6.2');
  await sheet.after(() => page.locator('.app-field-mode').getByRole('textbox', { name: 'Gap here' }).fill('24'));
  await press('Gap here +1 m');
  const pinned = await page.locator('.app-pinned').evaluate((all) => all.offsetHeight);
  bench.check('on the ice: no slider, and a quarter of the screen at most stays in sight', (await page.locator('.app-field-mode [type=range]').count()) === 0 && pinned <= 200, `${pinned} px`);
  const says = await back.innerText();
  bench.check('on the ice: the way back says what it takes back, the last act alone', !says.includes('Ben') && says.includes('25 m') && !says.includes('Halbre'), says);
  for (const step of ['Undo', 'Undo', 'Redo', 'Redo']) await sheet.after(() => sheet.button(step).first().click());
  bench.check('on the ice: two steps back and forth, and the way back is as before', (await back.innerText()) === says, await back.innerText());
  await sheet.after(() => back.click());
  bench.check('on the ice: the last act taken back, the one before is next', (await back.innerText()) === 'Undo: Without Ben', await back.innerText());
  await sheet.after(() => back.click());
  const trip = (await sheet.save('Trip file (TOML)')).toString();
  const zones = await sheet.zones();
  const given = JSON.parse(readFileSync(bench.given('zones.geojson'), 'utf8')).features;
  bench.check('on the ice: what was done there is taken back, and nothing of another tab', trip.includes('Ben') && zones[1].properties.gap_m === 7 && JSON.stringify(zones[2]) === JSON.stringify(given[2]), `${trip} ${JSON.stringify(zones[2].properties)}`);
  await sheet.tab('Field');
  bench.check('on the ice: then there is no way back', !(await back.isVisible()));
  for (const step of ['Undo', 'Undo']) await sheet.after(() => sheet.button(step).first().click());
  bench.check('on the ice: two steps back, and there is again', (await back.innerText()) === says, await back.innerText());
  await bench.close('on the ice', sheet);
}

export async function firstSteps(bench) {
  for (const [width, height] of [[360, 740], [1280, 800]]) {
    const sheet = await bench.open(await bench.drawn('first', []), { width, height, plans: false });
    const { page } = sheet;
    bench.check(`no route at ${width} px: three steps are there`, (await page.locator('.app-steps li').count()) === 3 && (await page.locator('.app-steps').isVisible()));
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.locator('.app-start').getByRole('button', { name: 'Open files' }).click()]);
    await sheet.after(() => chooser.setFiles(bench.given('route.gpx')));
    await page.waitForSelector('.map-ground canvas');
    bench.check(`no route at ${width} px: after the route the map is there for the ice`, (await page.locator('.map-ground').isVisible()) && (await page.locator('.app-start').count()) === 0);
    await bench.close(`no route at ${width} px`, sheet);
  }
}
