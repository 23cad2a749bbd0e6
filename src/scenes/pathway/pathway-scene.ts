/** The pathway scene: one to three pathways, the grade line beneath them, and the key to their colours. */
import { Container, Graphics } from "pixi.js";
import type { Frame, Pane } from "../../chain/frame.ts";
import { entryAt, present } from "../../sim/checked/present.ts";
import { lettering } from "../drawing/lettering.ts";
import { gradeLineLayer } from "../layers/grade-line-layer.ts";
import { drawHandles } from "../layers/handles.ts";
import type { LegendPlace } from "../layers/legend.ts";
import { spotsOf } from "../layers/spots.ts";
import { type Box, type Scene, type Viewport, WITH_ALL } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { type Sizes, sizes as typeSizes } from "../theme/type.ts";
import { annotate, writeKey, writeTitle } from "./annotations.ts";
import { grounds } from "./grounds.ts";
import type { HeartView } from "./heart-view.ts";
import type { PaneView } from "./pane-view.ts";
import { keyPlace, type Layout, layout } from "./pathway-layout.ts";
import { planes } from "./planes.ts";
import { washOutForm } from "./wash-out-form.ts";

/** CSS px: radius of a drawn handle; the page's own target over it is larger. */
const HANDLE = 11;
/** Part of the grade line's height by which its ground reaches up softly; where there is none, that of the picture in which a body cut off sinks. */
const SOFT = 0.3;
const FOOT = 0.12;
const foot = ({ x, y, width, height }: Box): Box => ({
  x,
  y: y + height * (1 - FOOT / 3),
  width,
  height: height * FOOT,
});

/** How this drawing is laid out. */
interface Laid {
  readonly at: Layout;
  readonly keyAt: LegendPlace;
  /** null before the first drawing */
  readonly key: Box | null;
  readonly sizes: Sizes;
}

/** @param makeHeart draws a pane whose blood is pumped to the lungs; without it such a pane stays empty */
export const makePathway = (makeHeart?: () => HeartView): Scene => {
  const view = new Container();
  const ground = grounds();
  const shown = planes(makeHeart);
  const grade = gradeLineLayer();
  const [ink, handles] = [new Graphics(), new Graphics()];
  const words = lettering();
  view.addChild(ground.behind, shown.view, ...ground.before, grade.view, ink, words.view, handles);
  let lain: Layout | null = null;
  let keyBox: Box | null = null;
  let answers: readonly (Pane["circulation"] | Pane["before"])[] = [];
  let lastKey = "";

  const drawPictures = (frame: Frame, laid: Laid, viewport: Viewport, theme: Theme) => {
    const { at, keyAt, key, sizes } = laid;
    shown.keep(frame.panes.length);
    shown.draw(frame, { planes: at.planes, hearts: heartBoxes(laid) }, viewport, theme);
    const edge = keyAt.inline && key ? key.y + key.height : viewport.clear.y;
    const under = sinkOf(at) ?? (shown.cut ? foot(viewport.clear) : null);
    ground.draw(viewport, under, { ...viewport.clear, y: edge, height: sizes.axis }, theme);
    grade.view.visible = at.grade !== null;
  };

  const write = (frame: Frame, { at, keyAt, key, sizes }: Laid, viewport: Viewport, theme: Theme) => {
    const { focus, labels, handles: held } = frame.state.view;
    const sheet = { ink, words, sizes, theme };
    ink.clear();
    handles.clear();
    words.begin();
    const written = writeKey(sheet, frame, keyAt, key, Number.isFinite(viewport.elapsed));
    at.titles.forEach((box, i) => {
      writeTitle(sheet, entryAt(frame.panes, i), box);
    });
    const compared = frame.panes.length > 1;
    // Beside a pane in which something is pointed at, the others keep silent.
    const silent = !labels || (compared && shown.panes.some((each) => points(each, focus)));
    const crowded = compared || at.narrow;
    const form = washOutForm(frame.panes, shown.panes, at.planes, written, sizes);
    const size = HANDLE * Math.max(1, viewport.floor / 20);
    frame.panes.forEach((pane, i) => {
      const drawn = entryAt(shown.panes, i);
      const box = entryAt(at.planes, i);
      const near = compared && at.narrow;
      annotate(sheet, { pane, drawn, box, key: written, form, focus, crowded, near, silent });
      if (held && drawn.geometry && drawn.projection)
        drawHandles(
          handles,
          drawn.geometry.handles,
          (point) => present(drawn.toScreen(point)),
          { size, focus },
          theme,
        );
    });
    words.end();
    if (at.grade) grade.draw(frame.panes, at.grade, focus, sizes, theme);
    return written;
  };

  return {
    view,
    draw(frame, viewport, theme) {
      const laid = layOut(frame, viewport, keyBox);
      lain = laid.at;
      drawPictures(frame, laid, viewport, theme);
      // Lines and words are laid out again only when something about them has changed.
      const key = cacheKey(frame, viewport, theme, shown.panes, keyBox);
      const now = frame.panes.flatMap(({ circulation, before }) => [circulation, before]);
      if (key === lastKey && now.every((each, i) => each === answers[i])) return;
      answers = now;
      keyBox = write(frame, laid, viewport, theme);
      // The key's own room may move the planes: then once more.
      lastKey = cacheKey(frame, viewport, theme, shown.panes, keyBox);
    },
    toScreen: (point, pane) => shown.panes[pane]?.toScreen(point) ?? null,
    pick(x, y) {
      const onLine = grade.view.visible ? grade.pick(x, y) : null;
      if (onLine) return { name: onLine, pane: 0 };
      const pane = lain?.planes.findIndex((box) => within(box, x, y)) ?? -1;
      const name = pane < 0 ? null : shown.pick(pane, x, y);
      return name ? { name, pane } : null;
    },
    release() {
      shown.keep(0);
      ground.release();
      view.destroy(WITH_ALL);
    },
  };
};

