/** A schematic electrocardiogram timed by the model's beat. The model has no electricity: only when each wave comes is its own. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { wordSetting } from "../../sim/parameters/parameters.ts";

/** A wave: s into the beat of its middle, half its width, and its height where the R wave's is 1. */
interface Wave {
  readonly at: number;
  readonly width: number;
  readonly height: number;
}

/** s by which the ventricles' electricity comes before their contraction, and the atria's before that (teaching values; PR 0.12 to 0.2 s in every textbook). */
const AHEAD = 0.04;
const CONDUCTION = 0.16;
/** Part of the beat that conduction takes at most: a fast heart conducts sooner. */
const SHORTEST = 0.25;
/** s from the T wave's middle to the end of ejection */
const BEFORE_CLOSURE = 0.05;

/** Rhythms in which the atria are seen to lead; in the junctional one their wave is hidden in the ventricles'. */
const WITH_P: readonly string[] = ["sinus", "aai"];

/** s from the onset of contraction to the end of ejection, by the flow into the aorta in the first beat. */
function ejectionEnd({ time, heartPeriod, flows }: Circulation["traces"]): number {
  const { aorta } = flows;
  let end = 0.35 * heartPeriod;
  if (!aorta) return end;
  const most = Math.max(...aorta);
  for (let i = 0; i < time.length && entryAt(time, i) < heartPeriod; i++)
    if (entryAt(aorta, i) > 0.05 * most) end = entryAt(time, i);
  return end;
}

/** Waves of one beat that begins to contract at 0 s. */
function wavesOf({ traces, request }: Circulation): readonly Wave[] {
  const rhythm = wordSetting(request, "rhythm");
  const paced = rhythm === "vvi";
  const wide = paced ? 2.2 : 1;
  const p = -AHEAD - Math.min(CONDUCTION, SHORTEST * traces.heartPeriod);
  return [
    ...(WITH_P.includes(rhythm) ? [{ at: p, width: 0.028, height: 0.16 }] : []),
    ...(rhythm === "aai" ? [{ at: p - 0.05, width: 0.003, height: 0.7 }] : []),
    ...(paced ? [{ at: -AHEAD - 0.06, width: 0.003, height: 0.7 }] : []),
    { at: -AHEAD - 0.022 * wide, width: 0.008 * wide, height: -0.14 },
    { at: -AHEAD, width: 0.011 * wide, height: 1 },
    { at: -AHEAD + 0.024 * wide, width: 0.01 * wide, height: -0.26 },
    { at: ejectionEnd(traces) - BEFORE_CLOSURE, width: 0.05, height: paced ? -0.3 : 0.28 },
  ];
}

/** Height (R = 1) at each of `count` moments spread evenly over the cycle, ends included. */
export function ecgOver(circulation: Circulation, count: number): readonly number[] {
  const { period, heartPeriod } = circulation.traces;
  const waves = wavesOf(circulation);
  return Array.from({ length: count }, (_, i) => {
    const seconds = (period * i) / (count - 1);
    return waves.reduce((sum, { at, width, height }) => {
      const beats = Math.round((seconds - at) / heartPeriod);
      const away = (seconds - at - beats * heartPeriod) / width;
      return sum + height * Math.exp(-0.5 * away * away);
    }, 0);
  });
}
