// What only a browser can tell of the page that draws: node draw.mjs SCHRUND TOOLS_DIR REPOSITORY [PICTURE]
// Prints one line a check and ends with a non-zero code if any failed. With PICTURE it only takes the README's picture.
import { chromium } from 'playwright-core';
import { Bench, counts } from './draw-bench.mjs';
import { fromTheExample } from './draw-example.mjs';
import { fromNothing } from './draw-nothing.mjs';
import { narrow, wide } from './draw-axe.mjs';
import { paintsByDrags, paintsByKeys, undoInFields, wayOfTheTabulator } from './draw-desk.mjs';
import { gapHere, hourAfterMidnight, hourBetween, hourHere, hourWithoutStart } from './draw-hour.mjs';
import { fallenWithoutPlan, firstScreen, headOfTheIce, iceKept, lineOfChanges, onTheWay, ropesLost, ropesShared, underTheThumb } from './draw-field.mjs';
import { calmSteps, opensAgain, otherArchives } from './draw-files.mjs';
import { byKeys, byTouch } from './draw-hands.mjs';
import { staysText } from './draw-hostile.mjs';
import { gravestOnMap, lowPanel } from './draw-phone.mjs';
import { memory, panning, pace } from './draw-pace.mjs';
import { anotherRoute, breaksOff, breaksOffAtOnePlan, firstSteps, noPlan, numbers, otherLetters, sameFileAgain, takesBack } from './draw-trouble.mjs';

const [, , schrund, tools, repository, picture] = process.argv;
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
});
const bench = new Bench(browser, schrund, tools, repository);
if (picture) {
  const sheet = await bench.open(await bench.drawn('picture', bench.exampleArgs), { width: 1200, height: 760 });
  await sheet.page.waitForTimeout(500); // the map is painted a moment after its plan
  await sheet.page.screenshot({ path: picture });
  await browser.close();
  process.exit(0);
}
const start = Date.now();
// Two pages at a time; what is measured is measured alone.
const waiting = [fromTheExample, narrow, wide, byTouch, byKeys, fromNothing, staysText, breaksOff, breaksOffAtOnePlan, otherLetters, noPlan, anotherRoute, sameFileAgain, numbers, takesBack, onTheWay, hourHere, hourBetween, gapHere, hourWithoutStart, hourAfterMidnight, ropesLost, ropesShared, headOfTheIce, lowPanel, gravestOnMap, underTheThumb, iceKept, lineOfChanges, firstScreen, firstSteps, opensAgain, otherArchives, calmSteps, undoInFields, wayOfTheTabulator, paintsByKeys, paintsByDrags, fallenWithoutPlan, memory];
const work = async () => {
  for (let next = waiting.shift(); next; next = waiting.shift()) {
    const began = Date.now();
    await next(bench).catch((error) => bench.check(`${next.name} comes to its end`, false, String(error.stack ?? error)));
    console.log(`     ${next.name}: ${((Date.now() - began) / 1000).toFixed(1)} s`);
  }
};
await Promise.all([work(), work()]);
waiting.push(pace, panning);
await work();
await browser.close();
console.log(`${counts.passed} passed, ${counts.failed} failed, ${((Date.now() - start) / 1000).toFixed(0)} s`);
process.exit(counts.failed === 0 ? 0 : 1);
