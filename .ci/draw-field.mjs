// On the ice and on a phone: what holds where one stands and what comes next, ways out of a rope lost, and what is on the first screen.

import { readFileSync } from 'node:fs';

const PHONE = { width: 360, height: 740, touch: true };
const BADGE = /in ([\d.]+) (k?m), from km ([\d.]+): [^a-z]*([a-z]+)/;

const open = async (bench, name, more = []) => bench.open(await bench.drawn(name, [...bench.exampleArgs, ...more]), PHONE);

const press = (sheet, name) => sheet.after(() => sheet.page.locator('.app-field-mode').getByRole('button', { name, exact: true }).tap());

/** Where somebody has fallen in: the place for who is called, and what the program says of rope and haul on that leg. */
async function fallen(bench, page, legs) {
  const summary = page.locator('.app-field-mode summary', { hasText: 'Somebody has fallen in' });
  await summary.click();
  const said = async (km) => {
    await page.getByLabel('Kilometre', { exact: true }).fill(km);
    return (await page.locator('.app-fallen').innerText()).replaceAll('\u00a0', ' ');
  };
  const [ice, rock] = [await said('6.20'), await said('0.50')];
  const text = (html) => page.evaluate((html) => new DOMParser().parseFromString(html.replaceAll(/<\/(li|p)>/g, ' '), 'text/html').body.textContent, html);
  const rescue = (await text(legs.find((leg) => leg.leg === 6).rescue)).replaceAll('\u00a0', ' ');
  const words = (text) => text.split(/\s+/).filter(Boolean).join(' ');
  const [east, north] = (ice.match(/31W (\d{6}) (\d{7})/) ?? []).slice(1).map(Number);
  // Between where the rope goes on and off on that leg, by the table of the terminal: 460110 7380095 and 460696 7380746.
  const near = east > 460110 && east < 460696 && north > 7380095 && north < 7380746;
  bench.check('somebody has fallen in: the place on the grid, and loops and hauls of that leg as the program has them', ice.includes('6.20 km · ') && near && rescue.length > 40 && words(ice).includes(words(rescue)), `${ice} | ${rescue}`);
  bench.check('somebody has fallen in: where nobody is roped nothing is said of a rope', rock.includes('0.50 km · ') && !rock.includes('loop') && rock.includes('Nobody is roped here'), rock);
  await summary.click();
  await page.getByLabel('Kilometre', { exact: true }).fill('11.27');
}

/** Who types a kilometre while there is no plan calls out that one, and reads nothing of an older plan. */
export async function fallenWithoutPlan(bench) {
  const sheet = await open(bench, 'fallen');
  const { page } = sheet;
  await sheet.tab('Field');
  await page.locator('.app-field-mode summary', { hasText: 'Somebody has fallen in' }).click();
  const said = async () => (await page.locator('.app-fallen').innerText()).replaceAll('\u00a0', ' ');
  await page.locator('.app-fallen p').first().waitFor({ timeout: 5000 }).catch(() => {});
  const nowhere = await said();
  bench.check('fallen in: before anybody says where, what comes first stands there', nowhere.startsWith('Hold.') && nowhere.includes('Say below where you are'), nowhere);
  await page.getByLabel('Kilometre', { exact: true }).fill('6.00');
  const planned = await said();
  await sheet.choose('Halbre plateau');
  await sheet.type('Widest gap expected', '');
  await sheet.tab('Field');
  await page.getByLabel('Kilometre', { exact: true }).fill('13.80');
  const without = await said();
  bench.check('fallen in: without a plan the place to call out is the one that was typed', planned.includes('6.00 km · ') && without.includes('13.80 km · ') && !without.includes('6.00 km') && !without.includes('loop'), `${planned} | ${without}`);
  await page.getByLabel('Kilometre', { exact: true }).fill('25');
  await sheet.choose('Halbre plateau');
  await sheet.type('Widest gap expected', '4');
  await sheet.tab('Field');
  await page.getByLabel('Kilometre', { exact: true }).fill('25');
  const end = (await page.locator('.app-where').innerText()).replaceAll('\u00a0', ' ');
  bench.check('where am I: behind the end the length of the line is told', /It ends at 17\.1\d km\.$/.test(end), end);
  await page.getByLabel('Kilometre', { exact: true }).fill('4');
  const here = (await page.locator('.app-answer').innerText()).replaceAll('\u00a0', ' ');
  bench.check('where am I: what a frozen crust stops is told where it is inside', here.startsWith('roped, inside limits; frozen hard: belay'), here);
  await bench.close('fallen in', sheet);
}

