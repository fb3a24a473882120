// From the example: everything that can be drawn, undone and done again; what is saved is planned natively.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inventory, ring } from './draw-bench.mjs';

// Where the invented ice lies: beside the route, free of zones.
const ICE = [2.19, 66.512];
const spots = ({ geometry }) => geometry.coordinates[0].slice(0, -1).map(String);

async function typedGap(bench, sheet) {
  await sheet.choose('Halbre plateau');
  await sheet.type('Widest gap expected', '6,5');
  await sheet.tab('Plan');
  const marks = await sheet.page.locator('.app-legs ins').count();
  bench.check(`example: a gap is typed, ${marks} marks say what it changed`, marks > 0);
  const zone = (await sheet.zones())[1];
  bench.check('example: the typed gap stands in the zones file', zone.properties.gap_m === 6.5, JSON.stringify(zone.properties));
}

async function draggedVertex(bench, sheet) {
  const before = (await sheet.zones())[1];
  const [x, y] = (await sheet.frame()).pixel(before.geometry.coordinates[0][0]);
  await sheet.after(() => sheet.drag([x, y], [x - 40, y + 24]));
  const after = (await sheet.zones())[1];
  const [old, now] = [spots(before), spots(after)];
  bench.check('example: a vertex is dragged, and no other moves', old.length === now.length && old.filter((spot) => !now.includes(spot)).length === 1 && after.geometry.coordinates[0][0].join() === after.geometry.coordinates[0].at(-1).join(), `${old.filter((spot) => !now.includes(spot)).length} moved`);
}

async function turnedNeedle(bench, sheet) {
  await sheet.choose('Tornfall icefall');
  await sheet.tool('Direction');
  const [handle, needle] = await Promise.all(['.needle-handle', '.needle'].map((one) => sheet.page.locator(one).first().boundingBox()));
  const [x, y] = [needle.x + needle.width / 2, needle.y + needle.height / 2];
  await sheet.after(() => sheet.drag([handle.x + handle.width / 2, handle.y + handle.height / 2], [x + 80, y]));
  const { strike_deg } = (await sheet.zones())[2].properties;
  bench.check('example: a needle turned to the east says 90 degrees', strike_deg === 90, String(strike_deg));
  await sheet.tool('Pick');
}

async function painted(bench, sheet) {
  const before = await sheet.zones();
  await sheet.tool('Paint');
  const strip = await sheet.page.locator('.profile-strip').boundingBox();
  const at = (part) => [strip.x + part * strip.width, strip.y + strip.height / 2];
  await sheet.drag(at(0.62), at(0.68));
  const [from, to] = await sheet.page.locator('.map-fields input').evaluateAll((all) => all.map((one) => Number(one.value)));
  await sheet.after(() => sheet.button('Done').click());
  const zone = (await sheet.zones()).slice(before.length);
  bench.check(`example: painted from km ${from} to km ${to}`, zone.length === 1 && zone[0].geometry.type === 'Polygon' && from > 0 && to > from);
  await sheet.tab('Zone');
  const says = await sheet.page.locator('.app-zone-faults').innerText();
  bench.check('example: a zone without a gap is told so, and none is guessed', says.includes('gives no gap width') && !('gap_m' in zone[0].properties), says);
  await sheet.type('Widest gap expected', '8');
  await sheet.after(() => sheet.page.getByLabel('Name', { exact: true }).fill('Painted'));
  const { properties } = (await sheet.zones()).at(-1);
  bench.check('example: the painted zone has the gap and the name that were typed', properties.gap_m === 8 && properties.name === 'Painted', JSON.stringify(properties));
}

async function takenOutline(bench, sheet, outline) {
  await sheet.tool('Outline');
  await sheet.after(() => sheet.clicks(ICE));
  await sheet.type('Widest gap expected', '3');
  await sheet.after(() => sheet.page.getByLabel('Name', { exact: true }).fill('Taken'));
  const zone = (await sheet.zones()).at(-1);
  const same = spots(zone).sort().join(' ') === outline.slice(0, -1).map(String).sort().join(' ');
  bench.check(`example: an outline of ${outline.length - 1} spots is taken, to the last digit`, zone.properties.name === 'Taken' && same, JSON.stringify(zone.geometry).slice(0, 200));
}

