/** What the colours and shapes of this moment mean; always on. */
import type { Graphics } from "pixi.js";
import { formatNumber, formatQuantity } from "../../i18n/index.ts";
import { ORIGINS } from "../../sim/tracers/tracers.ts";
import type { Colouring, Overlay } from "../../state/scene-state.ts";
import type { Lain, Lettering } from "../drawing/lettering.ts";
import type { Box } from "../scene.ts";
import { bloodColour } from "../theme/colour.ts";
import { LEGIBLE, type MapName, mapColour } from "../theme/maps.ts";
import type { Theme } from "../theme/theme.ts";
import type { Sizes } from "../theme/type.ts";
import { SCALES } from "./scales.ts";

export interface LegendFacts {
  readonly colouring: Colouring;
  readonly overlay: Overlay;
  /** % by ORIGINS, for the oxygen colouring */
  readonly saturations: readonly [number, number, number];
  /** by ORIGINS: whether blood of that origin is in the picture */
  readonly origins: readonly boolean[];
  /** a heart with two ventricles is in the picture: its blood is told by its oxygen */
  readonly pumped: boolean;
  /** nothing moves: marks are darts */
  readonly still: boolean;
  readonly dyed: boolean;
  /** clauses after the key: the play speed in words, "equal inflow" ... */
  readonly remarks: readonly string[];
}

export interface LegendPlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  /** one after another like words in a line, instead of one below another */
  readonly inline: boolean;
}

/** Draws the key with its top left corner at the place; returns the room it took. */
export function drawLegend(
  ink: Graphics,
  words: Lettering,
  facts: LegendFacts,
  at: LegendPlace,
  sizes: Sizes,
  theme: Theme,
): Box {
  const { colour } = theme;
  const size = sizes.axis;
  const row = size * 1.5;
  const right = at.x + at.width;
  let x = at.x;
  let y = at.y;
  let widest = 0;
  const text = (says: string, left: number, soft: boolean, breaks: boolean): Lain =>
    words.write(
      {
        lines: [{ words: says, size, colour: soft ? colour.inkSoft : colour.ink }],
        x: left,
        y,
        bare: true,
        ...(breaks ? { wrap: Math.max(4 * size, right - left) } : {}),
      },
      theme,
    );
  /** Begins a row where the next item would not fit. */
  const roomFor = (width: number) => {
    if (!at.inline || x === at.x || x + width <= right) return;
    x = at.x;
    y += row;
  };
  /** `lead`: px that a mark in front takes; `mark` draws it with its left edge at x. */
  const item = (says: string, soft: boolean, lead = 0, mark?: (left: number) => void) => {
    roomFor(lead + says.length * size * 0.5);
    mark?.(x);
    const lain = text(says, x + lead, soft, mark === undefined);
    widest = Math.max(widest, lain.x + lain.width - at.x);
    if (at.inline) x = lain.x + lain.width + 1.3 * size;
    else y += Math.max(row, lain.height + size * 0.25);
  };

  const mapped = facts.overlay !== "none" || facts.colouring === "speed" || facts.colouring === "age";
  const flows = facts.origins.some(Boolean);
  if (flows)
    item(
      theme.say(
        facts.overlay === "none" ? `scene.legend.${facts.colouring}` : `scene.legend.map.${facts.overlay}`,
      ),
      true,
    );
  if (flows && mapped) scale();
  else if (flows) {
    ORIGINS.forEach((origin, index) => {
      if (!facts.origins[index]) return;
      const saturation = facts.saturations[index]!;
      const tone = facts.colouring === "origin" ? colour.origin[index]! : bloodColour(colour, saturation);
      const says =
        facts.colouring === "oxygen"
          ? theme.say(`scene.oxygen.${origin}`, { saturation: formatQuantity(saturation, "%") })
          : theme.say(`scene.origin.${origin}`);
      item(says, false, 1.5 * size, (left) =>
        shape(ink, index, left + size * 0.55, y + size * 0.62, size * 0.36, tone),
      );
    });
  }
  if (facts.pumped) {
    const said = facts.still ? "Still" : "";
    const marks = [
      [theme.say(`further.legend.poor${said}`), colour.poor],
      [theme.say(`further.legend.rich${said}`), colour.rich],
    ] as const;
    marks.forEach(([says, tone], rich) => {
      item(says, false, 1.5 * size, (left) =>
        (facts.still ? dart : shape)(ink, rich, left + size * 0.55, y + size * 0.62, size * 0.36, tone),
      );
    });
  }
  if (facts.dyed) {
    item(theme.say("scene.legend.dye"), false, 1.5 * size, (left) =>
      shape(ink, 0, left + size * 0.55, y + size * 0.62, size * 0.36, colour.dye),
    );
  }
  for (const remark of facts.remarks) item(remark, true);
  return { x: at.x, y: at.y, width: widest, height: (at.inline ? y + row : y) - at.y };

  function scale(): void {
    const map = (facts.overlay === "none" ? facts.colouring : facts.overlay) as MapName;
    const [from, to] = facts.overlay === "none" ? LEGIBLE[theme.name] : [0, 1];
    const { least, most, unit, digits } = SCALES[map];
    const width = Math.min(at.width * 0.5, size * 8);
    // Where heat arises is a picture only: a number on it would be read as the pathway's loss.
    const [low, high] =
      map === "loss"
        ? [theme.say("scene.legend.little"), theme.say("scene.legend.much")]
        : [
            least === 0
              ? formatNumber(0, 0)
              : theme.say("scene.legend.orLess", { value: formatNumber(least, digits) }),
            theme.say("scene.legend.orMore", { value: formatQuantity(most, unit, digits) }),
          ];
    const bar = (left: number) => {
      const steps = 48;
      for (let i = 0; i < steps; i++) {
        const [r, g, b] = mapColour(map, from + ((to - from) * (i + 0.5)) / steps);
        ink
          .rect(left + (width * i) / steps, y + size * 0.25, width / steps + 0.5, size * 0.75)
          .fill({ color: [r, g, b] });
      }
      ink.rect(left, y + size * 0.25, width, size * 0.75).stroke({ width: 1, color: colour.hair });
    };
    // Low end, bar, high end, as one item.
    roomFor(width + (low.length + high.length + 4) * size * 0.55);
    const before = text(low, x, false, false).width + size * 0.4;
    item(high, false, before + width + size * 0.4, (left) => bar(left + before));
  }
}

/** The head shapes of layers/tracer-mesh.ts, large. */
function shape(ink: Graphics, index: number, x: number, y: number, radius: number, color: string): void {
  if (index === 0) ink.circle(x, y, radius).fill({ color });
  else if (index === 1) ink.circle(x, y, radius * 0.85).stroke({ width: radius * 0.6, color });
  else
    ink
      .poly([x - radius * 1.2, y, x, y - radius * 1.2, x + radius * 1.2, y, x, y + radius * 1.2])
      .fill({ color });
}

/** A still mark that points the way of the blood: full, or (1) open. */
function dart(ink: Graphics, index: number, x: number, y: number, radius: number, color: string): void {
  ink.poly([x - radius, y - radius, x + 1.3 * radius, y, x - radius, y + radius]);
  if (index === 0) ink.fill({ color });
  else ink.stroke({ width: radius * 0.5, color });
}
