/** Plots of the page docs/validation-three-d.md, plain SVG. */

export interface Dot {
  readonly x: number;
  readonly y: number;
  readonly colour: string;
}

export const COLOURS = { extracardiac: "#06c", "lateral-tunnel": "#b60", atriopulmonary: "#080" } as const;

const FRAME = { width: 400, height: 300, left: 50, right: 380, top: 36, bottom: 262 } as const;

const paper = (title: string, body: string, bottom: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${FRAME.width} ${FRAME.height}" font-family="sans-serif" font-size="11"><rect width="${FRAME.width}" height="${FRAME.height}" fill="#fff"/><text x="50" y="20">${title}</text>${body}<text x="215" y="292" text-anchor="middle">${bottom}</text></svg>\n`;

const scale = (low: number, high: number, from: number, to: number) => (value: number) =>
  Number((from + ((value - low) / (high - low)) * (to - from)).toFixed(1));

const dots = (all: readonly Dot[], x: (value: number) => number, y: (value: number) => number): string =>
  all
    .map(
      (dot) => `<circle cx="${x(dot.x)}" cy="${y(dot.y)}" r="2.6" fill="${dot.colour}" fill-opacity="0.7"/>`,
    )
    .join("");

/** Both axes in decades of one range; the dashed lines lie 15 % to either side of agreement. */
export function parityPlot(title: string, all: readonly Dot[], low: number, high: number): string {
  const x = scale(Math.log(low), Math.log(high), FRAME.left, FRAME.right);
  const y = scale(Math.log(low), Math.log(high), FRAME.bottom, FRAME.top);
  const line = (factor: number, dashed: boolean) =>
    `<path d="M${x(Math.log(low))} ${y(Math.log(low * factor))}L${x(Math.log(high / factor))} ${y(Math.log(high))}" stroke="#888" fill="none"${dashed ? ' stroke-dasharray="4 4"' : ""}/>`;
  const ticks = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100]
    .filter((value) => value >= low && value <= high)
    .map(
      (value) =>
        `<text x="${x(Math.log(value))}" y="276" text-anchor="middle">${value}</text><text x="44" y="${y(Math.log(value)) + 4}" text-anchor="end">${value}</text>`,
    );
  const places = all.map((dot) => ({ ...dot, x: Math.log(dot.x), y: Math.log(dot.y) }));
  return paper(
    title,
    `${line(1, false)}${line(1.15, true)}${line(1 / 1.15, true)}${ticks.join("")}${dots(places, x, y)}`,
    "3D",
  );
}

/** Part by which the law misses, over one quantity. */
export function residualPlot(title: string, all: readonly Dot[], quantity: string): string {
  const values = all.map((dot) => dot.x);
  const low = Math.min(...values);
  const high = Math.max(...values);
  const x = scale(low, high, FRAME.left + 6, FRAME.right - 6);
  const y = scale(-0.45, 0.45, FRAME.bottom, FRAME.top);
  const levels = [-0.3, -0.15, 0, 0.15, 0.3].map(
    (level) =>
      `<path d="M${FRAME.left} ${y(level)}H${FRAME.right}" stroke="${level === 0 ? "#444" : "#ccc"}"/><text x="44" y="${y(level) + 4}" text-anchor="end">${Math.round(100 * level)} %</text>`,
  );
  const ends = `<text x="${FRAME.left}" y="276">${Number(low.toPrecision(3))}</text><text x="${FRAME.right}" y="276" text-anchor="end">${Number(high.toPrecision(3))}</text>`;
  return paper(title, `${levels.join("")}${ends}${dots(all, x, y)}`, quantity);
}
