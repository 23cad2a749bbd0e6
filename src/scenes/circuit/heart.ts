/** The light around what is pointed at in the painted heart. */
import type { Graphics } from "pixi.js";
import type { Stage } from "../../sim/parameters/request.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import type { Theme } from "../theme/theme.ts";
import { chestFrame, onPlane } from "./chest-plan.ts";

/** Where the painted atrium or ventricle is pointed at, a light around it. */
export function drawHeartLight(ink: Graphics, stage: Stage, lit: ReadonlySet<string>, theme: Theme): void {
  ink.clear();
  for (const { name, outline } of anatomyOf(chestFrame(stage)).parts) {
    if (!HEART.includes(name) || !lit.has(name)) continue;
    ink.poly(outline.flatMap(onPlane)).stroke({ color: theme.colour.accent, width: 8, join: "round" });
  }
}

const HEART: readonly string[] = ["atrium", "ventricle"];
