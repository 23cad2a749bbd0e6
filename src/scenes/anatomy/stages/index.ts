/** Painters of the stages other than the extracardiac conduit: importing them makes them known. */
import { setJoined } from "../joined.ts";
import { mixing } from "./atrium-mixing.ts";
import { clearBefore } from "./clear-before.ts";
import { paintFloor } from "./entering-vein.ts";
import { paintChamber } from "./paint-chamber.ts";
import { paintChamberLining, paintThroughChamber } from "./paint-chamber-lining.ts";
import { paintWithin } from "./paint-common-atrium.ts";
import { paintHole, paintPatch } from "./paint-patch.ts";
import { paintThroughTunnel, paintTunnelLining } from "./paint-tunnel-lining.ts";

setJoined({
  within: paintWithin,
  clears: clearBefore,
  floor: paintFloor,
  mixing,
  sewn(ink, bounds, anatomy, seen) {
    const { graft, hole, scale } = anatomy.frame;
    const { theme } = seen;
    paintChamber(ink, bounds, anatomy, seen);
    if (graft?.kind !== "patch") return;
    paintPatch(ink, graft, scale, theme);
    if (hole) paintHole(ink, hole, scale, theme);
  },
  lining(ink, bounds, anatomy, { outlines, theme }) {
    const { frame } = anatomy;
    paintChamberLining(ink, bounds, anatomy, outlines, theme);
    const { graft } = frame;
    if (graft?.kind === "patch") paintTunnelLining(ink, { ...frame, graft }, theme);
  },
  through(ink, bounds, anatomy, { outlines, theme }) {
    const { graft } = anatomy.frame;
    paintThroughChamber(ink, bounds, anatomy, outlines, theme);
    if (graft?.kind === "patch") paintThroughTunnel(ink, anatomy, graft, theme);
  },
});
