// What time it is on the way: the plan is moved so that it has the team there at that hour.

const PHONE = { width: 360, height: 740, touch: true };

/** Minutes after the start at which a plan of the native program has somebody leave a place. */
function leftAfter({ legs }, at_m) {
  const leg = legs.find((one) => one.start_m <= at_m && at_m <= one.end_m);
  const at = leg.walk.findIndex(([there_m]) => there_m > at_m);
  const [[from_m, from_min], [to_m, to_min]] = [leg.walk[at - 1], leg.walk[at]];
  return from_min + ((to_min - from_min) * (at_m - from_m)) / (to_m - from_m);
}

const minutes = (clock) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5));

export async function hourHere(bench) {
  const sheet = await bench.open(await bench.drawn('hour', bench.exampleArgs), PHONE);
  const { page } = sheet;
  const panel = async (...more) => JSON.parse(await bench.run(['page', 'panel', ...bench.exampleArgs, ...more]));
  const [km, hour, note] = [page.getByLabel('Kilometre', { exact: true }), page.getByLabel('It is now', { exact: true }), page.locator('.app-field-clock .app-fine')];
  const says = () => page.locator('.app-answer').innerText().then((text) => text.replaceAll('\u00a0', ' ').replaceAll('\n', ' '));
  const back = page.locator('.app-field-mode .app-wide');
  const start = async () => (await sheet.save('Trip file (TOML)')).toString().match(/^start = "(.*)"$/m)?.[1];
  await sheet.tab('Field');
  const nowhere = await note.innerText();
  await km.fill('8.0');
  const before = await says();
  await hour.fill('25:00');
  bench.check('the hour here: without a place it asks for one, what is no hour is told and changes nothing', /where you are/.test(nowhere) && /9:40/.test(await note.innerText()) && (await says()) === before && !(await back.isVisible()), `${nowhere} | ${await note.innerText()}`);
  await sheet.after(() => hour.fill('10.30'));
  await hour.blur();
  const [told, moved] = [await says(), await start()];
  await sheet.tab('Field');
  const native = await panel('--start', moved);
  const [there, wanted] = [minutes(moved) + leftAfter(native, 8000), native.hours.find(({ to_m }) => to_m === null)];
  bench.check('the hour here: the plan leaves there at that hour, to the minute, and says what the native program says of that start', Math.abs(there - minutes('10:30')) <= 0.5 && told.includes('If here at 10:30: ') && told.includes(wanted.on) && (await hour.inputValue()) === '10:30', `${there} ${told}`);
  const behind = minutes(moved) - minutes('02:30');
  bench.check('the hour here: how far behind the plan that is stands on the way back', (await back.innerText()) === `Take back: ${Math.floor(behind / 60)}:${String(behind % 60).padStart(2, '0')} h behind the plan`.replace('0:', '').replace(/^(Take back: \d\d) h/, '$1 min'), `${behind} ${await back.innerText()}`);
  await km.fill('9.0');
  const forgotten = await hour.inputValue();
  await sheet.after(() => hour.fill('1100'));
  const again = await start();
  await sheet.tab('Field');
  bench.check('the hour here: of another place nothing was said yet, and a second hour goes on from the first', forgotten === '' && Math.abs(minutes(again) + leftAfter(native, 9000) - minutes('11:00')) <= 0.5 && !(await page.locator('.app-all').isVisible()), `${forgotten} ${again}`);
  await sheet.after(() => back.tap());
  const given = await start();
  await sheet.tab('Field');
  bench.check('the hour here: taken back the start is as given', given === '02:30' && (await hour.inputValue()) === '', given);
  const clock = await page.evaluate(() => new Date().toTimeString().slice(0, 5));
  await sheet.after(() => page.getByRole('button', { name: "this device's clock" }).tap());
  const taken = await hour.inputValue();
  bench.check("the hour here: a press takes the device's clock", (minutes(taken) - minutes(clock) + 1440) % 1440 <= 1, `${taken} ${clock}`);
  await bench.close('the hour here', sheet);
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
  const [, start] = (await sheet.save('Trip file (TOML)')).toString().match(/^start = "(.*)"$/m) ?? [];
  const left_min = leftAfter(JSON.parse(await bench.run(['page', 'panel', ...bench.exampleArgs])), 2000);
  bench.check('the hour here: where no start was given one is reckoned back from it', start !== undefined && Math.abs(minutes(start) + left_min - 240) <= 0.5 && back === `Take back: Start reckoned at ${start}`, `${start} ${back}`);
  await bench.close('the hour without a start', sheet);
}