export async function onTheWay(bench) {
  const sheet = await open(bench, 'way');
  const { page } = sheet;
  const { legs, zones } = JSON.parse(await bench.run(['page', 'panel', ...bench.exampleArgs]));
  const pieces = legs.flatMap((leg) => leg.pieces);
  await sheet.tab('Field');
  const [wrong, told] = [[], { places: 0, words: 0, zones: 0 }];
  const order = ['unroped', 'inside', 'look', 'outside', 'stop'];
  for (let km = 0.05; km < 17.1; km += 0.53) {
    await page.getByLabel('Kilometre', { exact: true }).fill(km.toFixed(2));
    const longer = (await page.locator('.app-longer').innerText()).replaceAll('\u00a0', ' ').split('\n').filter(Boolean);
    const own = longer.find((line) => line.startsWith('here ')) ?? '';
    const at = Number(km.toFixed(2)) * 1000;
    const here = pieces.find((one) => one.from_m <= at && at <= one.to_m);
    if (!own.replace('; frozen hard: belay', '').endsWith(here.verdict === 'inside' ? 'here roped, inside limits' : here.verdict)) wrong.push(`km ${km.toFixed(2)}: ${own}, not ${here.verdict}`);
    const inside = zones.filter((zone) => zone.crossings.some((one) => one.enter_m <= at && at <= one.exit_m));
    for (const zone of inside) if (!longer.some((line) => line.includes(zone.name) && line.endsWith(` ${zone.gap_m} m`))) wrong.push(`km ${km.toFixed(2)}: nothing of ${zone.name}`);
    told.places += 1;
    told.zones += inside.length;
    for (const line of longer) {
      const [, away, unit, from, verdict] = line.match(BADGE) ?? [];
      if (!verdict) continue;
      told.words += 1;
      const metres = away * (unit === 'km' ? 1000 : 1);
      const rank = (one) => order.indexOf(one.verdict);
      // A milder word on less than 100 m between worse ones is passed over.
      const crumb = (one, behind) => one.verdict !== 'unroped' && rank(one) < rank(here) && behind !== undefined && (rank(behind) >= rank(here) || behind.verdict === 'unroped') && one.to_m - one.from_m < 100;
      const next = pieces.find((one, at) => one.from_m >= here.to_m && one.verdict === verdict && !crumb(one, pieces[at + 1]));
      const worse = order.indexOf(verdict) > rank(here);
      // Of what is worse nobody is told later than true, of what is milder nobody earlier; and both to a hundred metres.
      const late = [metres - (next.from_m - at), from * 1000 - next.from_m].map((over) => (worse ? over : -over));
      if (late.some((over) => over > 1e-6 || over < -100)) wrong.push(`km ${km.toFixed(2)}: ${line}, true ${(next.from_m - at).toFixed(1)} m`);
    }
  }
  bench.check(`on the way: at ${told.places} places the word there, ${told.zones} times a zone with its gap, ${told.words} times what comes, never later than true`, wrong.length === 0 && told.words > 20 && told.zones > 8, wrong.join(' | ') || JSON.stringify(told));
  await page.getByLabel('Kilometre', { exact: true }).fill('11.27');
  const pinned = await page.locator('.app-answer').innerText();
  bench.check('on the way: in the lines that stay in sight the milder word here stands before the worse one ahead', /here\s+roped, inside limits/.test(pinned) && /in 15 m, from km 11.28: \?\s*look/.test(pinned), pinned);
  await fallen(bench, page, legs);
  await page.locator('.app-panel:not([hidden])').evaluate((panel) => panel.scrollTo(0, 600));
  await page.locator('.app-field-mode .app-ways > button').click();
  await page.locator('.app-field-mode .way').first().waitFor({ timeout: 5000 }).catch(() => {});
  await page.locator('.app-panel:not([hidden])').evaluate((panel) => panel.scrollTo(0, 900));
  const party = () => page.locator('.app-field-mode > fieldset').last().evaluate((all) => all.getBoundingClientRect().top);
  const ways = () => page.locator('.app-field-mode .app-ways').evaluate((all) => all.getBoundingClientRect().top);
  const were = [await ways(), await party()];
  await page.locator('.app-language').selectOption('de');
  await page.waitForTimeout(600);
  const are = [await ways(), await party()];
  bench.check('on the way: in another language the page is where it was, though what was weighed is gone', Math.min(...are.map((top, at) => Math.abs(top - were[at]))) <= 2, `${were} ${are}`);
  await page.locator('.app-answer').getByText('ab km 11,28').waitFor({ timeout: 5000 }).catch(() => {});
  const german = await page.locator('.app-answer').innerText();
  bench.check('on the way: in another language one is in the same place', /hier\s+am Seil, im Rahmen/.test(german) && german.includes('in 15 m, ab km 11,28: '), german);
  await bench.close('on the way', sheet);
}