async function madeHole(bench, sheet) {
  await sheet.choose('Taken');
  await sheet.tool('Hole');
  await sheet.clicks([ICE[0] - 0.008, ICE[1] - 0.002], [ICE[0] + 0.008, ICE[1] - 0.002], [ICE[0], ICE[1] + 0.0035]);
  await sheet.after(() => sheet.button('Done').click());
  const { geometry } = (await sheet.zones()).at(-1);
  bench.check('example: a hole is made', geometry.type === 'Polygon' && geometry.coordinates.length === 2 && geometry.coordinates[1].length === 4, JSON.stringify(geometry.coordinates[1]));
}

async function cutOff(bench, sheet) {
  const before = await sheet.zones();
  await sheet.choose('Sunnbre');
  await sheet.tool('Cut');
  await sheet.clicks([2.03, 66.5], [2.105, 66.5]);
  await sheet.after(() => sheet.button('Done').click());
  const after = await sheet.zones();
  const both = after.filter(({ properties }) => properties.name === 'Sunnbre');
  bench.check('example: a cut makes two of one, and both keep the properties', after.length === before.length + 1 && both.length === 2 && both.every(({ properties }) => properties.gap_m === 5), `${after.length} features`);
}

// Work is kept a moment after the last change: waited for where it is kept.
const keeps = (text) => new Promise((done) => {
  const asked = indexedDB.open('schrund', 1);
  asked.onsuccess = () => {
    const all = asked.result.transaction('work').objectStore('work').getAll();
    all.onsuccess = () => { asked.result.close(); done(all.result.some((work) => work.zones.text === text)); };
  };
});

export async function fromTheExample(bench) {
  const outline = ring(ICE, 0.02, 48);
  const glaciers = join(bench.folder('ice'), 'ice.geojson');
  writeFileSync(glaciers, inventory([outline]));
  const args = [...bench.exampleArgs, '--glaciers', glaciers];
  const sheet = await bench.open(await bench.drawn('example', args));
  const given = readFileSync(bench.given('zones.geojson'), 'utf8');
  await typedGap(bench, sheet);
  await draggedVertex(bench, sheet);
  await turnedNeedle(bench, sheet);
  await painted(bench, sheet);
  await takenOutline(bench, sheet, outline);
  await madeHole(bench, sheet);
  await cutOff(bench, sheet);
  const drawn = await sheet.zonesText();
  const back = await sheet.all('Undo');
  bench.check(`example: ${back} steps back, and the zones file is the given one byte for byte`, back >= 10 && (await sheet.zonesText()) === given);
  const plan = await sheet.save('For programs (JSON)');
  bench.check('example: undone, the plan is the native one of the given files', plan.equals(await bench.run(['plan', ...args, '--format', 'json', '-q'])));
  const forth = await sheet.all('Redo');
  bench.check(`example: ${forth} steps forth, and the zones file is as drawn`, forth === back && (await sheet.zonesText()) === drawn);
  const lines = given.split('\n').filter((line) => line.startsWith('  {')).map((line) => line.trim().replace(/,$/, ''));
  const touched = ['Halbre plateau', 'Tornfall icefall', 'Sunnbre'];
  const untouched = lines.filter((line) => !touched.some((name) => line.includes(`"${name}"`)));
  bench.check(`example: ${untouched.length} features that were not touched are saved verbatim`, untouched.length === 6 && untouched.every((line) => drawn.includes(line)));
  const set = await sheet.set();
  bench.check('example: zones and trip are the same alone and in the archive', set.get('zones.geojson')?.toString() === drawn && (await sheet.save('Trip file (TOML)')).equals(set.get('trip.toml')));
  await bench.plansTheSame('example', set, 'route.gpx');
  await sheet.page.waitForFunction(keeps, drawn, { timeout: 10_000, polling: 100 });
  await sheet.page.reload();
  await sheet.planned(1);
  bench.check('example: work survives a reload', (await sheet.zonesText()) === drawn);
  await bench.close('example', sheet);
}
