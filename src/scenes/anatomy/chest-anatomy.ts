/** All that is drawn around a pathway, as shapes in its plane (mm, y up): the one anatomy of every scene. */
import { band } from "../../sim/geometry/centreline.ts";
import type { ChestFrame, Point } from "../../sim/geometry/geometry.ts";
import { type AbdomenShape, abdomenShape } from "./abdomen-shape.ts";
import { type FeedingVein, feedingVeins } from "./feeding-veins.ts";
import { aorta, type BloodTube, behind, type Tube } from "./great-vessels.ts";
import { type HeartShape, heartShape } from "./heart-shape.ts";
import { type LungShape, lungShape } from "./lung-shape.ts";
import { pericardium } from "./pericardium.ts";
import { placing } from "./placing.ts";
import { type RightAtrium, rightAtrium } from "./right-atrium-shape.ts";

/** What can be kept off or outlined. `ground`: all else lies on it, plates too. `open`: a band whose ends stay open. */
interface Part {
  readonly name: string;
  readonly outline: readonly Point[];
  readonly ground?: true;
  readonly open?: true;
}

export interface Anatomy {
  readonly frame: ChestFrame;
  readonly heart: HeartShape;
  readonly lungs: readonly [right: LungShape, left: LungShape];
  readonly abdomen: AbdomenShape;
  /** beside a conduit */
  readonly rightAtrium: RightAtrium | null;
  /** the pericardium's cut edge: a closed outline */
  readonly pericardium: readonly Point[];
  /** behind heart and pathway */
  readonly behind: readonly BloodTube[];
  /** veins that feed the pathway */
  readonly veins: readonly FeedingVein[];
  /** before heart and pathway: the aorta to the end of its arch, and what leaves it */
  readonly before: readonly BloodTube[];
  /** back to front */
  readonly parts: readonly Part[];
}

/** What is made of a frame, once. */
function keptBy<Made>(make: (frame: ChestFrame) => Made): (frame: ChestFrame) => Made {
  const known = new WeakMap<ChestFrame, Made>();
  return (frame) => {
    const made = known.get(frame) ?? make(frame);
    known.set(frame, made);
    return made;
  };
}

/** The lungs alone, between which a camera is aimed before the rest is known. */
export const lungsOf = keptBy((frame): Anatomy["lungs"] => {
  const place = placing(frame);
  return [lungShape("right", place), lungShape("left", place)];
});

export const anatomyOf = keptBy(make);

function make(frame: ChestFrame): Anatomy {
  const place = placing(frame);
  const heart = heartShape(place);
  const lungs = lungsOf(frame);
  const abdomen = abdomenShape(place);
  const closed = rightAtrium(place);
  const tubes = { behind: behind(place, heart), veins: feedingVeins(place), before: aorta(place, heart) };
  return {
    frame,
    heart,
    lungs,
    abdomen,
    rightAtrium: closed,
    pericardium: pericardium(place),
    ...tubes,
    parts: [
      ...lungs.map(({ side, outline }) => ({ name: `${side}Lung`, outline, ground: true }) as const),
      { name: "liver", outline: abdomen.liver, ground: true },
      ...abdomen.portal.map(partOf),
      ...tubes.behind.map(partOf),
      { name: "atrium", outline: heart.atrium },
      { name: "atrium", outline: heart.appendage },
      ...(closed ? [{ name: "atrium", outline: closed.outline }] : []),
      { name: "ventricle", outline: heart.ventricle },
      ...tubes.veins.map(partOf),
      ...tubes.before.map(partOf),
    ],
  };
}

/** A vessel as a band of a few points; what lies within the liver is ground as that is. */
function partOf({ name, line, from, to }: Tube): Part {
  const last = line.length - 1;
  const points = line.filter((_, i) => i % THINNED === 0 || i === last);
  const inLiver = /ortal|Hepatic|lowerInferior/.test(name);
  return { name, outline: band(points, from, to), open: true, ...(inLiver ? { ground: true } : {}) };
}

/** Of a smooth line's points every so many outline it well enough. */
const THINNED = 3;