export async function ropesShared(bench) {
  const shared = async (name, ropes, act) => {
    const sheet = await open(bench, name, ropes.flatMap((length) => ['--rope', length]));
    await sheet.tab('Field');
    const ways = sheet.page.locator('.app-field-mode .app-ways');
    await ways.getByRole('button').tap();
    await ways.locator('.ways .way').first().waitFor({ timeout: 5000 }).catch(() => {});
    await act(sheet, ways, (await ways.locator('.ways > li').first().innerText()).replaceAll('\u00a0', ' '));
    await bench.close(name, sheet);
  };
  await shared('ropes-joined', ['40', '30'], async (sheet, ways, card) => {
    await sheet.after(() => ways.getByRole('button', { name: 'Plan with this way' }).first().tap());
    const says = await sheet.page.locator('.app-since').innerText();
    const trip = (await sheet.save('Trip file (TOML)')).toString();
    const listed = /length_m = 69.4/.test(trip) && /joined = true/.test(trip) && trip.match(/length_m/g).length === 1;
    bench.check('ropes joined: a way that joins them names them, is planned with, and the trip lists them as one', /the 40 m rope and the 30 m rope joined/.test(card) && listed && /Joined: 40 m \+ 30 m/.test(says.replaceAll('\u00a0', ' ')), `${card}\n${trip}\n${says}`);
  });
  await shared('ropes-at-home', ['60', '60', '40'], async (_, ways, card) => {
    const offered = await ways.getByRole('button', { name: 'Plan with this way' }).count();
    bench.check('ropes at home: a way says which one stays there, and one that is only a spare stays with the trip', /Stays at home: 60 m$/m.test(card) && offered > 0, card);
  });
}

