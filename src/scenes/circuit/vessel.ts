/** A vessel of the whole circulation's drawing: what moves its blood, what it holds, and where it lies. */
import { entryAt } from "../../sim/checked/present.ts";
import { KIDNEY_SHARE } from "../../sim/parameters/organ-flow.ts";
import type { Ventricle } from "../anatomy/standing.ts";
import { type Spot, spots } from "../drawing/curve-drawing.ts";

/** What flows through the inferior vena cava between kidneys and liver. */
export const BELOW_LIVER = `legs+splanchnic*${KIDNEY_SHARE}`;

/** Blood of one oxygen level: keys of the circulation's saturations, or what the model gives beside them for one organ or mixture. */
export type Blood =
  | "arterial"
  | "svc"
  | "ivc"
  | "pulmonaryArtery"
  | "pulmonaryVein"
  | "legs"
  | "kidneys"
  | "belowLiver"
  | "portal"
  | "hepatic";

export interface Vessel {
  readonly name: string;
  /** name of the flow trace ("a+b*0.5" adds half of one to another) that moves its blood, from the first point to the last */
  readonly flow: string;
  readonly points: readonly Spot[];
  readonly width: number;
  /** oxygen at its beginning and, where it changes within (organs, lungs), at its end */
  readonly blood: Blood;
  readonly becomes?: Blood;
  /** drawn beneath the heart and the lungs' vessels */
  readonly behind?: true;
  /** fine strands side by side: a bed of capillaries */
  readonly bed?: true;
  /** a bed whose strands leave one line all along, and enter another */
  readonly between?: readonly [from: readonly Spot[], to: readonly Spot[]];
  /** finer and paler than other beds */
  readonly fine?: true;
  /** a chamber whose blood fills all between these two lines along it */
  readonly sides?: readonly [readonly Spot[], readonly Spot[]];
  /** vessels of one name here open into each other: their walls lie beneath all their lumens */
  readonly joins?: string;
  /** its lumen is part of a painted organ: only its blood is drawn */
  readonly painted?: true;
  /** lies deep in an organ of this tissue, through which it is seen */
  readonly deep?: true;
  /** lies on the back wall of the belly: beneath liver and diaphragm, through which it is seen faintly */
  readonly under?: true;
  /** what holds it swells about this spot */
  readonly about?: Spot;
  /** that is a ventricle of this volume; a lung when left out */
  readonly beats?: Ventricle;
  /** a chamber of a heart that goes down with the dome while the vessels stay */
  readonly hangs?: true;
  /** closed outlines of painted parts before it, under which its blood isn't seen */
  readonly covers?: readonly (readonly Spot[])[];
  /** which of its ends goes over into what is drawn under it, of the same width there */
  readonly opens?: "start" | "end";
  /** which of its ends goes on out of the picture */
  readonly fades?: "start" | "end";
  /** which of its ends is narrower: it branches into a bed there, or comes from one; and the part of its width lost there, half when left out */
  readonly tapers?: "start" | "end";
  readonly narrows?: number;
  /** the part of the trace's flow that is drawn as going this way; the model has one stream for head and arms, one for gut, liver and kidneys, and one for both legs */
  readonly share?: number;
  /** factor on its width as drawn, by its flow */
  readonly widened?: number;
}

export const vessel = (
  name: string,
  [flow, blood]: readonly [flow: string, blood: Blood],
  width: number,
  way: string,
  more: Partial<Vessel> = {},
): Vessel => ({ name, flow, blood, width, points: spots(way), ...more });

/** A bed of capillaries all along from one vessel to another. */
export function net(
  name: string,
  flow: string,
  [blood, becomes]: readonly [from: Blood, to: Blood],
  share: number,
  ...ways: readonly [from: string | readonly Spot[], to: string | readonly Spot[]]
): Vessel {
  const along = (way: string | readonly Spot[]) => (typeof way === "string" ? spots(way) : way);
  const [from, to] = [along(ways[0]), along(ways[1])] as const;
  const middle = (side: readonly Spot[]) => entryAt(side, Math.floor(side.length / 2));
  const reach = [from, to].map((side) =>
    Math.max(...side.map(([x, y]) => Math.hypot(x - middle(side)[0], y - middle(side)[1]))),
  );
  return {
    name,
    flow,
    blood,
    becomes,
    bed: true,
    width: 2 * Math.max(...reach) + 4,
    points: [middle(from), middle(to)],
    between: [from, to],
    share,
  };
}
