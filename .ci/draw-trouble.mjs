// When something goes wrong or is missing: a program that breaks off, files in other letters, no plan, no route, a step too far.
import { readFileSync } from 'node:fs';

/** Lets the page's worker be ended from outside, as a browser does that runs out of room. */
const mortal = () => {
  const Real = globalThis.Worker;
  let last;
  globalThis.Worker = class extends Real { constructor(url) { super(url); last = this; } };
  globalThis.breakOff = () => { last.terminate(); last.dispatchEvent(new ErrorEvent('error', { message: 'ended by the check' })); };
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
  const files = { 'UTF-16, low byte first': wide, 'UTF-16, high byte first': Buffer.from(wide).swap16(), 'ISO-8859-1 that says so': Buffer.from(says('ISO-8859-1'), 'latin1'), 'letters that nothing tells': Buffer.from(route, 'latin1') };
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
  await sheet.tab('Plan');
  bench.check('no plan: the panel says so', (await page.locator('.app-plan').innerText()).startsWith('No plan yet'));
  await sheet.type('Widest gap expected', '4');
  bench.check('no plan: with a gap they are as before', (await seen()).strong > 50);
  await bench.close('no plan', sheet);
}

export async function numbers(bench) {
  const sheet = await bench.open(await bench.drawn('numbers', bench.exampleArgs));
  const { page } = sheet;
  await sheet.choose('Halbre plateau');
  await sheet.type('Widest gap expected', '1,234');
  bench.check('numbers: 1,234 in English is not guessed', (await page.locator('.app-zone-faults').innerText()).includes('can mean'));
  await sheet.after(() => page.locator('.app-language').selectOption('de'));
  const field = page.locator('.app-zone input[inputmode=decimal]').first();
  for (const [typed, shown, kept] of [['6,5', '6,5', 6.5], ['7.25', '7,25', 7.25], ['1,234', '1,234', 1.234], ['1.234,5', '1.234,5', '1.234,5']]) {
    await sheet.after(() => field.fill(typed));
    await field.blur();
    const [download] = await Promise.all([page.waitForEvent('download'), page.evaluate(() => [...document.querySelectorAll('[data-save]')].find((one) => one.textContent === 'Zonen (GeoJSON)').click())]);
    const zone = JSON.parse(readFileSync(await download.path(), 'utf8')).features[1];
    bench.check(`numbers: ${typed} in German stands there as ${shown} and is kept as ${kept}`, (await field.inputValue()) === shown && zone.properties.gap_m === kept, `${await field.inputValue()} ${zone.properties.gap_m}`);
  }
  bench.check('numbers: 1.234,5 is refused', (await page.locator('.app-zone-faults .app-fault').count()) > 0);
  await bench.close('numbers', sheet);
}

export async function takesBack(bench) {
  const sheet = await bench.open(await bench.drawn('back', bench.exampleArgs));
  const { page } = sheet;
  const back = page.locator('.app-field-mode .app-wide');
  await sheet.tab('Field');
  await sheet.after(() => page.locator('.app-field-mode').getByRole('button', { name: '− Ben' }).click());
  await sheet.choose('Halbre plateau');
  await sheet.type('Widest gap expected', '7');
  await sheet.tab('Field');
  await page.getByLabel('Kilometre', { exact: true }).fill('6.2');
  await sheet.after(() => page.locator('.app-field-mode').getByRole('textbox', { name: 'Gap as seen' }).fill('25'));
  const says = await back.innerText();
  bench.check('on the ice: the way back says what it takes back', says.includes('Without Ben') && says.includes('25 m') && !says.includes('Halbre'), says);
  await sheet.after(() => back.click());
  const trip = (await sheet.save('Trip file (TOML)')).toString();
  const zones = await sheet.zones();
  const given = JSON.parse(readFileSync(bench.given('zones.geojson'), 'utf8')).features;
  bench.check('on the ice: what was done there is taken back, and nothing of another tab', trip.includes('Ben') && zones[1].properties.gap_m === 7 && JSON.stringify(zones[2]) === JSON.stringify(given[2]), `${trip} ${JSON.stringify(zones[2].properties)}`);
  await sheet.tab('Field');
  bench.check('on the ice: then there is no way back', !(await back.isVisible()));
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
