// On the ice and on a phone: what holds where one stands and what comes next, ways out of a rope lost, and what is on the first screen.

const PHONE = { width: 360, height: 740, touch: true };
const BADGE = /in ([\d.]+) (k?m), from km ([\d.]+): [^a-z]*([a-z]+)/;

const open = async (bench, name) => bench.open(await bench.drawn(name, bench.exampleArgs), PHONE);

const press = (sheet, name) => sheet.after(() => sheet.page.locator('.app-field-mode').getByRole('button', { name, exact: true }).tap());

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
    const [own, ...longer] = (await page.locator('.app-longer').innerText()).replaceAll('\u00a0', ' ').split('\n').filter(Boolean);
    const at = Number(km.toFixed(2)) * 1000;
    const here = pieces.find((one) => one.from_m <= at && at <= one.to_m);
    if (!own.endsWith(here.verdict)) wrong.push(`km ${km.toFixed(2)}: ${own}, not ${here.verdict}`);
    const inside = zones.filter((zone) => zone.crossings.some((one) => one.enter_m <= at && at <= one.exit_m));
    for (const zone of inside) if (!longer.some((line) => line.includes(zone.name) && line.endsWith(` ${zone.gap_m} m`))) wrong.push(`km ${km.toFixed(2)}: nothing of ${zone.name}`);
    told.places += 1;
    told.zones += inside.length;
    for (const line of longer) {
      const [, away, unit, from, verdict] = line.match(BADGE) ?? [];
      if (!verdict) continue;
      told.words += 1;
      const metres = away * (unit === 'km' ? 1000 : 1);
      const next = pieces.find((one) => one.from_m >= here.to_m && one.verdict === verdict);
      const worse = order.indexOf(verdict) > order.indexOf(here.verdict);
      // Of what is worse nobody is told later than true, of what is milder nobody earlier; and both to a hundred metres.
      const late = [metres - (next.from_m - at), from * 1000 - next.from_m].map((over) => (worse ? over : -over));
      if (late.some((over) => over > 1e-6 || over < -100)) wrong.push(`km ${km.toFixed(2)}: ${line}, true ${(next.from_m - at).toFixed(1)} m`);
    }
  }
  bench.check(`on the way: at ${told.places} places the word there, ${told.zones} times a zone with its gap, ${told.words} times what comes, never later than true`, wrong.length === 0 && told.words > 20 && told.zones > 8, wrong.join(' | ') || JSON.stringify(told));
  await page.getByLabel('Kilometre', { exact: true }).fill('11.27');
  const pinned = await page.locator('.app-answer').innerText();
  bench.check('on the way: in the lines that stay in sight the milder word here stands before the worse one ahead', /here\s+inside/.test(pinned) && /in 15 m, from km 11.28: \?\s*look/.test(pinned), pinned);
  await page.locator('.app-language').selectOption('de');
  await page.locator('.app-answer').getByText('ab km 11,28').waitFor({ timeout: 5000 }).catch(() => {});
  const german = await page.locator('.app-answer').innerText();
  bench.check('on the way: in another language one is in the same place', /hier\s+im Rahmen/.test(german) && german.includes('in 15 m, ab km 11,28: '), german);
  await bench.close('on the way', sheet);
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
  await press(sheet, '− rope blue');
  bench.check('ropes lost: ways of before are gone with the change', (await ways.locator('.way').count()) === 0);
  await page.locator('.app-longer').getByRole('button', { name: 'Ways to split the party and use the ropes' }).tap();
  await ways.locator('.ways .way').first().waitFor({ timeout: 5000 }).catch(() => {});
  const box = await ways.boundingBox();
  bench.check('ropes lost: the answer that tells of the ways leads to them', (await ways.locator('.ways .way').count()) > 0 && box.y > 100 && box.y < 600, JSON.stringify(box));
  await press(sheet, '− rope thin');
  const first = await page.locator('.app-answer p').first().evaluate((p) => ({ says: p.textContent, whole: p.scrollHeight <= p.clientHeight + 1 && p.scrollWidth <= p.clientWidth, lines: Math.round(p.clientHeight / parseFloat(getComputedStyle(p).lineHeight)) }));
  bench.check('ropes lost: without any what to do now stands first and whole, in two lines', /stay off the ice/.test(first.says) && first.whole && first.lines <= 2, JSON.stringify(first));
  await ways.getByRole('button').tap();
  await ways.locator('.app-fault').first().waitFor({ timeout: 5000 }).catch(() => {});
  bench.check('ropes lost: without any there are no ways, and the program says why', (await ways.locator('.app-fault').count()) > 0 && (await ways.locator('.way').count()) === 0, await ways.innerText());
  await bench.close('ropes lost', sheet);
}

export async function firstScreen(bench) {
  const sheet = await open(bench, 'phone');
  const { page } = sheet;
  const bottom = async () => (await page.locator('.app-head .hours').first().evaluate((p) => p.getBoundingClientRect().bottom));
  const order = await page.evaluate(() => [...document.querySelectorAll('.app-head .first > p')].map((p) => p.className));
  bench.check('first screen: what stops, then a start that is too late, whole at 360 × 740', (await bottom()) <= 740 && order.indexOf('hours') === order.lastIndexOf('stands') + 1 && order.includes('stands'), `${await bottom()} px ${order}`);
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
