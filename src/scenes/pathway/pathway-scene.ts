/** The pathway scene: one to three pathways, the grade line beneath them, and the key to their colours. */
import { Container, Graphics } from "pixi.js";
import type { Frame, Pane } from "../../chain/frame.ts";
import { formatNumber } from "../../i18n/index.ts";
import { energyBudget } from "../../sim/flow-field/energy-book.ts";
import { hasPlane } from "../../sim/parameters/request.ts";
import { lettering } from "../drawing/lettering.ts";
import { depthLayer, shoreLayer } from "../layers/depth-layer.ts";
import { gradeLineLayer } from "../layers/grade-line-layer.ts";
import { drawHandles } from "../layers/handles.ts";
import { roomFor } from "../layers/keep-off.ts";
import { drawLabels } from "../layers/labels.ts";
import { drawLegend, type LegendPlace } from "../layers/legend.ts";
import { spotsOf } from "../layers/spots.ts";
import { saturationsByOrigin } from "../layers/tint.ts";
import { drawWashOut, washOutPanels } from "../layers/wash-out-plot.ts";
import { type Box, type MakeScene, type Viewport, WITH_ALL } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { type Sizes, sizes as typeSizes } from "../theme/type.ts";
import { type HeartView, heartView } from "./heart-view.ts";
import { mapRemarks } from "./map-remarks.ts";
import { coverIn, listed, originsIn, placed, pointed } from "./named.ts";
import { type PaneView, paneView } from "./pane-view.ts";
import { keyPlace, type Layout, layout } from "./pathway-layout.ts";
import { washOutForm } from "./wash-out-form.ts";

/** CSS px: radius of a drawn handle; the page's own target over it is larger. */
const HANDLE = 11;
/** px across the kept ground where a chip draws it larger */
const GROUND = 256;
/** Part of the grade line's height by which its ground reaches up softly; where there is none, that of the picture in which a body cut off sinks. */
const SOFT = 0.3;
const FOOT = 0.12;
const foot = ({ x, y, width, height }: Box): Box => ({
  x,
  y: y + height * (1 - FOOT / 3),
  width,
  height: height * FOOT,
});
/** Deviation of the play speed that is worth saying. */
const PACE_SAID = 0.04;

