/** Where pulmonary veins open into an atrium, seen from within: each comes along behind the back wall and ends in an oval with a shaded rim. */
import { line, spotAt } from "../../sim/geometry/centreline.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import type { BloodTube } from "./great-vessels.ts";
import { bandOf } from "./paint-tube.ts";
import { type Ink, trace } from "./painted-sheet.ts";
import { type Round, tissue } from "./tones.ts";

export function paintMouths(ink: Ink, veins: readonly BloodTube[], round: Round, theme: Theme): void {
  for (const vein of veins) paintBulge(ink, vein, round);
  for (const vein of veins) paintMouth(ink, vein, round, theme);
}

/** A vein that runs on the other side of the back wall lifts it. */
function paintBulge(ink: Ink, vein: BloodTube, { body, wall, light }: Round): void {
  const whole = line(vein.line);
  ink.save();
  for (const [part, aside, alpha, colour] of [
    [1.12, 0, 0.1, wall],
    [1, 0, 0.2, body],
    [0.5, 0.3, 0.25, light],
  ] as const) {
    trace(ink, bandOf(whole, vein, { part, aside }), true);
    ink.globalAlpha = alpha;
    ink.fillStyle = colour;
    ink.fill();
  }
  ink.restore();
}

/** In eighths of the vein's width: half of the mouth along the vein's way and across it. */
const MOUTH = [2, 3] as const;

/** What a vein's lumen turns to where it runs on behind the wall. */
const DEEP = "#2a0508";

function paintMouth(ink: Ink, vein: BloodTube, round: Round, theme: Theme): void {
  const look = tissue("atrium", theme);
  const deep = mix(round.edge, DEEP, 0.45);
  const { at, along } = spotAt(line(vein.line), 1);
  const oval = (more: number, shift = 0) => {
    ink.beginPath();
    ink.ellipse(shift, 0, MOUTH[0] + more, MOUTH[1] + more, 0, 0, 2 * Math.PI);
  };
  ink.save();
  ink.translate(...at);
  ink.rotate(Math.atan2(along[1], along[0]));
  ink.scale(vein.to / 8, vein.to / 8);
  // The wall turns in towards it.
  ink.globalAlpha = 0.12;
  ink.fillStyle = look.shade;
  for (const more of [1.6, 1.2, 0.8, 0.4]) {
    oval(more);
    ink.fill();
  }
  ink.globalAlpha = 1;
  oval(0);
  ink.save();
  ink.clip();
  ink.fillStyle = deep;
  ink.fillRect(-4, -4, 8, 8);
  // Its far wall comes into the light, bit by bit: it runs on under the near rim.
  for (const [shift, part] of [
    [0.5, 0.25],
    [0.9, 0.5],
    [1.3, 0.75],
    [1.7, 1],
  ] as const) {
    oval(0, shift);
    ink.fillStyle = mix(deep, round.body, part);
    ink.fill();
  }
  ink.restore();
  oval(0.2);
  ink.lineWidth = 0.55;
  ink.strokeStyle = look.light;
  ink.stroke();
  ink.restore();
}
