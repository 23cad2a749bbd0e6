/** The pathway scene: one to three pathways, the grade line beneath them, and the key to their colours. */
import { Container, Graphics } from "pixi.js";
import type { Frame, Pane } from "../../chain/frame.ts";
import { entryAt, present } from "../../sim/checked/present.ts";
import type { Sheet } from "../drawing/drawing-sheet.ts";
import { lettering } from "../drawing/lettering.ts";
import { gradeLineLayer } from "../layers/grade-line-layer.ts";
import { drawHandles, type HandleLook } from "../layers/handles.ts";
import { spotsOf } from "../layers/spots.ts";
import { type Box, type Scene, type Viewport, WITH_ALL } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { annotate, underTitles, writeKey, writeTitle } from "./annotations.ts";
import { firstDrawings } from "./first-drawings.ts";
import { grounds, type Sinks } from "./grounds.ts";
import type { HeartView, WordsRoom } from "./heart-view.ts";
import type { PaneView, Room } from "./pane-view.ts";
import { type Laid, layOut } from "./pathway-layout.ts";
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

/** What draws the panes where they do not simply stand beside each other. */
export interface Further {
  /** a pane whose blood is pumped to the lungs; without it such a pane stays empty */
  readonly makeHeart?: () => HeartView;
  /** two pathways, one over the other */
  readonly swipe?: Swipe;
}

export interface Swipe {
  lay(frame: Frame, viewport: Viewport, key: Box | null, theme: Theme): Laid;
  /** Line and titles; returns what they take. */
  write(sheet: Sheet, laid: Laid): readonly Box[];
}

export const makePathway = ({ makeHeart, swipe }: Further = {}): Scene => {
  const view = new Container();
  const ground = grounds();
  const shown = planes(makeHeart);
  const grade = gradeLineLayer();
  const opening = firstDrawings();
  const [ink, handles] = [new Graphics(), new Graphics()];
  const words = lettering();
  view.addChild(ground.behind, shown.view, ...ground.before, grade.view, ink, words.view, handles);
  let lain: Laid | null = null;
  let answers: readonly (Pane["circulation"] | Pane["before"])[] = [];
  let [keyBox, lastKey]: [Box | null, string] = [null, ""];

  const drawPictures = (frame: Frame, laid: Laid, viewport: Viewport, theme: Theme, first: boolean) => {
    shown.keep(frame.panes.length);
    shown.draw(frame, { planes: roomsOf(laid), hearts: heartBoxes(laid) }, viewport, theme, first);
    ground.draw(viewport, first, sinksOf(laid, viewport, shown.cut), theme);
    grade.view.visible = laid.at.grade !== null && !first;
  };

  const write = (frame: Frame, laid: Laid, viewport: Viewport, theme: Theme) => {
    const { at, keyAt, key, sizes, over } = laid;
    const { focus, labels, handles: held } = frame.state.view;
    const sheet = { ink, words, sizes, theme };
    ink.clear();
    handles.clear();
    words.begin();
    const written = writeKey(sheet, frame, keyAt, key, Number.isFinite(viewport.elapsed));
    const under = underTitles(frame, viewport, theme);
    if (!swipe)
      at.titles.forEach((box, i) => {
        writeTitle(sheet, entryAt(frame.panes, i), box, under.apart[i]);
      });
    const taken = [written, ...(swipe?.write(sheet, laid) ?? [])];
    const compared = frame.panes.length > 1;
    // Beside a pane in which something is pointed at, the others keep silent.
    const silent = !labels || (compared && shown.panes.some((each) => points(each, focus)));
    const crowded = compared || at.narrow;
    const boxes = over ? over.sides.map((side, i) => meet(side, entryAt(at.planes, i))) : at.planes;
    const form = washOutForm(frame.panes, shown.panes, boxes, taken, sizes);
    const size = HANDLE * Math.max(1, viewport.floor / 20);
    frame.panes.forEach((pane, i) => {
      const drawn = entryAt(shown.panes, i);
      const box = entryAt(boxes, i);
      const near = compared && at.narrow;
      annotate(sheet, { pane, drawn, box, taken, form, focus, crowded, near, silent });
      // The page lays its sliders over the first pane's.
      if (held && i === 0)
        handlesOf(handles, drawn, over?.divider.x ?? Number.POSITIVE_INFINITY, { size, focus }, theme);
    });
    words.end();
    if (grade.view.visible && at.grade) grade.draw(frame.panes, at.grade, focus, sizes, theme);
    return written;
  };

  return {
    view,
    draw(frame, viewport, theme) {
      // The key's own room may move the planes: then once more, at once where no next drawing comes.
      for (let left = frame.still ? 2 : 1; left > 0; left--) {
        lain = swipe
          ? swipe.lay(frame, viewport, keyBox, theme)
          : layOut(frame, viewport, keyBox, underTitles(frame, viewport, theme).rows);
        const first = opening.next(frame, viewport);
        drawPictures(frame, lain, viewport, theme, first);
        if (first) return;
        // Lines and words are laid out again only when something about them has changed.
        const key = cacheKey(frame, viewport, theme, shown.panes, keyBox);
        const now = frame.panes.flatMap(({ circulation, before }) => [circulation, before]);
        const same = key === lastKey && now.every((each, i) => each === answers[i]);
        grade.keep(same ? viewport : null);
        if (same) return;
        answers = now;
        keyBox = write(frame, lain, viewport, theme);
        lastKey = cacheKey(frame, viewport, theme, shown.panes, keyBox);
      }
    },
    get divider() {
      return lain?.over?.divider ?? null;
    },
    toScreen: (point, pane) => shown.panes[pane]?.toScreen(point) ?? null,
    pick(x, y) {
      const onLine = grade.view.visible ? grade.pick(x, y) : null;
      if (onLine) return { name: onLine, pane: 0 };
      const pane = (lain?.over?.sides ?? lain?.at.planes ?? []).findIndex((box) => within(box, x, y));
      const name = pane < 0 ? null : shown.pick(pane, x, y);
      return name ? { name, pane } : null;
    },
    release() {
      shown.keep(0);
      ground.release();
      grade.release();
      view.destroy(WITH_ALL);
    },
  };
};