export const makePathway: MakeScene = () => {
  const view = new Container();
  const ground = depthLayer();
  const planes = new Container();
  const shore = shoreLayer();
  const sky = shoreLayer("above");
  const grade = gradeLineLayer();
  const ink = new Graphics();
  const handles = new Graphics();
  const words = lettering();
  view.addChild(ground.view, planes, shore.view, sky.view, grade.view, ink, words.view, handles);
  const panes: PaneView[] = [];
  const hearts: HeartView[] = [];
  let lain: Layout | null = null;
  let keyBox: Box | null = null;
  let circulations: readonly Pane["circulation"][] = [];
  let lastKey = "";

  /** All that the lines and words depend on, beside the circulations. */
  const cacheKey = (frame: Frame, { full, clear, floor }: Viewport, theme: Theme): string => {
    const { playSpeed: _, ...asked } = frame.state.view;
    return JSON.stringify([
      full,
      clear,
      floor,
      theme.name,
      theme.say("scene.legend.origin"),
      asked,
      keyBox,
      frame.still ? "still" : frame.pace.toFixed(1),
      frame.panes.map(({ washOut }) => washOut?.time.length),
      frame.panes.map(({ field }) => asked.overlay !== "none" && field && energyBudget(field.readings)),
      panes.map(({ projection, geometry }) => [projection, geometry?.handles.map(({ at }) => at)]),
    ]);
  };

  const keep = (count: number) => {
    while (panes.length < count) {
      const pane = paneView();
      panes.push(pane);
      const heart = heartView();
      hearts.push(heart);
      planes.addChild(pane.view, heart.view);
    }
    while (panes.length > count) {
      panes.pop()!.release();
      hearts.pop()!.release();
    }
  };

  return {
    view,
    draw(frame, viewport, theme) {
      const sizes = typeSizes(viewport.clear.height, viewport.floor);
      const count = frame.panes.length;
      keep(count);
      ground.draw(
        viewport.full,
        { ...viewport.clear, height: viewport.clear.height * 0.7 },
        // The processor lays pixel on pixel; a chip draws a small picture as large as it likes.
        viewport.meshes ? GROUND / viewport.full.width : viewport.dense,
        theme,
      );
      const keyAt = keyPlace(viewport.clear, count, sizes);
      const at = layout(
        viewport.clear,
        count,
        frame.state.view.gradeLine,
        keyBox ?? { ...keyAt, height: 0 },
        sizes,
      );
      lain = at;
      const moment = {
        view: frame.state.view,
        time: frame.time,
        still: frame.still,
        compared: count > 1,
        viewport,
      };
      frame.panes.forEach((pane, i) => {
        const box = at.planes[i]!;
        panes[i]!.draw(pane, box, moment, theme);
        // Words keep off a key beside the picture and off the ground under the grade line.
        const aside = keyAt.inline || !keyBox ? 0 : keyBox.width;
        const soft = at.grade && at.grade.y > box.y ? SOFT * at.grade.height : 0;
        const heartBox = {
          x: box.x + aside,
          y: box.y,
          width: Math.max(1, box.width - aside - sizes.axis),
          height: Math.max(1, box.height - soft),
        };
        hearts[i]!.draw(pane, heartBox, moment, theme);
      });
      grade.view.visible = at.grade !== null;
      // Beside the vessels the grade line stands on ground that nothing else uses.
      const under =
        at.grade && at.grade.y > at.planes[0]!.y
          ? at.grade
          : hearts.some((heart) => heart.cut)
            ? foot(viewport.clear)
            : null;
      shore.view.visible = under !== null;
      if (under) shore.draw(viewport.full, under, theme);
      // Veins that run on to the head fade before they come under controls or key.
      const edge = keyAt.inline && keyBox ? keyBox.y + keyBox.height : viewport.clear.y;
      sky.view.visible = edge > viewport.full.y;
      if (sky.view.visible)
        sky.draw(viewport.full, { ...viewport.clear, y: edge, height: sizes.axis }, theme);

      // Lines and words are laid out anew only when something about them has changed.
      const key = cacheKey(frame, viewport, theme);
      if (key === lastKey && frame.panes.every(({ circulation }, i) => circulation === circulations[i]))
        return;
      circulations = frame.panes.map(({ circulation }) => circulation);
      ink.clear();
      handles.clear();
      words.begin();
      keyBox = writeKey(frame, keyAt, Number.isFinite(viewport.elapsed), sizes, theme);
      at.titles.forEach((box, i) => {
        writeTitle(frame.panes[i]!, box, sizes, theme);
      });
      const form = washOutForm(frame.panes, panes, at.planes, keyBox, sizes);
      frame.panes.forEach((pane, i) => {
        annotate(frame, pane, panes[i]!, at.planes[i]!, form, [keyBox!], at.narrow, sizes, viewport, theme);
      });
      words.end();
      if (at.grade) grade.draw(circulations, at.grade, frame.state.view.focus, sizes, theme);
      // The key's own room may move the planes: then once more.
      lastKey = cacheKey(frame, viewport, theme);
    },
    toScreen: (point, pane) => panes[pane]?.toScreen(point) ?? null,
    pick(x, y) {
      const onLine = grade.view.visible ? grade.pick(x, y) : null;
      if (onLine) return { name: onLine, pane: 0 };
      const pane = lain?.planes.findIndex((box) => within(box, x, y)) ?? -1;
      const name = pane < 0 ? null : (panes[pane]?.pick(x, y) ?? hearts[pane]?.pick(x, y));
      return name ? { name, pane } : null;
    },
    release() {
      keep(0);
      ground.release();
      shore.release();
      sky.release();
      view.destroy(WITH_ALL);
    },
  };

  function writeKey(frame: Frame, at: LegendPlace, moving: boolean, sizes: Sizes, theme: Theme): Box {
    const { colouring, overlay } = frame.state.view;
    const remarks = mapRemarks(frame.panes, overlay, theme);
    // A picture that is taken along has no speed.
    if (frame.still && moving) remarks.push(theme.say("scene.pace.still"));
    else if (moving && Math.abs(frame.pace - 1) > PACE_SAID)
      remarks.push(theme.say("scene.pace", { pace: formatNumber(frame.pace, frame.pace < 0.095 ? 2 : 1) }));
    if (frame.panes.length > 1 && frame.panes.every(({ equalInflow }) => equalInflow))
      remarks.push(theme.say("scene.equalInflow"));
    const pane = frame.panes[0];
    // A camera that has come close fills the corner with vessels: the key then stands on a plate.
    if (keyBox && frame.state.view.camera !== "whole") {
      const pad = sizes.axis * 0.5;
      ink
        .roundRect(keyBox.x - pad, keyBox.y - pad, keyBox.width + 2 * pad, keyBox.height + 2 * pad, 8)
        .fill({ color: theme.colour.plate, alpha: 0.88 });
    }
    return drawLegend(
      ink,
      words,
      {
        colouring,
        overlay,
        saturations: saturationsByOrigin(pane?.circulation ?? null),
        origins: originsIn(frame.panes),
        pumped: frame.panes.some(({ circulation }) => circulation && !hasPlane(circulation.request.stage)),
        still: frame.still,
        dyed: frame.panes.some(({ washOut }) => washOut !== null),
        remarks,
      },
      at,
      sizes,
      theme,
    );
  }

  function annotate(
    frame: Frame,
    pane: Pane,
    drawn: PaneView,
    box: Box,
    washOut: number,
    taken: readonly Box[],
    narrow: boolean,
    sizes: Sizes,
    viewport: Viewport,
    theme: Theme,
  ): void {
    const { view: asked } = frame.state;
    const geometry = drawn.geometry;
    if (!geometry || !drawn.projection) return;
    const toScreen = (point: readonly [number, number]) => drawn.toScreen(point)!;
    const compared = frame.panes.length > 1;
    const crowded = compared || narrow;
    const room = [...taken];
    if (pane.washOut && drawn.occupied) {
      const covers = coverIn(drawn.occupied, drawn.projection);
      const panels = washOutPanels(box, sizes).slice(washOut);
      const panel = roomFor(panels, box, taken, (each) => covers(each, "washOut"));
      if (panel) {
        drawWashOut(ink, words, pane.washOut, panel, sizes, theme);
        room.push(panel);
      }
    }
    // Beside a pane in which something is pointed at, the others keep silent.
    const silent = !asked.labels || (compared && panes.some((each) => points(each, asked.focus)));
    const plates =
      pointed(asked.focus, geometry, pane, toScreen, crowded, sizes, theme) ??
      (silent ? [] : listed(geometry, pane, crowded, toScreen, sizes, theme));
    if (plates.length > 0 && drawn.occupied)
      drawLabels(
        ink,
        words,
        placed(plates, drawn.occupied, drawn.projection, box, room, compared && narrow),
        asked.focus,
        theme,
      );
    if (asked.handles)
      drawHandles(
        handles,
        geometry.handles,
        toScreen,
        HANDLE * Math.max(1, viewport.floor / 20),
        asked.focus,
        theme,
      );
  }

  function writeTitle(pane: Pane, box: Box, sizes: Sizes, theme: Theme): void {
    const stage = pane.circulation?.request.stage ?? pane.geometry?.name ?? "";
    words.write(
      {
        lines: [
          { words: theme.say(`stage.${stage}`), size: sizes.label, colour: theme.colour.ink, bold: true },
        ],
        x: box.x + box.width / 2,
        y: box.y + box.height / 2,
        anchor: [0.5, 0.5],
      },
      theme,
    );
  }
};

const points = ({ geometry }: PaneView, focus: string | null): boolean =>
  geometry !== null && spotsOf(geometry, focus).length > 0;

const within = (box: Box, x: number, y: number): boolean =>
  x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;