export async function ropesLost(bench) {
  const sheet = await open(bench, 'lost');
  const { page } = sheet;
  await sheet.tab('Field');
  const ways = page.locator('.app-field-mode .app-ways');
  await ways.getByRole('button').tap();
  await ways.locator('.ways .way').first().waitFor({ timeout: 5000 }).catch(() => {});
  const cards = await ways.locator('.ways .way').count();
  const wide = await page.evaluate(() => Math.max(...[...document.querySelectorAll('.app-ways, .app-ways .app-report, .app-ways .ways, .app-ways li')].map((one) => one.scrollWidth - one.clientWidth)));
  bench.check('ropes lost: ways to split the party are shown on the field tab, none wider than the phone', cards >= 2 && wide <= 0, `${cards} cards, ${wide} px too wide`);
  await page.getByLabel('Kilometre', { exact: true }).fill('6.2');
  const tied = () => page.locator('.app-field-mode > .app-pinned, .app-longer').allInnerTexts().then((all) => all.join('\n'));
  const before = await tied();
  await sheet.after(() => ways.getByRole('button', { name: 'Plan with this way' }).last().tap());
  const [taken, gone, says] = [await tied(), await ways.locator('.way').count(), await page.locator('.app-back button').first().innerText()];
  const trip = (await sheet.save('Trip file (TOML)')).toString();
  await sheet.tab('Field');
  bench.check('a way taken: the trip says the long sling, another set-up is told, the cards are gone', /^sling_m = 2.4$/m.test(trip) && taken !== before && gone === 0, `${trip} ${gone}`);
  await sheet.after(() => page.locator('.app-back button').first().tap());
  bench.check('a way taken back: what is tied is as before', /^Undo: .*Another way/.test(says) && (await tied()) === before, `${says}\n${await tied()}\n${before}`);
  const outside = [];
  for (const [language, size] of [['en', '100%'], ['en', '200%'], ['de', '200%'], ['de', '100%']]) {
    await page.locator('.app-language').selectOption(language);
    await page.evaluate((all) => { document.documentElement.style.fontSize = all; }, size);
    await ways.getByRole('button').first().click();
    await ways.locator('.ways .way').first().waitFor({ timeout: 5000 }).catch(() => {});
    const over = await page.evaluate(() => [...document.querySelectorAll('.ways > li :is(dt, dd)')].map((one) => { const text = document.createRange(); text.selectNodeContents(one); return [one, text.getBoundingClientRect().right - one.closest('.ways > li').getBoundingClientRect().right]; }).filter(([, by]) => !(by < 0)).map(([one, by]) => `${one.textContent} ${by}`));
    outside.push(...((await ways.locator('dd').count()) > 0 ? over : ['no figures']).map((one) => `${language} ${size}: ${one}`));
  }
  bench.check('ropes lost: figures of the ways are whole on their cards, in both languages and with letters twice as large', outside.length === 0, outside.join(' | '));
  await page.locator('.app-language').selectOption('en');
  await page.getByLabel('Kilometre', { exact: true }).fill('6.2');
  await press(sheet, '− rope blue');
  bench.check('ropes lost: ways of before are gone with the change', (await ways.locator('.way').count()) === 0);
  await page.locator('.app-longer').getByRole('button', { name: 'Ways to split the party and use the ropes' }).tap();
  await ways.locator('.ways .way').first().waitFor({ timeout: 5000 }).catch(() => {});
  const [offered, none] = await Promise.all([ways.getByRole('button', { name: 'Plan with this way' }).count(), ways.locator('.ways > li').evaluateAll((all) => all.every((one) => one.textContent.includes('outside')))]);
  bench.check('ropes lost: a way that does not hold is not offered to plan with', none && offered === 0, `${none} ${offered}`);
  const box = await ways.boundingBox();
  bench.check('ropes lost: the answer that tells of the ways leads to them', (await ways.locator('.ways .way').count()) > 0 && box.y > 100 && box.y < 600, JSON.stringify(box));
  await press(sheet, '− rope thin');
  const first = await page.locator('.app-answer p').first().evaluate((p) => ({ says: p.textContent, whole: p.scrollHeight <= p.clientHeight + 1 && p.scrollWidth <= p.clientWidth, lines: Math.round(p.clientHeight / parseFloat(getComputedStyle(p).lineHeight)) }));
  bench.check('ropes lost: without any what to do now stands first and whole, in two lines, under the sign of a stop', /^■ .*stay off the ice/.test(first.says) && first.whole && first.lines <= 2, JSON.stringify(first));
  await ways.getByRole('button').tap();
  await ways.locator('.app-fault').first().waitFor({ timeout: 5000 }).catch(() => {});
  bench.check('ropes lost: without any there are no ways, and the program says why', (await ways.locator('.app-fault').count()) > 0 && (await ways.locator('.way').count()) === 0, await ways.innerText());
  await bench.close('ropes lost', sheet);
}

