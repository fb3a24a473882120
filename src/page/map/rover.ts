/** A bar of buttons that is one stop of the tabulator: arrow keys go on inside it. */

/** Takes the bar; the answer is called whenever buttons of it came or went. */
export function roving(bar: HTMLElement): () => void {
  const all = (): HTMLButtonElement[] => [...bar.querySelectorAll("button")];
  const open = (): HTMLButtonElement[] => all().filter((one) => !one.hidden && !one.disabled);
  let stop: HTMLButtonElement | null = null;
  const settle = (): void => {
    const buttons = open();
    if (!stop || !buttons.includes(stop)) stop = buttons.find((one) => one.ariaPressed === "true") ?? buttons[0] ?? null;
    for (const one of all()) one.tabIndex = one === stop ? 0 : -1;
  };
  bar.addEventListener("focusin", ({ target }) => {
    if (target instanceof HTMLButtonElement) stop = target;
    settle();
  });
  bar.addEventListener("keydown", (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const buttons = open();
    const at = buttons.findIndex((one) => one === document.activeElement);
    const to = { ArrowRight: at + 1, ArrowDown: at + 1, ArrowLeft: at - 1, ArrowUp: at - 1, Home: 0, End: buttons.length - 1 }[event.key];
    if (at < 0 || to === undefined) return;
    event.preventDefault();
    buttons[(to + buttons.length) % buttons.length]?.focus();
  });
  settle();
  return settle;
}
