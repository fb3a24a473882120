// Files: what was saved is opened again, archives of others and broken ones; and the first steps, in which nothing shouts.
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { deflateRawSync } from 'node:zlib';
import { unzipped } from './draw-bench.mjs';

/** CRC-32, as archives have it. */
function checksum(bytes) {
  let sum = ~0;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? 0xedb88320 ^ (sum >>> 1) : sum >>> 1;
  }
  return ~sum >>> 0;
}

/** An archive of files by their names. What its directory says of all of them can be another thing than what is in it. */
function zipped(files, says = {}) {
  const [parts, directory] = [[], []];
  let at = 0;
  for (const [name, holds] of Object.entries(files)) {
    const [bytes, path] = [Buffer.from(holds), Buffer.from(name)];
    const packed = deflateRawSync(bytes);
    const head = Buffer.alloc(26);
    head.writeUInt16LE(20, 0);
    head.writeUInt16LE(says.flags ?? 0x800, 2);
    head.writeUInt16LE(says.method ?? 8, 4);
    [checksum(bytes), packed.length, says.size ?? bytes.length].forEach((value, i) => head.writeUInt32LE(value, 10 + 4 * i));
    head.writeUInt16LE(path.length, 22);
    parts.push(Buffer.from('PK\x03\x04'), head, path, packed);
    const place = Buffer.alloc(14);
    place.writeUInt32LE(at, 10);
    directory.push(Buffer.from('PK\x01\x02\x14\x00'), head, place, path);
    at += 30 + path.length + packed.length;
  }
  const list = Buffer.concat(directory);
  const end = Buffer.alloc(18);
  const count = Object.keys(files).length;
  [count, count].forEach((value, i) => end.writeUInt16LE(value, 4 + 2 * i));
  end.writeUInt32LE(list.length, 8);
  end.writeUInt32LE(at, 12);
  return Buffer.concat([...parts, list, Buffer.from('PK\x05\x06'), end]);
}

/** What a page says of files that are dropped on it. */
async function told(sheet, ...files) {
  await sheet.page.evaluate(() => document.querySelector('.app-came').replaceChildren());
  await sheet.drop(...files);
  await sheet.page.waitForFunction(() => document.querySelector('.app-came').textContent !== '');
  return sheet.page.locator('.app-came').innerText();
}

/** The plan, the trip and the zones of a page, as it saves them. */
async function state(sheet) {
  const names = ['For programs (JSON)', 'Trip file (TOML)', 'Zones (GeoJSON)'];
  const saved = [];
  for (const name of names) saved.push((await sheet.save(name)).toString());
  return saved;
}

export async function opensAgain(bench) {
  const sheet = await bench.open(await bench.drawn('again', bench.exampleArgs));
  await sheet.choose('Halbre plateau');
  await sheet.type('Widest gap expected', '7');
  const before = await state(sheet);
  const [set, page] = [await sheet.save('Save everything (.zip)'), await sheet.save('Save this page (.html)')];
  await bench.close('saved', sheet);
  const empty = await bench.open(await bench.drawn('empty', []), { plans: false });
  const inside = Object.fromEntries([...unzipped(set)].flatMap(([name, bytes]) => [[`My trip/${name}`, bytes], [`__MACOSX/My trip/._${basename(name)}`, 'x']]));
  const ways = { 'the set that was saved': ['set.zip', set], 'the set in a folder, packed by others': ['other.zip', zipped(inside)], 'the page that was saved': ['page.html', page] };
  for (const [what, file] of Object.entries(ways)) {
    await empty.after(() => empty.drop(file));
    await empty.page.waitForFunction(() => document.body.dataset.tab === 'plan' && document.querySelector('.app-leg'));
    const after = await state(empty);
    bench.check(`opened again: ${what} gives the same plan, trip and zones, byte for byte`, after.every((text, i) => text === before[i] && text.length > 100), after.map((text, i) => text === before[i]).join());
    await empty.button('Undo').first().click();
    bench.check(`opened again: ${what} is one step, which can be undone`, (await empty.page.locator('.app-lying > li').count()) === 0 && (await empty.button('Undo').first().isDisabled()));
    await empty.tab('Files');
  }
  await empty.after(() => empty.drop(ways['the set that was saved']));
  await empty.page.waitForFunction(() => document.querySelector('.app-leg'));
  const twice = await empty.save('Save everything (.zip)');
  bench.check('opened again: saved once more it is the same set, byte for byte', twice.equals(set), `${twice.length} and ${set.length} bytes`);
  await bench.close('opened again', empty);
}

