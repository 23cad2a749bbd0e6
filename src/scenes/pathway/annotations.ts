/** Words and lines over the pathways: the key, titles where panes are compared, names at their places, the wash-out curve. */
import type { Frame, Pane } from "../../chain/frame.ts";
import { formatNumber, formatQuantity } from "../../i18n/index.ts";
import { present } from "../../sim/checked/present.ts";
import { apartIn, valuesIn } from "../drawing/apart.ts";
import type { Sheet } from "../drawing/drawing-sheet.ts";
import { layOut } from "../drawing/written.ts";
import { roomFor } from "../layers/keep-off.ts";
import { drawLabels } from "../layers/labels.ts";
import { drawLegend, type LegendPlace } from "../layers/legend.ts";
import { saturationsByOrigin } from "../layers/tint.ts";
import type { Box, Viewport } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { sizesIn } from "../theme/type.ts";
import { mapRemarks } from "./map-remarks.ts";
import { colouredBy, coverIn, isPumped, listed, originsIn, placed, pointed } from "./named.ts";
import type { PaneView } from "./pane-view.ts";
import { washOutPlots } from "./wash-out-later.ts";

/** Deviation of the play speed that is worth saying. */
const PACE_SAID = 0.04;

/**
 * Returns the room that the key takes.
 * @param before that it took in the last drawing
 * @param moving not a picture that is taken along: that one has no speed
 */
export function writeKey(
  sheet: Sheet,
  frame: Frame,
  at: LegendPlace,
  before: Box | null,
  moving: boolean,
): Box {
  const { ink, sizes, theme } = sheet;
  const { panes, still, state } = frame;
  const { colouring, overlay, camera } = state.view;
  const remarks = mapRemarks(panes, overlay, theme);
  if (moving && (still || frame.pace === 0)) remarks.push(theme.say("scene.pace.still"));
  else if (moving && Math.abs(frame.pace - 1) > PACE_SAID)
    remarks.push(theme.say("scene.pace", { pace: formatNumber(frame.pace, frame.pace < 0.095 ? 2 : 1) }));
  if (panes.some(({ before, circulation }) => before && before.circulation !== circulation))
    remarks.push(theme.say("scene.before"));
  if (panes.length > 1 && panes.every(({ equalInflow }) => equalInflow))
    remarks.push(theme.say("scene.equalInflow"));
  remarks.push(...holeRemarks(panes, theme));
  // A camera that has come close fills the corner with vessels: the key then stands on a plate.
  if (before && camera !== "whole") {
    const pad = sizes.axis * 0.5;
    ink
      .roundRect(before.x - pad, before.y - pad, before.width + 2 * pad, before.height + 2 * pad, 8)
      .fill({ color: theme.colour.plate, alpha: 0.88 });
  }
  const computed = panes.some(({ geometry }) => geometry);
  const facts = {
    // Maps belong to a field.
    colouring: colouredBy(colouring, computed),
    overlay: computed ? overlay : "none",
    saturations: saturationsByOrigin(panes[0]?.circulation ?? null),
    origins: originsIn(panes, still),
    heart: heartIn(panes, still),
    pumped: still ? pumpedIn(panes) : null,
    still,
    dyed: panes.some(({ washOut }) => washOut !== null),
    remarks,
  };
  return drawLegend(sheet, facts, at);
}

/** Of one plane on its own: more would differ. */
function heartIn(panes: readonly Pane[], still: boolean): readonly [number, number] | null {
  const [pane, ...others] = panes;
  if (!pane?.circulation || others.length > 0 || (still && !pane.geometry)) return null;
  const { pulmonaryVein, arterial } = pane.circulation.saturations;
  return [pulmonaryVein, arterial];
}

/** Of a still picture, whose darts show no origin. */
function pumpedIn(panes: readonly Pane[]): readonly [number, number] | null {
  const solved = panes.find(isPumped);
  if (!solved?.circulation) return null;
  const { svc, arterial } = solved.circulation.saturations;
  return [svc, arterial];
}

/** A tunnel with a hole and one without look much alike from where the baffle is cut. */
function holeRemarks(panes: readonly Pane[], theme: Theme): readonly string[] {
  const chest = panes.length === 1 ? panes[0]?.geometry?.chest : undefined;
  if (chest?.graft?.kind !== "patch") return [];
  const { hole } = chest;
  return [
    hole
      ? theme.say("scene.fenestration", { diameter: formatQuantity(hole.width, "mm", 1) })
      : theme.say("scene.noFenestration"),
  ];
}