/** What is told in the head is whole on every leg, in both languages; a leg whose words alone changed is named; heights are told apart. */
export async function headOfTheIce(bench) {
  const sheet = await open(bench, 'head');
  const { page } = sheet;
  await sheet.tab('Field');
  const cut = [];
  for (const [language, field] of [['en', 'Kilometre'], ['de', 'Kilometer']]) {
    if (language === 'de') await sheet.after(() => page.locator('.app-language').selectOption('de'));
    const { legs } = JSON.parse(await bench.run(['page', 'panel', ...bench.exampleArgs, '--lang', language]));
    for (const leg of legs) {
      await page.getByLabel(field, { exact: true }).fill(((leg.start_m + leg.end_m) / 2000).toFixed(2));
      const told = await page.locator('.app-answer').evaluate((all) => ({ says: all.innerText.replaceAll('\u00a0', ' '), lines: all.clientHeight / 20, over: [all, ...all.querySelectorAll('*')].some((one) => getComputedStyle(one).display !== 'inline' && (one.scrollWidth > one.clientWidth + 1 || one.scrollHeight > one.clientHeight + 2)) }));
      const plain = (html) => html.replace(/<[^>]+>/g, '').replaceAll('&quot;', '"').replaceAll('\u00a0', ' ');
      const wanted = [...leg.figures.filter(({ id }) => /-(spacing|coils)$/.test(id)).map(({ value }) => value), ...(leg.act && leg.pieces.length === 1 ? [leg.act] : [])].map(plain);
      const missing = wanted.filter((words) => !told.says.replaceAll('\n', ' ').includes(words));
      if (missing.length > 0 || told.over || told.lines > 8.1) cut.push(`${language} leg ${leg.leg}: ${missing} ${told.lines} ${told.says}`);
    }
  }
  bench.check('head on the ice: spacing, coil and what to do are whole on every leg, in both languages', cut.length === 0, cut.join(' | '));
  await sheet.after(() => page.locator('.app-language').selectOption('en'));
  await page.getByLabel('Height', { exact: true }).fill('1200');
  const places = await page.locator('.app-where button').allInnerTexts();
  bench.check('head on the ice: places of one height are told apart by kilometre, leg and slope', places.length > 1 && places.every((text) => /^[\d.]+ km, Leg \d+, (uphill|downhill)$/.test(text)), places.join(' | '));
  await bench.close('head on the ice', sheet);
}

