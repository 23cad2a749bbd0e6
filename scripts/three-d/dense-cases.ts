/** Where the law erred most: streams near the place where they change sides, tubes narrower than their veins, and more of the spread. */
import { type Case, type Covered, everything } from "./case.ts";

const EC = "extracardiac";
const LT = "lateral-tunnel";
const AP = "atriopulmonary";

/** As in the filling cases. */
const TUBES = 28;
const CHAMBER = 25;

const PARTING: Partial<Covered> = { family: "parting", skipped: 200, offset: [-0.9, 0.5] };
const NARROW: Partial<Covered> = {
  family: "narrow",
  skipped: 300,
  age: [8, 19],
  diameter: [12, 16],
  index: [3, 7],
};
const AGAIN: Partial<Covered> = { skipped: 100 };

export const denseCases = (): Case[] =>
  [
    ...everything(LT, 1, 16, PARTING),
    ...everything(EC, 1, 16, PARTING),
    ...everything(LT, 1, 10, NARROW),
    ...everything(EC, 1, 8, NARROW),
    ...everything(LT, 21, 48, AGAIN),
    ...everything(EC, 23, 50, AGAIN),
    ...everything(AP, 12, 27, AGAIN),
  ].map((each) => ({ ...each, across: each.stage === AP ? CHAMBER : TUBES }));
