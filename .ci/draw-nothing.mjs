// From nothing: a page without a route, a line and a model dropped on it, two zones painted, three people and a rope named.
import { readFileSync } from 'node:fs';

const STEPS = [];

async function paint(sheet, from, to, gap) {
  await sheet.tool('Paint');
  const fields = sheet.page.locator('.map-fields input');
  await fields.nth(0).fill(from);
  await fields.nth(1).fill(to);
  await sheet.after(() => sheet.button('Done').click());
  await sheet.type('Widest gap expected', gap);
}

async function name(sheet, people, rope) {
  await sheet.tab('Trip');
  for (const person of people) {
    await sheet.button('Add a person').click();
    await sheet.page.keyboard.type(person);
  }
  await sheet.button('Add a rope').click();
  await sheet.after(() => sheet.page.keyboard.type(rope));
}

export async function fromNothing(bench) {
  const sheet = await bench.open(await bench.drawn('nothing', []), { plans: false });
  const start = Date.now();
  const step = async (says, act) => {
    await act();
    STEPS.push(says);
  };
  await step('Files: open the route', () => sheet.after(() => sheet.page.locator('input[type=file]').setInputFiles(bench.given('route.gpx'))));
  await sheet.page.waitForSelector('.map-ground canvas');
  await sheet.tab('Plan');
  const says = await sheet.page.locator('.app-plan').innerText();
  bench.check('nothing: with a route alone the program says what is missing', says.trim().length > 10 && (await sheet.page.locator('.app-leg').count()) === 0, says);
  await step('drop the terrain model on the page', () => sheet.after(() => sheet.drop(bench.given('terrain.tif'))));
  await step('Trip: one more person, three times, with their names; one more rope, 60 m', () => name(sheet, ['Ada', 'Ben', 'Cleo'], '60'));
  await step('Paint: from km 2.5 to 4, Done, gap 4', () => paint(sheet, '2,5', '4', '4'));
  await step('Paint: from km 6.6 to 8.2, Done, gap 12', () => paint(sheet, '6,6', '8,2', '12'));
  await sheet.tab('Plan');
  const roped = await sheet.page.locator('.app-leg').count();
  bench.check(`nothing: a plan of ${roped} legs stands there`, roped >= 5, await sheet.page.locator('.app-plan').innerText());
  let set = new Map();
  await step('Files: everything in one archive', async () => { set = await sheet.set(); });
  console.log(`     ${STEPS.length} steps from nothing to a saved set, ${((Date.now() - start) / 1000).toFixed(1)} s by script: ${STEPS.join('; ')}`);
  const zones = JSON.parse(set.get('zones.geojson') ?? '{"features":[]}').features;
  bench.check('nothing: two zones with the gaps that were typed', zones.map(({ properties }) => properties.gap_m).join() === '4,12');
  bench.check('nothing: what was painted has no hole and no slit', zones.every(({ geometry }) => geometry.type === 'Polygon' && geometry.coordinates.length === 1), JSON.stringify(zones.map(({ geometry }) => geometry.coordinates.map((ring) => ring.length))));
  const trip = String(set.get('trip.toml'));
  bench.check('nothing: three names and one rope stand in the trip file', ['"Ada"', '"Ben"', '"Cleo"', 'length_m = 60', 'terrain = ["terrain.tif"]'].every((part) => trip.includes(part)), trip);
  bench.check('nothing: route and terrain are in the set as they were given', ['route.gpx', 'terrain.tif'].every((file) => set.get(file)?.equals(readFileSync(bench.given(file)))));
  await bench.plansTheSame('nothing', set, 'route.gpx');
  await bench.close('nothing', sheet);
}