/** No button of the tab moves under the thumb that presses it. */
export async function underTheThumb(bench) {
  const sheet = await open(bench, 'thumb');
  const { page } = sheet;
  await sheet.tab('Field');
  await page.getByLabel('Kilometre', { exact: true }).fill('6.2');
  const panel = page.locator('.app-panel:not([hidden])');
  const moved = [];
  const thumb = async (locator, at = 380) => {
    // Where a thumb is, and the tap there.
    await locator.evaluate((one, top) => one.closest('.app-panel').scrollBy(0, one.getBoundingClientRect().top - top), at);
    const box = await locator.boundingBox();
    const name = await locator.evaluate((one) => one.getAttribute('aria-label') ?? one.textContent);
    const key = await locator.evaluate((one) => [...one.closest('.app-field-mode').querySelectorAll('button, summary')].indexOf(one));
    const group = await locator.evaluate((one) => one.closest('.app-pinned') ? -1 : 0);
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
    await page.waitForTimeout(350);
    const now = await page.evaluate((which) => [...document.querySelectorAll('.app-field-mode :is(button, summary)')][which]?.getBoundingClientRect().top, key);
    if (group === 0 && Math.abs(now - box.y) > 2) moved.push(`${name}: ${Math.round(now - box.y)} px`);
    return name;
  };
  const within = page.locator('.app-field-mode');
  const pressed = [];
  for (const name of ['Gap here +1 m', '− Ben', '− rope blue', '+ rope blue', 'Gap here −1 m', '+ one more', '− rope thin', 'Old snow that has settled.', 'Ice underfoot: hidden gaps stay hidden.', 'Ways to split the party and use the ropes', '+ rope thin', 'All of it', 'Less']) {
    const one = within.getByRole('button', { name, exact: true }).last();
    if (await one.isVisible()) pressed.push(await thumb(one));
  }
  // What is read under the way back stays too.
  await panel.evaluate((all) => all.scrollTo(0, 400));
  for (let last = page.locator('.app-field-mode .app-wide'), left = 9; left > 0 && (await last.isVisible()); left -= 1) {
    const seen = await page.evaluate(() => { const under = document.querySelector('.app-pinned').getBoundingClientRect().bottom + 44; return [...document.querySelectorAll('.app-field-mode > fieldset, .app-ways')].findIndex((one) => one.getBoundingClientRect().bottom > under); });
    const top = () => page.evaluate((at) => document.querySelectorAll('.app-field-mode > fieldset, .app-ways')[at].getBoundingClientRect().top, seen);
    const before = await top();
    pressed.push(await last.innerText());
    // As a thumb taps, which scrolls nothing before.
    const box = await last.boundingBox();
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
    await page.waitForTimeout(350);
    const by = (await top()) - before;
    if (Math.abs(by) > 2) moved.push(`${pressed.at(-1)}: ${Math.round(by)} px`);
  }
  bench.check(`under the thumb: none of ${pressed.length} presses moves what is under it by more than two pixels`, moved.length === 0 && pressed.length > 14, `${moved.join(' | ')} of ${pressed.join(', ')}`);
  await bench.close('under the thumb', sheet);
}

/** What was entered on the ice outlives a reload: where somebody is, who is missing, and the way back. */
export async function iceKept(bench) {
  const sheet = await open(bench, 'icekept');
  const { page } = sheet;
  await sheet.tab('Field');
  await page.getByLabel('Kilometre', { exact: true }).fill('6.2');
  await press(sheet, '− rope thin');
  for (let i = 0; i < 3; i += 1) await press(sheet, 'Gap here +1 m');
  const state = async () => ({
    km: await page.getByLabel('Kilometre', { exact: true }).inputValue(),
    out: await page.locator('.app-out').allInnerTexts(),
    back: await page.locator('.app-field-mode .app-wide').innerText(),
    all: await page.locator('.app-field-mode .app-all').isVisible(),
  });
  const before = await state();
  bench.check('on the ice: three steps of a gap are one act, the last; beside it all can be taken back', /^Undo: Gap as seen 23 m/.test(before.back) && !before.back.includes('rope') && before.all, JSON.stringify(before));
  await page.waitForTimeout(700);
  await page.reload();
  await page.waitForSelector('body[data-planned]', { timeout: 30_000 });
  await sheet.tab('Field');
  const after = await state();
  bench.check('on the ice: after a reload kilometre, who is missing and the way back are as before', JSON.stringify(after) === JSON.stringify(before), JSON.stringify([before, after]));
  await sheet.after(() => page.locator('.app-field-mode .app-wide').tap());
  const one = await state();
  bench.check('on the ice: after a reload one press takes back the gap alone', one.back === 'Undo: Without rope thin' && !one.all && one.out.length === 1, JSON.stringify(one));
  await sheet.after(() => page.locator('.app-field-mode .app-wide').tap());
  await sheet.tab('Plan');
  const marks = await page.evaluate(() => document.querySelectorAll('.app-plan :is(del, ins), .app-effect:not([hidden]) :is(del, ins)').length);
  bench.check('on the ice: all taken back nothing is marked as changed, neither in the strip nor in the plan', marks === 0 && !(await page.locator('.app-effect').isVisible()), `${marks} marks`);
  const zones = await sheet.zones();
  bench.check('on the ice: all taken back after a reload the zones are as given', JSON.stringify(zones) === JSON.stringify(JSON.parse(readFileSync(bench.given('zones.geojson'), 'utf8')).features));
  await bench.close('ice kept', sheet);
}

