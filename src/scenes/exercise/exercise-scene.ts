/** Effort from rest upward: what the veins' pressure, the output, the oxygen used and the pathway's loss do, against two ventricles with the same effort. */
import { Container } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { numberSetting } from "../../sim/parameters/parameters.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import { circuitLegend } from "../circuit/circuit-legend.ts";
import { withAir } from "../drawing/split.ts";
import { sweepPlots } from "../drawing/sweep-plots.ts";
import { type Box, type MakeScene, WITH_ALL } from "../scene.ts";
import { sizesIn } from "../theme/type.ts";
import { effortPair } from "./effort-pair.ts";
import { levelsOff, veinsToLungs } from "./exercise-reading.ts";
import { roomAhead, runners } from "./runners.ts";

/** mL/min per kg: the greatest use of oxygen of 411 young people after completion, a standard deviation to either side (26.3, 6.9: Paridon, J Am Coll Cardiol 2008;52:99). */
export const PEAK = { mean: 26.3, deviation: 6.9 } as const;

const oxygenUse = ({ extras }: Circulation): number => extras.oxygenUsePerKilogram ?? Number.NaN;

/** The effort, times rest, at which a body after completion uses as much oxygen as people use at most on average. */
export function meanPeak(
  states: readonly (readonly [effort: number, circulation: Circulation])[],
): number | undefined {
  const after = states.findIndex(([, circulation]) => oxygenUse(circulation) > PEAK.mean);
  const [before, next] = [states[after - 1], states[after]];
  if (!before || !next || !hasPathway(next[1].request.stage)) return undefined;
  const [low, high] = [oxygenUse(before[1]), oxygenUse(next[1])];
  return before[0] + ((PEAK.mean - low) / (high - low)) * (next[0] - before[0]);
}

/** The figures' part of the charts' height */
const FIGURES = 0.25;

export const makeExercise: MakeScene = () => {
  const view = new Container();
  const bodies = effortPair();
  const legend = circuitLegend();
  const people = runners();
  // With two ventricles nothing is spent on a pathway: the right one pumps through the lungs.
  const plots = sweepPlots(
    [
      {
        title: "further.exercise.pathway",
        read: veinsToLungs,
        remark(states, theme) {
          return levelsOff(states) ? theme.say("further.exercise.levelsOff") : null;
        },
      },
      { title: "further.exercise.output", read: ({ flows }) => flows.systemic },
      {
        title: "further.exercise.oxygen",
        read: oxygenUse,
        measured: ({ request }) =>
          hasPathway(request.stage)
            ? {
                range: [PEAK.mean - PEAK.deviation, PEAK.mean + PEAK.deviation],
                key: "further.exercise.peak",
              }
            : null,
      },
      {
        title: "further.exercise.drop",
        read: ({ request, pathway }) =>
          request.stage === "two-ventricle" ? Number.NaN : pathway.pressureDrop,
        band: ({ pathway }) => pathway.band?.pressureDrop,
      },
    ],
    { key: "further.exercise.beyond", ends: meanPeak },
  );
  view.addChild(legend.view, bodies.view, plots.view, people.view);
  return {
    view,
    draw(frame, viewport, theme) {
      const { floor } = viewport;
      const area = withAir(viewport.clear);
      const wide = area.width > area.height;
      const type = sizesIn(area, floor);
      // On a phone bodies and curves need the room more than the legend does.
      const small = !wide && area.height < type.label * 46;
      legend.view.visible = !small;
      const foot = small ? 0 : legend.draw(area, frame, floor, theme);
      const clear: Box = { ...area, height: area.height - foot };
      const picture: Box = wide
        ? { ...clear, width: clear.width * 0.54 }
        : { ...clear, height: clear.height * 0.46 };
      const charts: Box = wide
        ? { ...clear, x: clear.x + clear.width * 0.56, width: clear.width * 0.44 }
        : { ...clear, y: clear.y + clear.height * 0.48, height: clear.height * 0.52 };
      bodies.draw(frame, picture, viewport, theme);
      const sweep = frame.sweep?.over === "metabolicEquivalents" ? frame.sweep : null;
      plots.view.visible = sweep !== null;
      const row: Box = { ...charts, height: charts.height * FIGURES };
      const now = numberSetting(frame.state.request, "metabolicEquivalents");
      const efforts = sweep?.curves[0]?.points.map(({ at }) => at) ?? [];
      const below: Box = {
        x: charts.x,
        y: charts.y + row.height,
        width: charts.width - roomAhead(efforts, row, type.axis),
        height: charts.height - row.height,
      };
      const axis =
        sweep &&
        plots.draw({ sweep, foot: theme.say("further.axis.met"), mark: now }, below, type.axis, theme);
      people.view.visible = Boolean(axis);
      if (axis) people.draw({ efforts, now, time: frame.time, still: frame.still }, axis, row, theme);
    },
    /** A point's first number is an effort, the second a part of the height of who stands there. */
    toScreen: ([effort, part]) => people.standsAt(effort, part),
    release() {
      // What is drawn goes before the textures that it is drawn with.
      view.destroy(WITH_ALL);
      bodies.release();
      legend.release();
    },
  };
};
