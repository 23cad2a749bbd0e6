/** The picture of the architecture: folders in levels, each arrow pointing down. */
import { type Arrow, levels } from "./rooms.ts";

const [WIDTH, ROW, BOX, MARGIN] = [1180, 92, 34, 46];
/** px: width of a letter in the boxes, and the margin around a word */
const [LETTER, AROUND] = [8.4, 26];

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

/** An arrow that a chain of others implies is drawn faintly. */
function implied({ from, to }: Arrow, values: readonly Arrow[]): boolean {
  const reaches = (room: string): boolean =>
    room === to || values.some((next) => next.from === room && reaches(next.to));
  return values.some((next) => next.from === from && next.to !== to && reaches(next.to));
}

/** Places folders in their levels, each row in the order that brings folders nearest to what they import. */
function place(arrows: readonly Arrow[]): Map<string, Box> {
  const heights = levels(arrows);
  const top = Math.max(...heights.values());
  const boxes = new Map<string, Box>();
  for (let level = 0; level <= top; level++) {
    const middle = (room: string) => {
      const under = arrows.flatMap(({ from, to }) =>
        from === room && boxes.has(to) ? [boxes.get(to)!.x] : [],
      );
      return under.length ? under.reduce((sum, x) => sum + x, 0) / under.length : WIDTH / 2;
    };
    const row = [...heights].flatMap(([room, height]) => (height === level ? [room] : []));
    row.sort((a, b) => middle(a) - middle(b) || (a < b ? -1 : 1));
    row.forEach((room, index) => {
      boxes.set(room, {
        x: ((index + 0.5) / row.length) * (WIDTH - 2 * MARGIN) + MARGIN + (level % 2 ? 24 : -24),
        y: MARGIN + (top - level) * ROW,
        width: room.length * LETTER + AROUND,
      });
    });
  }
  return boxes;
}

export function drawArchitecture(arrows: readonly Arrow[]): string {
  const values = arrows.filter(({ typeOnly }) => !typeOnly);
  const boxes = place(arrows);
  const kindOf = (arrow: Arrow) => (arrow.typeOnly ? "types" : implied(arrow, values) ? "implied" : "plain");
  const line = (kind: string, { from, to, typeOnly }: Arrow): string => {
    const [a, b] = [boxes.get(from)!, boxes.get(to)!];
    const down = b.y > a.y;
    const [start, end] = down ? [a.y + BOX, b.y - 5] : [a.y + BOX / 2, b.y + BOX + 5];
    const bend = Math.max(30, Math.abs(end - start) * 0.45) * (down ? 1 : -1);
    const [x1, y1, x2, y2] = [a.x, start + bend, b.x, end - bend].map((px) => px.toFixed(0));
    const path = `M${x1} ${start} C${x1} ${y1} ${x2} ${y2} ${x2} ${end}`;
    return `<path class="${kind}" marker-end="url(#tip)" d="${path}"><title>${from} imports ${typeOnly ? "types of " : ""}${to}</title></path>`;
  };
  const box = ([room, { x, y, width }]: [string, Box]): string =>
    `<g class="${room.startsWith("sim") ? "sim" : "room"}"><rect x="${(x - width / 2).toFixed(0)}" y="${y}" width="${width.toFixed(0)}" height="${BOX}" rx="6"/><text x="${x.toFixed(0)}" y="${y + 22}">${room}</text></g>`;
  // What matters most is drawn last, on top.
  const drawn = ["types", "implied", "plain"].flatMap((kind) =>
    arrows.flatMap((arrow) => (kindOf(arrow) === kind ? [line(kind, arrow)] : [])),
  );
  const height = Math.max(...[...boxes.values()].map(({ y }) => y)) + BOX + MARGIN;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" role="img">
<title>Rooms of src and what they import</title>
<style>
.ground { fill: #f7f5f0; }
text { font: 15px sans-serif; text-anchor: middle; fill: #16181f; }
rect { stroke: #3a4766; stroke-width: 1.4; }
.room rect { fill: #dfe6f5; }
.sim rect { fill: #f6e3c8; }
path { fill: none; stroke: #3a4766; stroke-width: 1.7; }
path.implied { stroke: #3a4766; stroke-width: 0.8; opacity: 0.4; }
path.types { stroke: #8a5a00; stroke-width: 0.9; stroke-dasharray: 3 4; opacity: 0.6; }
#tip path { fill: #3a4766; stroke: none; }
</style>
<defs><marker id="tip" viewBox="0 0 8 8" refX="7" refY="4" markerWidth="7" markerHeight="7" orient="auto" markerUnits="userSpaceOnUse"><path d="M0 0L8 4L0 8Z"/></marker></defs>
<rect class="ground" width="${WIDTH}" height="${height}" style="stroke:none"/>
${drawn.join("\n")}
${[...boxes].map(box).join("\n")}
</svg>
`;
}
