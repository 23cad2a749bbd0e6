/** Vessels of the chest, as the circuit lays them, in three depths; they go down with the diaphragm. */
import { Container, type Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import { hiatusOf, paintRim } from "../anatomy/paint-abdomen.ts";
import { boundsOf, servesAt, sheet } from "../anatomy/painted-sheet.ts";
import { vesselsOf } from "../circuit/anatomy.ts";
import { drawVessels } from "../circuit/body-drawing.ts";
import { CHEST_AT, chestFrame, onPlane } from "../circuit/chest-plan.ts";
import { fenestrated } from "../circuit/circuit-pane.ts";
import { type Laid, layVessels } from "../circuit/dots.ts";
import { LIVER } from "../circuit/outlines.ts";
import { drawThroughLiver } from "../circuit/silhouette.ts";
import type { Vessel } from "../circuit/vessel.ts";
import { type Spot, spots } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import { inMillimetres } from "./chest-wall.ts";
import { drawHiddenAorta } from "./hidden-aorta.ts";
import { isInLiver, LIVER_BOUNDS, paintLiverVeins, widthBefore } from "./in-liver.ts";
import { sinkingVessels } from "./sinking-vessels.ts";
import { MIDLINE } from "./torso.ts";

const HIDDEN =
  /Kidney|Leg|Thigh|Hand|Head|gut|portal|liver|coeliac|hepaticLeftBranch|hepaticTwig|aorticFork|infrarenal/;
/** Every other way through a lung is without marks: air is what this picture is about. */
const FEWER = /Bed[2468]$/;
/** Behind liver and heart. */
const AORTA = ["thoracicAorta", "descending"];
/** Where the lower vein comes into the picture; without the kidneys' veins it is one vessel. */
const BELOW: Spot = [468, 840];
/** Plane units from the midline where the shoulder begins, and the ways through the left arm from there, to where it fades. */
const SHOULDER = 240;
const ARM = {
  arterial: spots("784 232, 816 284, 841 340, 857 400, 864 464"),
  svc: spots("770 240, 801 286, 826 342, 844 402, 850 464"),
} as const;

export interface ChestVessels {
  /** behind liver and diaphragm, beneath the heart, and over it */
  readonly under: Container;
  readonly back: Container;
  readonly front: Container;
  /** Once for each circulation and theme. @returns where they lie at rest */
  stand(circulation: Circulation, theme: Theme): readonly Laid[];
  /** @param density device pixels a plane unit */
  paint(circulation: Circulation, density: number, theme: Theme): void;
  /** @param fall plane units by which the dome stands lower */
  move(fall: number): void;
  release(): void;
}

export function chestVessels(): ChestVessels {
  const [under, back, front] = [sinkingVessels(), sinkingVessels(), sinkingVessels()];
  const hidden = sinkingVessels();
  const [liverVeins, rim] = [sheet(), sheet()];
  const [all, onDome] = [new Container(), new Container()];
  onDome.addChild(inMillimetres(rim.view, liverVeins.view));
  all.addChild(hidden.view, front.view, onDome);
  let laid: readonly Laid[] = [];
  let fine = 0;
  return {
    under: under.view,
    back: back.view,
    front: all,
    stand(circulation, theme) {
      laid = layVessels(vesselsIn(circulation));
      fine = 0;
      const at = (depth: "under" | "behind" | "before") =>
        laid.filter(({ vessel }) => depth === (vessel.under ? "under" : vessel.behind ? "behind" : "before"));
      const paint = (ink: Graphics, some: readonly Laid[]) => drawVessels(ink, some, circulation, theme);
      under.draw(at("under"), paint);
      // The aorta lies behind the liver, apart from it; the lower vein in a groove of it.
      const isInGroove = ({ vessel }: Laid): boolean => Boolean(vessel.under) && vessel.name !== "descending";
      back.draw([...at("under").filter(isInGroove), ...at("behind")], (ink, some) => {
        drawThroughLiver(ink, some.filter(isInGroove), circulation, theme);
        paint(
          ink,
          some.filter((each) => !isInGroove(each)),
        );
      });
      front.draw(
        at("before").filter(({ vessel }) => !isInLiver(vessel)),
        paint,
      );
      const covers = [LIVER, sacOf(circulation)];
      hidden.draw(
        laid.filter(({ vessel }) => AORTA.includes(vessel.name)),
        (ink, aorta) => drawHiddenAorta(ink, aorta, covers, circulation, theme),
      );
      return laid;
    },
    paint(circulation, density, theme) {
      if (servesAt(fine, density)) return;
      fine = density;
      const veins = laid.filter(({ vessel }) => isInLiver(vessel));
      liverVeins.paint(LIVER_BOUNDS, density * CHEST_AT.scale, [0, 0], (ink) =>
        paintLiverVeins(ink, veins, circulation, theme),
      );
      const anatomy = anatomyOf(chestFrame(circulation.request.stage));
      const opening = hiatusOf(anatomy);
      rim.view.visible = circulation.request.stage !== "two-ventricle";
      rim.paint(boundsOf([opening.rim], 2), density * CHEST_AT.scale, [0, 0], (ink) =>
        paintRim(ink, opening, anatomy.frame.scale, theme),
      );
    },
    move(fall) {
      for (const each of [under, back, front, hidden]) each.move(fall);
      onDome.y = fall;
    },
    release() {
      for (const each of [liverVeins, rim]) each.release();
    },
  };
}

/** What of the circuit's vessels lies in the picture. */
function vesselsIn(circulation: Circulation): readonly Vessel[] {
  const vessels = vesselsOf(circulation.request.stage, fenestrated(circulation)).filter(
    ({ name, painted }) => (painted ? !FEWER.test(name) : !HIDDEN.test(name)),
  );
  const veins = vessels.filter(isInLiver);
  const sac = sacOf(circulation);
  return vessels.map((vessel) =>
    vessel.name.includes("Limb")
      ? inArm(vessel)
      : isInLiver(vessel)
        ? inLiver(vessel, veins)
        : AORTA.includes(vessel.name)
          ? { ...vessel, covers: [LIVER, sac] }
          : vessel.name === "lowerIvc"
            ? { ...vessel, points: [BELOW, ...vessel.points.slice(1)] }
            : vessel,
  );
}

const sacOf = ({ request }: Circulation): readonly Spot[] =>
  anatomyOf(chestFrame(request.stage)).pericardium.map(onPlane);

/** The arms end here, in the picture. */
function inArm(vessel: Vessel): Vessel {
  const inner = vessel.points.filter(([x]) => Math.abs(x - MIDLINE) < SHOULDER);
  const side = Math.sign(entryAt(inner, Math.floor(inner.length / 2))[0] - MIDLINE);
  const arterial = vessel.blood === "arterial";
  const arm = ARM[arterial ? "arterial" : "svc"].map(([x, y]): Spot => [MIDLINE + side * (x - MIDLINE), y]);
  return arterial
    ? { ...vessel, points: [...inner, ...arm], fades: "end" }
    : { ...vessel, points: [...arm.toReversed(), ...inner], fades: "start" };
}

/** The ends of its veins are lost in the liver. */
const inLiver = (vessel: Vessel, veins: readonly Vessel[]): Vessel =>
  widthBefore(vessel, veins) > 0 ? vessel : { ...vessel, fades: "start" };
