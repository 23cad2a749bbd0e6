/** One state of the circulation as a schematic with its numbers. */
import { Container, Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import { lettering } from "../drawing/lettering.ts";
import type { Box } from "../scene.ts";
import { ease } from "../theme/motion.ts";
import type { Theme } from "../theme/theme.ts";
import { sizes } from "../theme/type.ts";
import { vesselsOf } from "./anatomy.ts";
import { BODY } from "./arrange.ts";
import { drawLit, drawVessels } from "./body-drawing.ts";
import { type Laid, layVessels } from "./dots.ts";
import { drawFace } from "./face-drawing.ts";
import { flowing } from "./flowing.ts";
import { paintedBody } from "./painted-body.ts";
import { overOrgans, paintedChest } from "./painted-chest.ts";
import { partsOf } from "./parts.ts";
import { drawPlates, type PaneContents, type Standing } from "./plates-drawing.ts";
import { drawThroughLiver, fillTrunk } from "./silhouette.ts";

export interface Pane {
  readonly view: Container;
  /** `elapsed`: s of wall clock since the last drawing */
  draw(contents: PaneContents, box: Box, floor: number, elapsed: number, theme: Theme): void;
  /** the place whose plate lies under a point of the canvas */
  pick(x: number, y: number): string | null;
  release(): void;
}

/** A hole between pathway and atrium is drawn where there is one and blood passes it. */
export const fenestrated = ({ request, flows }: Circulation): boolean =>
  hasPathway(request.stage) && Math.abs(flows.fenestration) > 1e-6;

/** Device pixels of a CSS pixel for which the chest is painted. */
const DENSE = 1.25;

/** How far all else draws back from what is pointed at. */
export const DIM = 0.45;

/** What the still part is drawn anew for, beside another circulation. */
const signatureOf = (contents: PaneContents, box: Box, floor: number, theme: Theme): string => {
  const { against, compared, labels, focus, extent } = contents;
  const language = theme.say("further.place.svc");
  return JSON.stringify([
    box,
    floor,
    theme.name,
    language,
    labels,
    focus,
    compared,
    extent,
    against?.pressures,
  ]);
};

/** What lies under the liver, behind the heart, and before it; what is pointed at lies over what it crosses. */
function inDepth(laid: readonly Laid[], lit: ReadonlySet<string>): Readonly<Record<Depth, readonly Laid[]>> {
  const shown = ({ vessel }: Laid) => lit.has(vessel.name);
  const depthOf = (each: Laid): Depth =>
    shown(each) ? "shown" : each.vessel.under ? "under" : each.vessel.behind ? "behind" : "before";
  const at = (depth: Depth) => laid.filter((each) => depthOf(each) === depth);
  return { under: at("under"), behind: at("behind"), before: at("before"), shown: at("shown") };
}
type Depth = "under" | "behind" | "before" | "shown";

/** Size of the marks where heart and lungs fill the picture. */
const CLOSE_GRAIN = 0.7;

type Masked = Readonly<Record<"plane" | "frame" | "body" | "bowel" | "trunk" | "organs", Container>>;

/** A whole body holds its organs; a part of one (`cut`) ends not far below its box, where the ground has swallowed it. */
function maskParts(parts: Masked & { readonly frame: Graphics }, box: Box, cut: boolean): void {
  const { plane, frame, body, bowel, trunk, organs } = parts;
  frame.visible = cut;
  body.visible = bowel.visible = trunk.visible = !cut;
  organs.mask = cut ? null : trunk;
  frame.clear();
  if (cut) frame.rect(box.x, box.y, box.width, box.height * 1.15).fill(0xffffff);
  plane.mask = cut ? frame : null;
}

export function pane(): Pane {
  const view = new Container();
  const plane = new Container();
  const leaders = new Graphics();
  const words = lettering();
  const blood = flowing();
  const [under, back, front, lights] = [new Graphics(), new Graphics(), new Graphics(), new Graphics()];
  const body = paintedBody();
  const chest = paintedChest();
  chest.underDiaphragm.addChild(chest.airways, under);
  const trunk = fillTrunk(new Graphics());
  plane.addChild(
    body.behind,
    trunk,
    chest.organs,
    ...overOrgans(chest, blood, { behind: back, front }),
    body.before,
    lights,
  );
  const frame = new Graphics();
  view.addChild(plane, frame, leaders, words.view);

  let drawn = "";
  let known: Circulation | null = null;
  let laid: readonly Laid[] = [];
  let shape = "";
  let standing: readonly Standing[] = [];
  let [dim, close] = [0, false];
  let lit: ReadonlySet<string> = new Set();

  const drawStill = (contents: PaneContents, box: Box, floor: number, theme: Theme): void => {
    const { circulation } = contents;
    close = contents.extent !== BODY;
    const wanted = `${circulation.request.stage} ${fenestrated(circulation)} ${close}`;
    if (shape !== wanted) {
      shape = wanted;
      laid = layVessels(vesselsOf(circulation.request.stage, fenestrated(circulation), close));
    }
    blood.follow(laid, circulation);
    const sheet = { ink: leaders, words, sizes: sizes(box.height, floor), theme };
    const plates = drawPlates(sheet, contents, laid, box);
    standing = plates.standing;
    const parts = { plane, frame, body: body.behind, bowel: body.before, trunk, organs: chest.organs };
    maskParts(parts, box, contents.extent !== BODY);
    plane.scale.set(plates.fit.scale);
    plane.position.set(plates.fit.x, plates.fit.y);
  };

  const drawStanding = (circulation: Circulation, theme: Theme): void => {
    for (const ink of [under, back, front, lights]) ink.clear();
    if (!close) drawLit(lights, lit, theme);
    const [depth, emphasis] = [inDepth(laid, lit), { lit, dim }];
    drawVessels(under, depth.under, circulation, theme, emphasis);
    drawThroughLiver(back, depth.under, circulation, theme);
    drawVessels(back, depth.behind, circulation, theme, emphasis);
    drawVessels(front, [...depth.before, ...depth.shown], circulation, theme, emphasis);
    drawFace(front, close, theme);
  };

  return {
    view,
    draw(contents, box, floor, elapsed, theme) {
      const { circulation, focus } = contents;
      const signature = signatureOf(contents, box, floor, theme);
      const before = dim;
      const parts = partsOf(focus);
      // The light goes out with the last of the dark around it.
      if (parts.size > 0 || dim === 0) lit = parts;
      dim = ease(dim, parts.size > 0 ? DIM : 0, known ? elapsed : Number.POSITIVE_INFINITY);
      if (known !== circulation || signature !== drawn) {
        known = circulation;
        drawn = signature;
        drawStill(contents, box, floor, theme);
        drawStanding(circulation, theme);
      } else if (dim !== before) drawStanding(circulation, theme);
      const moved = { circulation, time: contents.time, still: contents.still, close };
      const density = plane.scale.x * DENSE;
      if (!close) body.draw(density, theme, { lit, dim });
      chest.draw(moved, density, theme, { lit, dim });
      const grain = contents.extent === BODY ? 1 : CLOSE_GRAIN;
      blood.move(contents.time, contents.still, theme, { lit, dim }, grain);
    },
    pick: (x, y) =>
      standing.find(
        (each) => x >= each.x && x <= each.x + each.width && y >= each.y && y <= each.y + each.height,
      )?.name ?? null,
    release() {
      blood.release();
      chest.release();
      body.release();
    },
  };
}