/** The line of what changed: from its beginning, never "as before" of a leg that is worse than before the ice, and other words are a change. */
export async function lineOfChanges(bench) {
  const sheet = await open(bench, 'line');
  const { page } = sheet;
  await sheet.tab('Field');
  await page.getByLabel('Kilometre', { exact: true }).fill('6.2');
  const line = page.locator('.app-effect');
  const gap = async (text) => sheet.after(() => page.locator('.app-field-mode').getByRole('textbox', { name: 'Gap here' }).fill(text));
  await press(sheet, '− rope blue');
  const worse = await line.innerText();
  await gap('21');
  const since = await line.innerText();
  bench.check('line of changes: of a leg that is worse than before the ice nothing is as before', /Leg 6/.test(worse) && !/as before|alters no leg/.test(since) && /Leg 6/.test(since), `${worse} | ${since}`);
  bench.check('line of changes: all of it is seen on a phone', await line.evaluate((one) => one.scrollWidth <= one.clientWidth && one.scrollHeight <= one.clientHeight), since);
  await sheet.after(() => page.locator('.app-all').tap());
  await sheet.tab('Trip');
  const start = page.locator('.app-side').getByLabel('Start', { exact: true });
  await sheet.after(() => start.fill('02:31'));
  const told = await line.innerText();
  bench.check('line of changes: legs of which something else is told are named', /^Read again: leg .*6/.test(told), told);
  await bench.close('line of changes', sheet);
}

export async function firstScreen(bench) {
  const sheet = await open(bench, 'phone');
  const { page } = sheet;
  const bottom = async () => (await page.locator('.app-head .hours').first().evaluate((p) => p.getBoundingClientRect().bottom));
  const order = await page.evaluate(() => [...document.querySelectorAll('.app-head .first > p')].map((p) => p.className));
  bench.check('first screen: where nothing stops a start that is too late stands first, whole at 360 × 740', (await bottom()) <= 740 && order[0] === 'hours late' && order.includes('stands'), `${await bottom()} px ${order}`);
  await sheet.choose('Halbre plateau');
  await sheet.type('Widest gap expected', '37');
  await sheet.tab('Plan');
  bench.check('first screen: with the line of what changed and a leg that stops as well', (await bottom()) <= 740 && (await page.locator('.app-effect').isVisible()), `${await bottom()} px`);
  const strip = await page.locator('.app-effect').boundingBox();
  const cdp = await page.context().newCDPSession(page);
  const touch = (type, y) => cdp.send('Input.dispatchTouchEvent', { type, touchPoints: y === undefined ? [] : [{ x: 150, y }] });
  await touch('touchStart', strip.y + 15);
  for (let up = 20; up <= 200; up += 20) await touch('touchMove', strip.y + 15 - up);
  await touch('touchEnd');
  const scrolled = await page.locator('.app-panel:not([hidden])').evaluate((panel) => panel.scrollTop);
  bench.check('first screen: a finger that sets out on what changed scrolls the plan', scrolled > 100, `${scrolled} px`);
  const small = [];
  for (const tab of ['Plan', 'Zone', 'Trip', 'Field', 'Files']) {
    await sheet.tab(tab);
    small.push(...await page.evaluate(() => [...document.querySelectorAll('#app :is(button, input, select, textarea, summary)')]
      .filter((e) => e.checkVisibility() && !e.classList.contains('app-hidden')).map((e) => [e, (e.closest('label') ?? e).getBoundingClientRect()])
      .filter(([, { width, height }]) => width < 43.9 || height < 43.9).map(([e, r]) => `${e.tagName} ${e.textContent} ${Math.round(r.width)}×${Math.round(r.height)}`)));
  }
  bench.check('first screen: a glove hits every control of every tab, 44 px', small.length === 0, small.join(', '));
  await bench.close('first screen', sheet);
}
