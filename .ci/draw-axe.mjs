// What can be measured of WCAG: every tab and every tool that has fields, narrow and wide, by day and in the dark.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const TABS = ['Plan', 'Zone', 'Trip', 'Field', 'Files'];

// What is only there after something was opened.
async function unfold(sheet, tab) {
  const { page } = sheet;
  await sheet.tab(tab);
  if (tab === 'Plan') await page.locator('.app-leg[data-leg="6"]').click();
  if (tab === 'Zone') await sheet.choose('Tornfall icefall');
  if (tab === 'Trip') await page.getByText('Figures of the rules').click();
  if (tab === 'Field') await page.getByLabel('Kilometre', { exact: true }).fill('6.2');
}

/** All rules by day; in the dark the page is the same in other colours. */
async function look(bench, sheet, where) {
  for (const [colorScheme, runOnly, least] of [['dark', ['color-contrast'], 1], ['light', RULES, 15]]) {
    await sheet.page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    const { found, rules } = await sheet.page.evaluate(audit, runOnly);
    bench.check(`${where}, ${colorScheme}: axe finds nothing in ${rules} ${rules === 1 ? 'rule' : 'rules'}`, found.length === 0 && rules >= least, found.join(' | '));
  }
}

/** After a frame, since what is wider than its room is told apart in one. */
const audit = async (runOnly) => {
  await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  const result = await globalThis.axe.run(document, { runOnly, preload: false, resultTypes: ['violations'] });
  const found = result.violations.map((v) => `${v.id} (${v.nodes.length}): ${v.nodes[0].html.slice(0, 120)} ${v.nodes[0].any[0]?.message ?? ''}`);
  // Of what lies half under something else nobody but an eye can tell.
  return { rules: result.passes.length + result.incomplete.length, found };
};

async function fits(bench, sheet, where) {
  const wide = await sheet.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  bench.check(`${where}: no sideways scroll`, wide <= 0, `${wide} px`);
}

async function at(bench, width) {
  const file = await bench.drawn('axe', bench.exampleArgs);
  const empty = await bench.drawn('axe-empty', []);
  const sheet = await bench.open(file, { width, height: width === 360 ? 740 : 800 });
  await sheet.page.evaluate(axe);
  for (const tab of TABS) {
    await unfold(sheet, tab);
    await look(bench, sheet, `${tab} at ${width} px`);
    await fits(bench, sheet, `${tab} at ${width} px`);
  }
  for (const tool of ['Direction', 'Paint']) {
    await sheet.tool(tool);
    await look(bench, sheet, `${tool} at ${width} px`);
  }
  await bench.close(`the example at ${width} px`, sheet);
  const bare = await bench.open(empty, { width, plans: false });
  await bare.page.evaluate(axe);
  await look(bench, bare, `a page without a route at ${width} px`);
  await bench.close(`a page without a route at ${width} px`, bare);
}

export const narrow = (bench) => at(bench, 360);
export const wide = (bench) => at(bench, 1280);
