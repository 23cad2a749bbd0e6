/** Painters of the stages other than the extracardiac conduit: importing them makes them known. */
import { setJoined } from "../joined.ts";
import { mixing } from "./atrium-mixing.ts";
import { paintFloor } from "./entering-vein.ts";
import { paintChamber } from "./paint-chamber.ts";
import { paintWithin } from "./paint-common-atrium.ts";
import { paintPatch } from "./paint-patch.ts";

setJoined({ chamber: paintChamber, within: paintWithin, floor: paintFloor, patch: paintPatch, mixing });
