/** Signs of the tools, drawn with a pen of one width. */

const DRAWINGS: Readonly<Record<string, string>> = {
  pick: "M6 3l12 9-6 1 3 7-3 1-3-7-4 4z",
  draw: "M5 17L4 8l9-4 7 6-4 9zM5 17h.01M4 8h.01M13 4h.01M20 10h.01M16 19h.01",
  paint: "M3 19c5 0 4-7 9-7s4-6 9-7M3 14c3 0 3-6 7-7M9 21c6-1 5-7 12-8",
  outline: "M4 15c-1-5 3-9 8-9s9 3 8 8-5 5-8 4-7 2-8-3zM9 12l2.5 2.5L16 10",
  cut: "M4 8l8-4 8 5-2 9-9 2-5-6zM2 20L22 4",
  hole: "M4 8l8-4 8 5-2 9-9 2-5-6zM10 10l4 0 1 4-4 1z",
  join: "M3 9l6-4 5 4-1 7-7 1zM12 8l5-2 4 5-3 7-6-1",
  strike: "M12 12L19 3M12 12L5 21M12 12m-9 0a9 9 0 1 0 18 0a9 9 0 1 0-18 0",
  split: "M3 7l6-3 2 6-2 8-6-3zM15 6l6 2v9l-6 3-1-7z",
  delete: "M5 7h14M10 7V4h4v3M7 7l1 13h8l1-13M10 11v5M14 11v5",
  legend: "M4 6h5M4 12h3m2 0h1M4 18h6M13 6h7M13 12h7M13 18h7",
  fit: "M4 9V4h5M20 9V4h-5M4 15v5h5M20 15v5h-5",
};

export function icon(name: string): SVGElement {
  const drawing = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  drawing.setAttribute("viewBox", "0 0 24 24");
  drawing.setAttribute("aria-hidden", "true");
  const path = document.createElementNS("http://www.w3.org/2000/svg", "path");
  path.setAttribute("d", DRAWINGS[name] ?? "");
  drawing.append(path);
  return drawing;
}