/** Rows under a title that leave a picture beneath it. */
const MAX_ROWS = 3;

/** What stands under each title, and the rows that it takes where panes lie side by side; settings without names where those have no room. */
export function underTitles({ panes }: Frame, { clear, floor }: Viewport, { family, say }: Theme) {
  const { axis: size } = sizesIn(clear, floor);
  const across = clear.width / panes.length - 2 * size;
  const requests = panes.map(({ circulation }) => circulation?.request);
  const laid = (apart: readonly string[]) => {
    const each = apart.map((words) => layOut(words, { family, size }, across));
    const rows = Math.max(...each.map(({ lines }, i) => (apart[i] ? lines.length : 0)));
    return { apart, rows, fits: rows <= MAX_ROWS && each.every(({ width }) => width <= across) };
  };
  const named = laid(apartIn(requests, say));
  return named.fits ? named : laid(valuesIn(requests, say));
}

/** @param apart what sets the pane apart from another of its stage, or nothing */
export function writeTitle({ words, sizes, theme }: Sheet, pane: Pane, box: Box, apart = ""): void {
  const stage = pane.circulation?.request.stage ?? pane.geometry?.name ?? "";
  words.write(
    {
      lines: [
        { words: theme.say(`stage.${stage}`), size: sizes.label, colour: theme.colour.ink, bold: true },
        ...(apart ? [{ words: apart, size: sizes.axis, colour: theme.colour.inkSoft }] : []),
      ],
      wrap: box.width - 2 * sizes.axis,
      x: box.x + box.width / 2,
      y: box.y + box.height / 2,
      anchor: [0.5, 0.5],
    },
    theme,
  );
}

export interface Annotated {
  readonly pane: Pane;
  readonly drawn: PaneView;
  readonly box: Box;
  /** what nothing may cover */
  readonly taken: readonly Box[];
  /** of the wash-out's panel, the same in all panes */
  readonly form: number;
  readonly focus: string | null;
  /** room is short */
  readonly crowded: boolean;
  /** plates close to their parts alone */
  readonly near: boolean;
  /** only what is pointed at is named */
  readonly silent: boolean;
}

/** Sizes of type between a plate and the side of its box. */
const AIR = 0.4;

export function annotate(sheet: Sheet, annotated: Annotated): void {
  const { pane, drawn, box, focus, crowded, near, silent } = annotated;
  // What is named can be seen.
  if (!drawn.whole) return;
  const { geometry, projection, occupied } = drawn;
  if (!geometry || !projection || !occupied) return;
  const taken = [...annotated.taken, ...annotateWashOut(sheet, annotated)];
  const toScreen = (point: readonly [number, number]) => present(drawn.toScreen(point));
  const earlier = pane.before?.circulation;
  const plane = { geometry, circulation: pane.circulation, earlier, toScreen, crowded };
  const plates = pointed(focus, plane, sheet) ?? (silent ? [] : listed(plane, sheet));
  if (plates.length === 0) return;
  // What the page sets beside the picture is not touched.
  const air = AIR * sheet.sizes.axis;
  const room = { ...box, x: box.x + air, width: box.width - 2 * air };
  const labels = placed(plates, occupied, projection, { box: room, taken, crowded: near });
  drawLabels(sheet.ink, sheet.words, labels, focus, sheet.theme);
}

/** Draws the panel where there is room for it. @returns the room that it then takes */
function annotateWashOut(sheet: Sheet, { pane, drawn, box, taken, form }: Annotated): readonly Box[] {
  const { projection, occupied } = drawn;
  const { washOut } = pane;
  // Before its first point nothing has been measured.
  const plots = washOut && washOut.time.length > 1 && washOutPlots();
  if (!plots || !projection || !occupied) return [];
  const covers = coverIn(occupied, projection);
  const panels = plots.washOutPanels(box, sheet.sizes).slice(form);
  const panel = roomFor(panels, box, taken, (each) => covers(each, "washOut"));
  if (!panel) return [];
  plots.drawWashOut(sheet, washOut, panel);
  return [panel];
}
