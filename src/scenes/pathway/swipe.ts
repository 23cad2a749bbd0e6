/** Two pathways one over the other in one body: what is seen of each, the divider between them, and what each takes. */
import type { Frame, Pane } from "../../chain/frame.ts";
import { entryAt, present } from "../../sim/checked/present.ts";
import { lettering } from "../drawing/lettering.ts";
import type { Box, Divider, Viewport } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { type Sizes, sizesIn } from "../theme/type.ts";
import { extent, keyPlace, type Laid, layout, project, type Sight } from "./pathway-layout.ts";
import type { Swipe } from "./pathway-scene.ts";
import { type Titles, titlesOf } from "./swipe-titles.ts";

interface Room {
  readonly width: number;
  readonly height: number;
}

export function swipe(): Swipe {
  const ruler = lettering();
  let titles: Titles = [];
  let room: Room = { width: 0, height: 0 };
  let known = "";

  const measure = (frame: Frame, sizes: Sizes, theme: Theme) => {
    titles = titlesOf(frame.panes, sizes, theme);
    const key = JSON.stringify([titles, theme.name]);
    if (key === known) return;
    known = key;
    const taken = titles.map((lines) => ruler.measure({ lines }, theme));
    room = {
      width: Math.max(0, ...taken.map(({ width }) => width)),
      height: Math.max(0, ...taken.map(({ height }) => height)),
    };
  };

  return {
    lay(frame, viewport, key, theme) {
      const sizes = sizesIn(viewport.clear, viewport.floor);
      measure(frame, sizes, theme);
      return layOver(frame, viewport, key, { sizes, room });
    },
    write({ ink, words, theme }, { at, over }) {
      const { x, top, bottom } = present(over).divider;
      const line = (width: number, color: string) =>
        ink.moveTo(x, top).lineTo(x, bottom).stroke({ width, color });
      line(5, theme.colour.plate);
      line(2, theme.colour.ink);
      return titles.map((lines, i) => {
        const box = entryAt(at.titles, i);
        // Each leans on the body.
        return words.write({ lines, x: box.x + (1 - i) * box.width, y: box.y, anchor: [1 - i, 0] }, theme);
      });
    },
  };
}

interface Asked {
  readonly sizes: Sizes;
  /** that each title takes */
  readonly room: Room;
}

/** Titles stand beside the body where it leaves room for them, else above it. */
export function layOver(
  { panes, state }: Frame,
  { full, clear }: Pick<Viewport, "full" | "clear">,
  key: Box | null,
  { sizes, room }: Asked,
): Laid {
  const sight = sightOf(panes);
  const { gradeLine, camera, swipe } = state.view;
  const gap = Math.round(0.8 * sizes.axis);
  const lay = (keys: number) => {
    const keyAt = keyPlace(clear, keys, sizes);
    const at = layout(clear, keys, gradeLine, key ?? { ...keyAt, height: 0 }, sizes);
    return { keyAt, at, box: around(at.planes) };
  };
  const alone = lay(1);
  const beside = bodyIn(alone.box, sight);
  const aside = !alone.keyAt.inline && beside.from - alone.box.x >= room.width + gap;
  const { keyAt, at, box: whole } = aside ? alone : lay(2);
  const rise = aside ? 0 : room.height + gap;
  const box = { ...whole, y: whole.y + rise, height: Math.max(1, whole.height - rise) };
  const { from, to } = camera === "whole" ? bodyIn(box, sight) : { from: box.x, to: box.x + box.width };
  const share = present(swipe) / 100;
  const x = from + share * (to - from);
  // At either end one of the two is seen whole.
  const edge = share === 0 ? full.x : share === 1 ? full.x + full.width : x;
  const sides = [
    { ...full, width: edge - full.x },
    { ...full, x: edge, width: full.x + full.width - edge },
  ];
  const divider: Divider = { x, from, to, top: box.y, bottom: box.y + box.height };
  const level = aside ? box.y + (box.height - room.height) / 2 : whole.y;
  const middle = (from + to) / 2;
  const [left, right] = aside
    ? [from - gap - room.width, to + gap]
    : [
        Math.max(box.x, Math.min(from, middle - room.width - gap / 2)),
        Math.min(box.x + box.width, Math.max(to, middle + room.width + gap / 2)) - room.width,
      ];
  const title = { y: level, ...room };
  return {
    at: {
      ...at,
      planes: [box, box],
      titles: [
        { ...title, x: left },
        { ...title, x: right },
      ],
    },
    keyAt,
    key,
    sizes,
    over: { sides, sight, divider },
  };
}

function around(boxes: readonly Box[]): Box {
  const [left, top] = [Math.min(...boxes.map(({ x }) => x)), Math.min(...boxes.map(({ y }) => y))];
  return {
    x: left,
    y: top,
    width: Math.max(...boxes.map(({ x, width }) => x + width)) - left,
    height: Math.max(...boxes.map(({ y, height }) => y + height)) - top,
  };
}

/** Both bodies' room, so that both lie at one place and in one scale. */
function sightOf(panes: readonly Pane[]): Sight {
  const both = panes.map(({ geometry }) => extent(present(geometry)));
  const least = (side: 0 | 1) => Math.min(...both.map((each) => each[side]));
  const most = (side: 2 | 3) => Math.max(...both.map((each) => each[side]));
  return {
    extent: [least(0), least(1), most(2), most(3)],
    places: present(panes[0]?.geometry).places,
  };
}

/** Left and right edge of the body that fills this box. */
function bodyIn(box: Box, { extent: [left, bottom, right, top] }: Sight) {
  const { scale, x } = project(box, [left, bottom, right, top]);
  return {
    from: Math.max(box.x, x + scale * left),
    to: Math.min(box.x + box.width, x + scale * right),
  };
}
