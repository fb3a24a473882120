// What time it is on the way: that hour stays where it was said, and all others follow from it.

const PHONE = { width: 360, height: 740, touch: true };

export async function hourHere(bench) {
  const sheet = await bench.open(await bench.drawn('hour', bench.exampleArgs), PHONE);
  const { page } = sheet;
  const panel = async (...more) => JSON.parse(await bench.run(['page', 'panel', ...bench.exampleArgs, ...more]));
  const [km, hour, note] = [page.getByLabel('Kilometre', { exact: true }), page.getByLabel('It is now', { exact: true }), page.locator('.app-field-clock .app-fine')];
  const says = () => page.locator('.app-answer').innerText().then((text) => text.replaceAll('\u00a0', ' ').replaceAll('\n', ' '));
  const back = page.locator('.app-field-mode .app-wide');
  const gap = page.locator('.app-field-mode').getByRole('textbox', { name: 'Gap here' });
  const said = async () => {
    const trip = (await sheet.save('Trip file (TOML)')).toString();
    await sheet.tab('Field');
    return ['start = "(.*)"', 'start_at_km = (.*)'].map((line) => trip.match(new RegExp(`^${line}$`, 'm'))?.[1]);
  };
  await sheet.tab('Field');
  const nowhere = await note.innerText();
  await km.fill('8.0');
  const before = await says();
  await hour.fill('25:00');
  bench.check('the hour here: without a place it asks for one, what is no hour is told and changes nothing', /where you are/.test(nowhere) && /9:40/.test(await note.innerText()) && (await says()) === before && !(await back.isVisible()), `${nowhere} | ${await note.innerText()}`);
  await sheet.after(() => hour.fill('10.30'));
  await hour.blur();
  const [told, trip] = [await says(), await said()];
  const native = await panel('--start', '10:30', '--start-at-km', '8');
  const off = native.hours.find(({ to_m }) => to_m === null).on;
  bench.check('the hour here: it stands in the trip, and what follows is what the native program says of it', trip.join() === '10:30,8.0' && told.includes(`Off all bridges: going on ${off}`) && !told.includes('If here at') && (await hour.inputValue()) === '10:30', `${trip} ${off} ${told}`);
  bench.check('the hour here: the way back names it', (await back.innerText()) === 'Undo: Hours from 10:30 at 8 km', await back.innerText());
  await sheet.after(() => gap.fill('14'));
  const wider = await says();
  const kept = await hour.inputValue();
  bench.check('the hour here: with a wider gap it is still that hour there', kept === '10:30' && !wider.includes('If here at') && wider !== told && (await said()).join() === '10:30,8.0', `${kept} ${wider}`);
  await km.fill('9.0');
  const forgotten = await hour.inputValue();
  await sheet.after(() => hour.fill('1100'));
  bench.check('the hour here: of another place nothing was said yet, then the later word counts', forgotten === '' && (await said()).join() === '11:00,9.0', forgotten);
  await sheet.after(() => hour.fill(''));
  const unsaid = await said();
  bench.check('the hour here: an emptied field takes the last word back', unsaid.join() === '10:30,8.0', unsaid.join());
  await sheet.after(() => page.locator('.app-all').tap());
  bench.check('the hour here: all taken back the start is as given', (await said()).join() === '02:30,' && (await hour.inputValue()) === '');
  const clock = await page.evaluate(() => new Date().toTimeString().slice(0, 5));
  await sheet.after(() => page.getByRole('button', { name: "this device's clock" }).tap());
  const minutes = (text) => Number(text.slice(0, 2)) * 60 + Number(text.slice(3, 5));
  const taken = await hour.inputValue();
  bench.check("the hour here: a press takes the device's clock", (minutes(taken) - minutes(clock) + 1440) % 1440 <= 1, `${taken} ${clock}`);
  await bench.close('the hour here', sheet);
}

/** An hour said between somebody's leaving and coming back: with all taken back nothing of either is left. */
export async function hourBetween(bench) {
  const sheet = await bench.open(await bench.drawn('between', bench.exampleArgs), PHONE);
  const { page } = sheet;
  const press = (name) => sheet.after(() => page.locator('.app-field-mode').getByRole('button', { name, exact: true }).tap());
  await sheet.tab('Field');
  await page.getByLabel('Kilometre', { exact: true }).fill('8.0');
  await press('− Ben');
  await page.getByLabel('Kilometre', { exact: true }).fill('9.0');
  await sheet.after(() => page.getByLabel('It is now', { exact: true }).fill('11:00'));
  await press('+ Ben');
  const back = await page.locator('.app-field-mode .app-wide').innerText();
  await sheet.after(() => page.locator('.app-field-mode .app-wide').tap());
  const trip = (await sheet.save('Trip file (TOML)')).toString();
  bench.check('the hour here: said between two acts that undo each other it is taken back to the start as given', back === 'Undo: Hours from 11:00 at 9 km' && /^start = "02:30"$/m.test(trip) && !/start_at_km/.test(trip) && /Ben/.test(trip), `${back} ${trip.slice(0, 300)}`);
  await bench.close('the hour between', sheet);
}

