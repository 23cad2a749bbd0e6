/** A pane whose blood reaches the lungs through a pump: heart and lungs of the whole circulation in the pathway's place. */
import { Container, Graphics } from "pixi.js";
import type { Pane } from "../../chain/frame.ts";
import { present } from "../../sim/checked/present.ts";
import { CHEST } from "../circuit/arrange.ts";
import { CHEST_AT, chestFrame } from "../circuit/chest-plan.ts";
import { pane as circuitPane } from "../circuit/circuit-pane.ts";
import type { KeyRoom } from "../circuit/plates-drawing.ts";
import type { Fit } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { sizesIn } from "../theme/type.ts";
import { sight } from "./camera.ts";
import type { Moment } from "./moment.ts";
import { colouredBy, isPumped } from "./named.ts";
import { clipper, type Room } from "./pane-view.ts";
import { project } from "./pathway-layout.ts";

/** Where its words may stand, and what a key takes above those on the left. */
export interface WordsRoom {
  readonly box: Box;
  readonly key: KeyRoom;
}

/** As the cameras of the other stages see their chests: from stage to stage it keeps its place. */
function fitIn({ box, shared }: Room, moment: Moment): Fit {
  const chest = chestFrame("two-ventricle", true);
  const { scale, x, y } = project(
    box,
    shared?.sight.extent ?? sight({ bounds: [0, 0, 0, 0], chest }, moment),
  );
  const unit = scale / CHEST_AT.scale;
  return { scale: unit, x: x - unit * CHEST_AT.x, y: y - unit * CHEST_AT.y };
}

export function heartView() {
  const drawn = circuitPane();
  const [view, frame] = [new Container(), new Graphics()];
  view.addChild(drawn.view, frame);
  const keepTo = clipper(drawn.view, frame);
  return {
    view,
    /** the body is shown in part, down to the lower edge of its box */
    get cut() {
      return view.visible;
    },
    draw(pane: Pane, room: Room, words: WordsRoom, moment: Moment, theme: Theme): void {
      view.visible = isPumped(pane) && pane.geometry === null;
      if (!view.visible) return;
      const { view: asked, time, still, viewport, compared } = moment;
      keepTo(compared ? room.box : null);
      const contents = {
        circulation: present(pane.circulation),
        against: null,
        compared: false,
        time,
        still,
        labels: asked.labels,
        focus: asked.focus,
        extent: CHEST,
        fit: fitIn(room, moment),
        key: words.key,
        marks: { colouring: colouredBy(asked.colouring, false), viewport },
        titled: false,
      };
      // In type as large as beside the planes of the other stages.
      const floor = sizesIn(viewport.clear, viewport.floor).axis;
      drawn.draw(contents, words.box, { ...viewport, floor }, theme);
    },
    pick: (x: number, y: number): string | null => (view.visible ? drawn.pick(x, y) : null),
    release(): void {
      view.destroy({ children: true, context: true });
      drawn.release();
    },
  };
}

export type HeartView = ReturnType<typeof heartView>;
