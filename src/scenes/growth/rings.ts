/** The tube or chamber with its blood, and the body's own lower vein, in section and to one scale. */
import type { Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt, lastOf, present } from "../../sim/checked/present.ts";
import { pathwaySizes } from "../../sim/geometry/pathways/sizes.ts";
import { dashes } from "../drawing/plot.ts";
import { bloodColour, groundColour, mix } from "../theme/colour.ts";
import type { Say, Theme } from "../theme/theme.ts";

/** What the rings are, with the width of the tube or chamber at both ends of the row. */
export function ringWords(points: readonly SweepPoint[], say: Say): string {
  const { request } = entryAt(points, 0);
  const [low, high] = [request, lastOf(points).request].map((each) =>
    formatQuantity(pathwaySizes(each).trunk, "mm"),
  );
  return say("further.growth.rings", {
    stage: request.stage,
    width: low === high ? present(low) : say("figure.band", { low: present(low), high: present(high) }),
  });
}

/** Centre, CSS px per mm, and size of type (CSS px). */
interface RingPlace {
  readonly x: number;
  readonly y: number;
  readonly perMillimetre: number;
  readonly type: number;
}

/** Without blood in it until the state is solved. */
export function drawRings(
  ink: Graphics,
  { request, circulation }: SweepPoint,
  { x, y, perMillimetre, type }: RingPlace,
  theme: Theme,
): void {
  const { colour } = theme;
  const { trunk, ivc } = pathwaySizes(request);
  const radius = (trunk / 2) * perMillimetre;
  if (circulation) fillBlood(ink, [x, y, radius], circulation.saturations.ivc, theme);
  else ink.circle(x, y, radius).fill({ color: colour.lumen });
  const width = Math.max(2.5, type * 0.16);
  const reach = (ivc / 2) * perMillimetre - width / 2;
  const around: [number, number][] = Array.from({ length: 61 }, (_, k) => [
    x + reach * Math.cos((k * Math.PI) / 30),
    y + reach * Math.sin((k * Math.PI) / 30),
  ]);
  const pieces = dashes(around, [type * 0.4, type * 0.3]);
  for (const [more, color] of [
    [3, colour.stage],
    [0, colour.poor],
  ] as const)
    for (const piece of pieces) {
      ink.moveTo(...entryAt(piece, 0));
      for (const [px, py] of piece.slice(1)) ink.lineTo(px, py);
      ink.stroke({ color, width: width + more });
    }
  // The wall lies outside its lumen, and over the ground of a vein as wide as that.
  const wall = Math.max(3, type * 0.2);
  ink.circle(x, y, radius + wall / 2).stroke({ color: colour.wallEdge, width: wall });
}

/** Round: lighter towards the middle. */
function fillBlood(
  ink: Graphics,
  [x, y, radius]: readonly [x: number, y: number, radius: number],
  saturation: number,
  { colour, name }: Theme,
): void {
  const ground = groundColour(colour, saturation);
  ink.circle(x, y, radius).fill({ color: name === "dark" ? mix(ground, "#000000", 0.25) : ground });
  for (let part = 0.94; part > 0.2; part -= 0.06)
    ink.circle(x, y, radius * part).fill({ color: bloodColour(colour, saturation), alpha: 0.03 });
}
