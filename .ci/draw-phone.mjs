// On a small screen: what stays in sight of a low panel, and what has room on a small map.

const open = async (bench, name, size) => bench.open(await bench.drawn(name, bench.exampleArgs), { touch: true, ...size });

/** In a low panel, as of a phone on its side or with its keyboard: what to do and the way back stay in sight, and hide nothing that is worked on. */
export async function lowPanel(bench) {
  for (const [width, height] of [[740, 360], [360, 440]]) {
    const sheet = await open(bench, 'low', { width, height });
    const { page } = sheet;
    await sheet.tab('Field');
    await page.getByLabel('Kilometre', { exact: true }).fill('6.2');
    await sheet.after(() => page.locator('.app-field-mode').getByRole('button', { name: '− Ben', exact: true }).tap());
    const head = await page.evaluate(() => {
      const [panel, pinned, ...parts] = ['.app-panel:not([hidden])', '.app-pinned', '.app-answer > :nth-child(1)', '.app-answer > :nth-child(2)', '.app-pinned .app-wide'].map((name) => document.querySelector(name).getBoundingClientRect());
      return { scrolled: document.querySelector('.app-panel:not([hidden])').scrollTop, off: pinned.top - panel.top, share: pinned.height / panel.height, whole: parts.every((one) => one.height > 10 && one.top >= pinned.top && one.bottom <= pinned.bottom) };
    });
    bench.check(`low panel, ${width} × ${height}: what to do and the way back are whole in sight beside the buttons of the party, in about two fifths of the height`, head.scrolled > 100 && Math.abs(head.off) < 1 && head.share < 0.43 && head.whole, JSON.stringify(head));
    const hidden = [];
    await page.locator('.app-panel:not([hidden])').focus();
    for (const key of [...Array(30).fill('Tab'), ...Array(30).fill('Shift+Tab')]) {
      await page.keyboard.press(key);
      hidden.push(await page.evaluate(() => {
        const one = document.activeElement;
        if (!one.closest('.app-field-mode') || one.closest('.app-pinned') || one.matches('[tabindex]')) return '';
        const [box, panel, pinned] = [one, one.closest('.app-panel'), document.querySelector('.app-pinned')].map((each) => each.getBoundingClientRect());
        return box.top < pinned.bottom - 1 || box.bottom > panel.bottom + 1 ? `${one.textContent || one.id} ${box.top} under ${pinned.bottom}` : 'seen';
      }));
    }
    const under = hidden.filter((one) => one && one !== 'seen');
    bench.check(`low panel, ${width} × ${height}: no focus is under the head, the kilometre neither`, under.length === 0 && hidden.filter(Boolean).length > 20, under.join(' | '));
    await bench.close('low panel', sheet);
  }
}

/** What is written on the map, and the boxes round it, since it was drawn last. */
const listens = () => {
  const pen = CanvasRenderingContext2D.prototype;
  const on = (name, act) => { const own = pen[name]; pen[name] = function (...args) { if (this.canvas.matches('.map-ink')) act(...args); return own.apply(this, args); }; };
  globalThis.drawn = { texts: [], boxes: [] };
  on('clearRect', () => { globalThis.drawn = { texts: [], boxes: [] }; });
  on('fillText', (text) => globalThis.drawn.texts.push(text));
  on('roundRect', (...box) => globalThis.drawn.boxes.push(box));
};

/** The gravest legs have their numbers on the small map of a phone, and no box is cut at its rim. */
export async function gravestOnMap(bench) {
  const { legs } = JSON.parse(await bench.run(['page', 'panel', ...bench.exampleArgs]));
  const grave = legs.filter(({ verdict }) => !['unroped', 'inside'].includes(verdict)).map(({ leg }) => String(leg));
  for (const [width, height] of [[360, 740], [740, 360]]) {
    const sheet = await open(bench, 'gravest', { width, height, before: listens });
    await sheet.page.waitForTimeout(500); // the map is painted a moment after its plan
    const { texts, boxes, size } = await sheet.page.evaluate(() => ({ ...globalThis.drawn, size: [document.querySelector('.map-ink').clientWidth, document.querySelector('.map-ink').clientHeight] }));
    const missing = grave.filter((leg) => !texts.some((text) => text.split(' ')[0] === leg && !text.endsWith('m')));
    bench.check(`map of ${width} × ${height}: all ${grave.length} legs that are worse than inside have their numbers`, grave.includes('6') && missing.length === 0, `${missing} missing of ${texts}`);
    const cut = boxes.filter(([x, y, wide, high]) => x < 1 || y < 1 || x + wide > size[0] - 1 || y + high > size[1] - 1);
    bench.check(`map of ${width} × ${height}: none of ${boxes.length} boxes is cut at the rim`, boxes.length > grave.length && cut.length === 0, JSON.stringify(cut));
    await bench.close('gravest on the map', sheet);
  }
}