function layOut({ panes, state }: Frame, { clear, floor }: Viewport, key: Box | null): Laid {
  const sizes = typeSizes(clear.height, floor);
  const keyAt = keyPlace(clear, panes.length, sizes);
  const taken = key ?? { ...keyAt, height: 0 };
  return { at: layout(clear, panes.length, state.view.gradeLine, taken, sizes), keyAt, key, sizes };
}

/** Words keep off a key beside the picture and off the ground under the grade line. */
function heartBoxes({ at, keyAt, key, sizes }: Laid): readonly Box[] {
  return at.planes.map((box) => {
    const aside = keyAt.inline || !key ? 0 : key.x + key.width + sizes.axis - box.x;
    const soft = at.grade && at.grade.y > box.y ? SOFT * at.grade.height : 0;
    return {
      x: box.x + aside,
      y: box.y,
      width: Math.max(1, box.width - aside - sizes.axis),
      height: Math.max(1, box.height - soft),
    };
  });
}

/** The grade line's ground under the vessels; beside them it stands on ground that nothing else uses. */
const sinkOf = ({ grade, planes }: Layout): Box | null =>
  grade && grade.y > entryAt(planes, 0).y ? grade : null;

/** All that the lines and words depend on, beside the circulations. */
function cacheKey(
  frame: Frame,
  { full, clear, floor }: Viewport,
  theme: Theme,
  panes: readonly PaneView[],
  key: Box | null,
): string {
  const { playSpeed: _, ...asked } = frame.state.view;
  return JSON.stringify([
    full,
    clear,
    floor,
    theme.name,
    theme.say("place.leftPulmonaryArtery"),
    asked,
    key,
    frame.still ? "still" : frame.pace.toFixed(1),
    frame.panes.map(({ washOut }) => washOut?.time.length),
    frame.panes.map(({ field }) => field && (asked.overlay === "none" || field.readings.settled)),
    panes.map(({ projection, geometry }) => [projection, geometry?.handles.map(({ at }) => at)]),
  ]);
}

const points = ({ geometry }: PaneView, focus: string | null): boolean =>
  geometry !== null && spotsOf(geometry, focus).length > 0;

const within = (box: Box, x: number, y: number): boolean =>
  x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;