/** The same gap says the same, whether it is typed or reached step by step; a narrower one clears nothing. */
export async function gapHere(bench) {
  const told = [];
  for (const way of ['typed', 'stepped']) {
    const sheet = await bench.open(await bench.drawn('gap', bench.exampleArgs), PHONE);
    const { page } = sheet;
    const gap = page.locator('.app-field-mode').getByRole('textbox', { name: 'Gap here' });
    await sheet.tab('Field');
    await page.getByLabel('Kilometre', { exact: true }).fill('4.5');
    if (way === 'typed') await sheet.after(() => gap.fill('8'));
    else for (let step = 0; step < 4; step += 1) await sheet.after(() => page.getByRole('button', { name: 'Gap here +1 m' }).tap());
    const says = (await page.locator('.app-answer').innerText()).replaceAll('\u00a0', ' ');
    const trip = (await sheet.save('Trip file (TOML)')).toString();
    await sheet.tab('Field');
    told.push([says, ...(trip.match(/^start.*$/gm) ?? [])].join(' | '));
    if (way === 'stepped') {
      await page.getByLabel('Kilometre', { exact: true }).fill('6.2');
      const before = await page.locator('.app-answer').innerText();
      await gap.fill('3');
      await page.waitForTimeout(300);
      const after = await page.locator('.app-answer').innerText();
      const note = (await page.locator('.app-field-gap .app-fine').innerText()).replaceAll('\u00a0', ' ');
      const zones = JSON.parse((await sheet.save('Zones (GeoJSON)')).toString());
      const icefall = zones.features.find(({ properties }) => properties.name === 'Tornfall icefall').properties;
      bench.check('the gap here: a narrower one than planned clears nothing, and says so', before === after && icefall.gap_max_m === 20 && icefall.gap_min_m === 14 && /stays at 20 m/.test(note), `${note} ${JSON.stringify(icefall)} ${after}`);
      await bench.close('the gap here', sheet);
    } else await bench.close('the gap here, typed', sheet);
  }
  bench.check('the gap here: typed and step by step it is the same', told[0] === told[1] && /start_at_km = 4\.5/.test(told[0]), told.join('\n'));
}

/** Of a trip without a start the hour here makes one. */
export async function hourWithoutStart(bench) {
  const sheet = await bench.open(await bench.drawn('nostart', bench.exampleArgs), PHONE);
  const { page } = sheet;
  await sheet.tab('Trip');
  for (const name of ['Snow bridges trusted until', 'Back by', 'Start']) await sheet.after(() => page.locator('.app-side').getByLabel(name, { exact: true }).fill(''));
  await sheet.tab('Field');
  await page.getByLabel('Kilometre', { exact: true }).fill('2.0');
  await sheet.after(() => page.getByLabel('It is now', { exact: true }).fill('04:00'));
  const back = await page.locator('.app-field-mode .app-wide').innerText();
  const trip = (await sheet.save('Trip file (TOML)')).toString();
  await sheet.tab('Plan');
  const hours = await page.locator('.app-plan').innerText();
  bench.check('the hour here: where no start was given it gives the hours', /^start = "04:00"\nstart_at_km = 2.0$/m.test(trip) && back === 'Undo: Hours from 04:00 at 2 km' && /\d\d:\d\d/.test(hours), `${trip} ${back} ${hours.slice(0, 300)}`);
  await bench.close('the hour without a start', sheet);
}

/** Who started in the evening and says an hour of the morning means that of the next day. */
export async function hourAfterMidnight(bench) {
  const evening = ['--start', '22:00', '--bridges-until', '05:00 +1', '--back-by', '12:00 +1'];
  const sheet = await bench.open(await bench.drawn('midnight', [...bench.exampleArgs, ...evening]), PHONE);
  const { page } = sheet;
  await sheet.tab('Field');
  await page.getByLabel('Kilometre', { exact: true }).fill('8.0');
  await sheet.after(() => page.getByLabel('It is now', { exact: true }).fill('04:30'));
  const trip = (await sheet.save('Trip file (TOML)')).toString();
  bench.check('the hour here: behind midnight it is that of the day after', /^start = "04:30 \+1"$/m.test(trip), trip);
  await sheet.tab('Field');
  await page.getByLabel('Kilometre', { exact: true }).fill('11.0');
  await sheet.after(() => page.locator('.app-field-mode .app-wide').tap());
  const planned = (await page.locator('.app-answer').innerText()).replaceAll('\u00a0', ' ');
  await sheet.after(() => page.locator('.app-field-mode').getByRole('button', { name: '− Ben', exact: true }).tap());
  const [start] = (await sheet.save('Trip file (TOML)')).toString().match(/^start = .*\nstart_at_km = .*$/m) ?? [];
  bench.check('the hour here: what changes there counts from the planned hour, of the day after too', /^start = "\d\d:\d\d \+1"\nstart_at_km = 11\.0$/.test(start ?? ''), `${start} ${planned}`);
  await bench.close('the hour after midnight', sheet);
  const late = await bench.open(await bench.drawn('evening', bench.exampleArgs), PHONE);
  await late.tab('Field');
  await late.page.getByLabel('Kilometre', { exact: true }).fill('6.2');
  await late.after(() => late.page.getByLabel('It is now', { exact: true }).fill('23:00'));
  const warned = await late.page.locator('.app-answer').innerText();
  const evening23 = (await late.save('Trip file (TOML)')).toString();
  bench.check('the hour here: an hour of the evening is late, not early on the day before', /^start = "23:00"$/m.test(evening23) && /on snow bridges after 11:00.* \+1/.test(warned), `${evening23} ${warned}`);
  await bench.close('the hour of the evening', late);
}
