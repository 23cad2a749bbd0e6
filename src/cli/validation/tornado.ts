/** The tornado figure: for each output the settings that move it most, as bars to both sides of the usual. SVG text. */
import { OUTPUTS, type Swing } from "./sensitivity.ts";

/** px */
const PANEL = { width: 400, height: 178, columns: 2, bars: 6, row: 22, top: 44 };
const MIDDLE = 272;
const HALF = 84;
/** %: where a bar is cut short; its number says how far it would go */
const WIDEST = 40;
const COLOUR = { less: "#0a6a9c", more: "#b3541e", ink: "#1c2733", quiet: "#9aa4ad" };

interface Bar {
  readonly name: string;
  /** % of the usual, the setting a fifth down and up */
  readonly less: number;
  readonly more: number;
}

function barsOf(swings: readonly Swing[], output: number): readonly Bar[] {
  const percent = (value: number, usual: number) => (usual === 0 ? 0 : 100 * (value / usual - 1));
  const reach = ({ less, more }: Bar) => Math.max(Math.abs(less), Math.abs(more));
  return swings
    .map(({ name, outputs }) => {
      const [less, usual, more] = outputs[output] ?? [0, 0, 0];
      return { name, less: percent(less, usual), more: percent(more, usual) };
    })
    .sort((a, b) => reach(b) - reach(a))
    .slice(0, PANEL.bars)
    .filter((bar) => reach(bar) >= 0.5);
}

const along = (percent: number): number =>
  MIDDLE + (HALF * Math.max(-WIDEST, Math.min(WIDEST, percent))) / WIDEST;

function side(percent: number, y: number, colour: string): string {
  const [from, to] = [along(0), along(percent)].sort((a, b) => a - b) as [number, number];
  const bar = `<rect x="${from.toFixed(1)}" y="${y}" width="${(to - from).toFixed(1)}" height="15" fill="${colour}"/>`;
  if (Math.abs(percent) < 0.5) return bar;
  const [x, anchor] = percent > 0 ? [to + 3, "start"] : [from - 3, "end"];
  const text = `${percent > 0 ? "+" : "\u2212"}${Math.abs(Math.round(percent))}`;
  return `${bar}<text x="${x.toFixed(1)}" y="${y + 12}" text-anchor="${anchor}" font-size="11">${text}</text>`;
}

function panel(name: string, bars: readonly Bar[], at: number): string {
  const x = (at % PANEL.columns) * PANEL.width;
  const y = PANEL.top + Math.floor(at / PANEL.columns) * PANEL.height;
  const rows = bars.map((bar, i) => {
    const top = 12 + i * PANEL.row;
    // Where both ends lie on one side, the longer bar is drawn first and the shorter over it.
    const sides = [side(bar.less, top, COLOUR.less), side(bar.more, top, COLOUR.more)];
    if (Math.abs(bar.more) > Math.abs(bar.less)) sides.reverse();
    return `<text x="152" y="${top + 12}" text-anchor="end" font-size="11">${bar.name}</text>${sides.join("")}`;
  });
  return `<g transform="translate(${x} ${y})"><text x="8" y="2" font-weight="bold">${name}</text>${rows.join("")}<path d="M${MIDDLE} 8V${12 + PANEL.bars * PANEL.row}" stroke="${COLOUR.quiet}"/></g>`;
}

export function tornadoFigure(swings: readonly Swing[]): string {
  const width = PANEL.columns * PANEL.width;
  const height = PANEL.top + Math.ceil(OUTPUTS.length / PANEL.columns) * PANEL.height;
  const key = (x: number, colour: string, text: string) =>
    `<rect x="${x}" y="10" width="14" height="14" fill="${colour}"/><text x="${x + 20}" y="22">${text}</text>`;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" font-family="sans-serif" font-size="13" fill="${COLOUR.ink}"><rect width="${width}" height="${height}" fill="#fff"/>${key(8, COLOUR.less, "setting a fifth down")}${key(190, COLOUR.more, "setting a fifth up")}<text x="372" y="22">change in % of the usual; bars end at ${WIDEST}</text>${OUTPUTS.map(([name], i) => panel(name, barsOf(swings, i), i)).join("")}</svg>\n`;
}
