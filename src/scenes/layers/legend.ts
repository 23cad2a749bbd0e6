/** What the colours and shapes of this moment mean; always on. */
import type { Graphics } from "pixi.js";
import { ORIGINS } from "../../sim/tracers/tracers.ts";
import type { Colouring, Overlay } from "../../state/scene-state.ts";
import { formatNumber, unitSymbol } from "../../words/index.ts";
import type { Lain, Lettering } from "../drawing/lettering.ts";
import type { Box } from "../scene.ts";
import { bloodColour } from "../theme/colour.ts";
import { LEGIBLE, type MapName, mapColour } from "../theme/maps.ts";
import type { Theme } from "../theme/theme.ts";
import type { Sizes } from "../theme/type.ts";

export interface LegendFacts {
  readonly colouring: Colouring;
  readonly overlay: Overlay;
  /** scale ends of the map in use, in `unit` */
  readonly least: number;
  readonly most: number;
  readonly unit: string;
  /** % by ORIGINS, for the oxygen colouring */
  readonly saturations: readonly [number, number, number];
  readonly dyed: boolean;
  /** one clause under the key: the play speed in words, "panes: equal inflow" ... */
  readonly remarks: readonly string[];
}

/** Draws the key with its top left corner at (x, y); returns the room it took. */
export function drawLegend(
  ink: Graphics,
  words: Lettering,
  facts: LegendFacts,
  at: { readonly x: number; readonly y: number; readonly width: number },
  sizes: Sizes,
  theme: Theme,
): Box {
  const { colour } = theme;
  const size = sizes.axis;
  const row = size * 1.5;
  let y = at.y;
  let widest = 0;
  const write = (text: string, x: number, top: number, soft = false): Lain => {
    const lain = words.write(
      {
        lines: [{ words: text, size, colour: soft ? colour.inkSoft : colour.ink }],
        x,
        y: top,
        bare: true,
        wrap: Math.max(60, at.width - (x - at.x)),
      },
      theme,
    );
    widest = Math.max(widest, lain.x + lain.width - at.x);
    return lain;
  };
  const title =
    facts.overlay === "none"
      ? theme.say(`scene.legend.${facts.colouring}`)
      : theme.say(`scene.legend.map.${facts.overlay}`);
  y += write(title, at.x, y, true).height + size * 0.3;

  if (facts.overlay !== "none" || facts.colouring === "speed" || facts.colouring === "age") {
    const map = (facts.overlay === "none" ? facts.colouring : facts.overlay) as MapName;
    const [from, to] = facts.overlay === "none" ? LEGIBLE[theme.name] : [0, 1];
    const width = Math.min(at.width, size * 10);
    const steps = 48;
    for (let i = 0; i < steps; i++) {
      const [r, g, b] = mapColour(map, from + ((to - from) * (i + 0.5)) / steps);
      ink.rect(at.x + (width * i) / steps, y, width / steps + 0.5, size * 0.75).fill({ color: [r, g, b] });
    }
    ink.rect(at.x, y, width, size * 0.75).stroke({ width: 1, color: colour.hair });
    y += size;
    const digits = facts.most - facts.least < 1.2 ? 2 : facts.most - facts.least < 6 ? 1 : 0;
    write(formatNumber(facts.least, digits), at.x, y);
    const far = words.write(
      {
        lines: [
          {
            words: `${formatNumber(facts.most, digits)} ${unitSymbol(facts.unit)}`,
            size,
            colour: colour.ink,
          },
        ],
        x: at.x + width,
        y,
        anchor: [1, 0],
        bare: true,
      },
      theme,
    );
    y += far.height + size * 0.2;
    widest = Math.max(widest, width);
  }
  if (facts.overlay === "none" && (facts.colouring === "origin" || facts.colouring === "oxygen")) {
    ORIGINS.forEach((origin, index) => {
      const tone =
        facts.colouring === "origin" ? colour.origin[index]! : bloodColour(colour, facts.saturations[index]!);
      shape(ink, index, at.x + size * 0.55, y + row * 0.42, size * 0.36, tone);
      const share =
        facts.colouring === "oxygen"
          ? theme.say(`scene.oxygen.${origin}`, {
              saturation: `${formatNumber(facts.saturations[index]!)} %`,
            })
          : theme.say(`scene.origin.${origin}`);
      y += Math.max(row, write(share, at.x + size * 1.5, y).height + size * 0.25);
    });
  }
  if (facts.dyed) {
    shape(ink, 0, at.x + size * 0.55, y + row * 0.42, size * 0.36, colour.dye);
    y += Math.max(row, write(theme.say("scene.legend.dye"), at.x + size * 1.5, y).height);
  }
  for (const remark of facts.remarks) y += write(remark, at.x, y, true).height + size * 0.15;
  return { x: at.x, y: at.y, width: widest, height: y - at.y };
}

/** The head shapes of layers/tracers.ts, large. */
function shape(ink: Graphics, index: number, x: number, y: number, radius: number, color: string): void {
  if (index === 0) ink.circle(x, y, radius).fill({ color });
  else if (index === 1) ink.circle(x, y, radius * 0.85).stroke({ width: radius * 0.6, color });
  else
    ink
      .poly([x - radius * 1.2, y, x, y - radius * 1.2, x + radius * 1.2, y, x, y + radius * 1.2])
      .fill({ color });
}