export async function otherArchives(bench) {
  const sheet = await bench.open(await bench.drawn('archives', []), { plans: false });
  const given = (name) => readFileSync(bench.given(name));
  const theirs = zipped({ 'tour/line.gpx': given('route.gpx'), 'tour/ground/model.tif': given('terrain.tif'), 'ice.geojson': given('zones.geojson'), 'photo.jpg': 'x' });
  await sheet.after(() => sheet.drop(['theirs.zip', theirs]));
  await sheet.page.waitForFunction(() => document.querySelector('.app-came').textContent !== '');
  const lies = await sheet.page.locator('.app-lying').innerText();
  bench.check('archives: of others, a line, a model and zones are opened as if they came alone', ['route: line.gpx', 'zones: ice.geojson', 'terrain model: model.tif'].every((line) => lies.includes(line)), lies);
  const whole = zipped({ 'line.gpx': given('route.gpx') });
  const wrong = Buffer.from(whole).fill(0x55, 60, 300);
  const nothing = Buffer.alloc(50e6);
  const broken = 'broken or packed in a way';
  const bad = [
    ['that is cut off', whole.subarray(0, whole.length - 30), broken], ['whose bytes are others', wrong, broken], ['packed otherwise', zipped({ 'a.gpx': 'x' }, { method: 12 }), broken],
    ['with a password', zipped({ 'a.gpx': 'x' }, { flags: 1 }), 'password'], ['of pictures', zipped({ 'a.jpg': 'x' }), 'nothing that this page opens'], ['of nothing', zipped({}), 'nothing that this page opens'],
    ['of 201 files', zipped(Object.fromEntries(Array.from({ length: 201 }, (_, i) => [`${i}.gpx`, 'x']))), 'more than this page unpacks'],
    ['that says it is huge', zipped({ 'a.tif': 'x' }, { size: 4e9 }), 'more than this page unpacks'], ['that is larger than it says', zipped({ 'a.tif': nothing }, { size: 1000 }), broken],
  ];
  for (const [what, bytes, says] of bad) {
    const text = await told(sheet, ['bad.zip', bytes]);
    bench.check(`archives: one ${what} is told to be so`, text.includes('cannot be used') && text.includes(says), text);
  }
  const lied = await sheet.page.locator('.app-lying').innerText();
  bench.check('archives: what cannot be used changes nothing', lied === lies, lied);
  const set = [...(await sheet.set()).keys()].sort().join();
  const lacks = await sheet.page.locator('.app-saved').innerText();
  bench.check('archives: where there is no plan yet all that was given is saved, and why there is none is told', set === 'draw.html,ice.geojson,line.gpx,model.tif,trip.toml' && lacks.includes('nobody said how many go') && lacks.includes('add everybody who goes under Trip') && !lacks.includes('--'), `${set} ${lacks}`);
  const own = zipped({ 'line.gpx': given('route.gpx'), 'zones.geojson': given('zones.geojson'), 'ice/ice.geojson': given('zones.geojson'), 'own.toml': await bench.run(['practice', 'arm-span', '--toml']), 'trip.toml': 'practice = "own.toml"\nglaciers = "ice/ice.geojson"\nparty = 3\n', 'plan/map.geojson': given('zones.geojson') });
  await sheet.after(() => sheet.drop(['own.zip', own]));
  await sheet.page.waitForFunction(() => document.body.dataset.tab === 'plan' && document.querySelector('.app-leg'));
  await sheet.tab('Files');
  const named = await sheet.page.locator('.app-lying').innerText();
  bench.check('archives: what the trip names is what it is called there, and all of before made room', named.split('\n').filter(Boolean).sort().join() === 'file: own.toml,glacier inventory: ice.geojson,route: line.gpx,trip: trip.toml,zones: zones.geojson', named);
  await bench.close('archives', sheet);
}

/** Nothing shouts before the first plan; where the keys are, and what Save offers. */
export async function calmSteps(bench) {
  const sheet = await bench.open(await bench.drawn('calm', []), { plans: false });
  const { page } = sheet;
  const alarms = async () => { await sheet.tab('Plan'); return page.locator('.app-fault:not(.app-needed), .app-effect:visible').allInnerTexts(); };
  const focus = (...names) => page.evaluate(() => document.activeElement.labels?.[0]?.textContent ?? document.activeElement.textContent).then((name) => names.includes(name) ? '' : name);
  const found = [];
  const step = async (what, act) => { await sheet.after(act); const shouts = await alarms(); if (shouts.length > 0) found.push(`${what}: ${shouts}`); };
  await step('route', () => page.locator('input[type=file]').setInputFiles(bench.given('route.gpx')));
  await page.waitForSelector('.map-ground canvas');
  await sheet.tool('Paint');
  for (const [i, km] of [[0, '2,5'], [1, '4']]) await page.locator('.map-fields input').nth(i).fill(km);
  await sheet.after(() => sheet.button('Done').click());
  bench.check('first steps: a painted zone is asked for its gap, with the keys in the field', !(await focus('Widest gap expected')), await focus());
  await sheet.after(() => page.keyboard.type('4'));
  await page.keyboard.press('Enter');
  bench.check('first steps: the enter key goes on to the next field', !(await focus('Snow on the ice')), await focus());
  await page.locator('.app-zone').getByRole('button', { name: '→ Party and ropes' }).click();
  for (const name of ['Ada', 'Ben']) {
    await sheet.tab('Trip');
    await step('one more person', () => sheet.button('Add a person').click());
    await sheet.tab('Trip');
    await page.locator('.app-trip .app-row').last().locator('input').first().focus();
    await step(name, () => page.keyboard.type(name));
  }
  await sheet.tab('Trip');
  await page.locator('.app-trip .app-row').last().locator('input').first().focus();
  for (const key of ['Enter', 'Enter']) await page.keyboard.press(key);
  bench.check('first steps: from the last field of a person the enter key goes on to one more', !(await focus('Add a person')), await focus());
  await sheet.button('Add a rope').click();
  const planned = await sheet.count();
  await sheet.after(() => page.keyboard.type('60', { delay: 250 }));
  bench.check('first steps: the first rope is planned with once its length is typed out', (await sheet.count()) === planned + 1);
  if ((await alarms()).length > 0) found.push(`rope: ${await alarms()}`);
  bench.check('first steps: nothing shouts before there is a plan, nor what came of the first trip', found.length === 0, found.join(' | '));
  const plan = JSON.parse((await sheet.save('For programs (JSON)')).toString());
  const title = await page.locator('.app-h1').innerText();
  bench.check(`first steps: the page is called as the plan is (${title})`, title.length > 3 && JSON.stringify(plan).includes(`"${title}"`));
  await page.locator('.app-header').getByRole('button', { name: 'Save' }).click();
  bench.check('first steps: Save shows what can be saved, with the keys on all of it', !(await focus('Save everything (.zip)')), await focus());
  await bench.close('first steps', sheet);
}