/** Those that lie left of x, CSS px. */
function handlesOf(ink: Graphics, drawn: PaneView, x: number, look: HandleLook, theme: Theme): void {
  const { geometry, projection } = drawn;
  if (!geometry || !projection) return;
  const screen = (point: readonly [number, number]) => present(drawn.toScreen(point));
  const within = geometry.handles.filter(({ at }) => screen(at)[0] < x);
  drawHandles(ink, within, screen, look, theme);
}

const roomsOf = ({ at, over }: Laid): readonly Room[] =>
  at.planes.map((box, i) => ({
    box,
    shared: over && { side: entryAt(over.sides, i), sight: over.sight },
  }));

function sinksOf({ at, keyAt, key, sizes }: Laid, viewport: Viewport, cut: boolean): Sinks {
  const { clear } = viewport;
  return {
    under: sinkOf(at) ?? (cut || wordsBelow(viewport) ? foot(clear) : null),
    edge: { ...clear, y: keyAt.inline && key ? key.y + key.height : clear.y, height: sizes.axis },
  };
}

/** The page writes beneath the picture: nothing is drawn behind that. */
const wordsBelow = ({ full, clear }: Viewport): boolean => clear.y + clear.height < full.y + full.height - 1;

/** Words keep below a key beside the picture and off the ground under the grade line. */
function heartBoxes({ at, keyAt, key, sizes }: Laid): readonly WordsRoom[] {
  const air = sizes.axis;
  return at.planes.map((box) => {
    const soft = at.grade && at.grade.y > box.y ? SOFT * at.grade.height : 0;
    return {
      box: {
        x: box.x + air,
        y: box.y + air,
        width: Math.max(1, box.width - 2 * air),
        height: Math.max(1, box.height - air - soft),
      },
      key:
        keyAt.inline || !key
          ? { tall: 0, wide: 0 }
          : { tall: key.y + key.height - box.y, wide: key.x + key.width - box.x },
    };
  });
}

/** The grade line's ground under the vessels; beside them it stands on ground that nothing else uses. */
const sinkOf = ({ grade, planes }: Laid["at"]): Box | null =>
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
    panes.map(({ projection, geometry, whole }) => [
      projection,
      geometry?.handles.map(({ at }) => at),
      whole,
    ]),
  ]);
}

const points = ({ geometry }: PaneView, focus: string | null): boolean =>
  geometry !== null && spotsOf(geometry, focus).length > 0;

const meet = (a: Box, b: Box): Box => {
  const [x, y] = [Math.max(a.x, b.x), Math.max(a.y, b.y)];
  return {
    x,
    y,
    width: Math.max(0, Math.min(a.x + a.width, b.x + b.width) - x),
    height: Math.max(0, Math.min(a.y + a.height, b.y + b.height) - y),
  };
};

const within = (box: Box, x: number, y: number): boolean =>
  x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;
