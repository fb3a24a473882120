// Names that try to be more than text: tags, scripts, letters that turn the line round.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const EVIL = '<img src=x onerror="globalThis.ran=1"></script><script>globalThis.ran=2</script>';
const TURNED = '\u202egnihton\u202c \u0645\u0631\u062d\u0628\u0627 \u2066x';
const escaped = (text) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

/** The example with such names wherever a file has names. */
function files(bench) {
  const dir = bench.folder('hostile');
  const read = (name) => readFileSync(bench.given(name), 'utf8');
  const put = (name, text) => {
    writeFileSync(join(dir, name), text);
    return join(dir, name);
  };
  const route = put('<b>route.gpx', read('route.gpx').replace(/<name>[^<]*<\/name>/g, `<name>${escaped(EVIL + TURNED)}</name>`));
  const zones = JSON.parse(read('zones.geojson'));
  for (const feature of zones.features) Object.assign(feature.properties, { name: EVIL, note: EVIL + TURNED, source: TURNED, [EVIL]: EVIL });
  zones.features[1].properties.name = TURNED;
  const toml = JSON.stringify;
  const trip = read('trip.toml').replace(/"(Over the four glaciers (?:\(invented\))|Ben|blue|the shoulder)"/g, toml(EVIL)).replace('"Cleo"', toml(TURNED)).replace('"terrain.tif"', toml(bench.given('terrain.tif')));
  return [route, put("<i onclick='x'>.geojson", toml(zones)), '--trip', put('trip.toml', trip)];
}

/** What of a page is not text: what ran, and elements that only a name can have made. */
const came = () => [globalThis.ran === undefined ? '' : 'it ran', ...[...document.querySelectorAll('img, b > b, [onerror], [onclick]')].filter((e) => e.matches('img[src=x], [onerror], [onclick]')).map((e) => e.outerHTML)].filter(Boolean);

/** Letters that turn a line round are alone in their box, so that nothing else turns with them. */
const turning = () => {
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const found = [];
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const parent = node.parentElement;
    if (!/[\u202a-\u202e\u2066-\u2069]/.test(node.data) || parent.closest('script, style')) continue;
    if (/^(isolate|plaintext)/.test(getComputedStyle(parent).unicodeBidi) || parent.closest('option, textarea, pre')) continue;
    if (parent.textContent !== node.data) found.push(parent.outerHTML.slice(0, 160));
  }
  return found;
};

async function walk(bench, sheet, what) {
  for (const tab of ['Zone', 'Trip', 'Field', 'Files', 'Plan']) {
    await sheet.tab(tab);
    if (tab === 'Zone') await sheet.page.getByLabel('Picked zone', { exact: true }).selectOption({ index: 3 });
    if (tab === 'Field') await sheet.page.getByLabel('Kilometre', { exact: true }).fill('6');
    if (tab === 'Plan') await sheet.page.locator('.app-leg[data-leg="6"]').click();
    const found = await sheet.page.evaluate(came);
    bench.check(`${what}, ${tab}: names stay text`, found.length === 0, found.slice(0, 2).join(' '));
    const turned = await sheet.page.evaluate(turning);
    bench.check(`${what}, ${tab}: no name turns what stands beside it`, turned.length === 0, turned.slice(0, 3).join(' '));
  }
  await sheet.page.locator('.map-tools').getByRole('button', { name: 'Pick', exact: true }).click();
}

export async function staysText(bench) {
  const sheet = await bench.open(await bench.drawn('hostile', files(bench)));
  await walk(bench, sheet, 'hostile names');
  const shown = await sheet.page.locator('.app-zone option').allInnerTexts();
  bench.check('hostile names: they are shown as they are', shown.some((text) => text.includes('<script>')), shown.join(' '));
  const dir = bench.folder('hostile-saved');
  for (const [name, file] of [['Save this page (.html)', 'draw.html'], ['Report (HTML)', 'report.html'], ['Sheet to print (HTML)', 'sheet.html']]) writeFileSync(join(dir, file), await sheet.save(name));
  await sheet.drop([`${EVIL.replaceAll('/', ':')}.gpx`, '<gpx'], [`${TURNED}.tif`, 'II*\0'], ['zones.geojson', `{"type":"FeatureCollection","features":[${EVIL}`]);
  await sheet.page.waitForFunction(() => document.querySelectorAll('.app-came .app-fault').length === 3);
  const found = await sheet.page.evaluate(came);
  bench.check('hostile names of files that cannot be used: they stay text', found.length === 0, found.join(' '));
  await bench.close('hostile names', sheet);
  const saved = await bench.open(join(dir, 'draw.html'));
  await walk(bench, saved, 'hostile names in a saved page');
  for (const file of ['report.html', 'sheet.html']) {
    await saved.page.goto(`file://${join(dir, file)}`);
    const more = await saved.page.evaluate(came);
    bench.check(`hostile names in a saved ${file}: they stay text`, more.length === 0, more.slice(0, 2).join(' '));
  }
  saved.seen.requests = saved.seen.requests.filter((url) => !/\/(report|sheet)\.html$/.test(url));
  await bench.close('hostile names in a saved page', saved);
}
