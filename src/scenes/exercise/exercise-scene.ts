/** Effort from rest upward: what the heart's rate, each beat, their product and the veins' pressure do, against two ventricles with the same effort. */
import { Container } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { numberSetting } from "../../sim/parameters/parameters.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import { circuitLegend } from "../circuit/circuit-legend.ts";
import { withAir } from "../drawing/split.ts";
import { sweepPlots } from "../drawing/sweep-plots.ts";
import { type Box, type MakeScene, WITH_ALL } from "../scene.ts";
import { sizesIn } from "../theme/type.ts";
import { OUTPUT, RATE, STROKE, VEINS } from "./change-rows.ts";
import { effortOf, effortPair, pairOf } from "./effort-pair.ts";
import { placesAmong, roomAhead, rowHeight, runners } from "./runners.ts";

/** mL/min per kg: the greatest use of oxygen of 411 young people after completion, a standard deviation to either side (26.3, 6.9: Paridon, J Am Coll Cardiol 2008;52:99). */
export const PEAK = { mean: 26.3, deviation: 6.9 } as const;

/** Years of age from which on what was measured in adults is shown. */
const ADULT = 18;
/** mmHg in an arm's vein at the greatest effort of 46 adults after completion, a standard deviation to either side (Colman, Heart 2021;107:983). */
const VEINS_AT_PEAK: readonly [low: number, high: number] = [23 - 5.5, 23 + 5.5];

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

/** Sizes of type: under the runners their effort. */
const WORDS = 1.5;
/** Bodies over the charts: their height at most, in widths. */
const SQUARE = 0.95;

export const makeExercise: MakeScene = () => {
  const view = new Container();
  const bodies = effortPair();
  const legend = circuitLegend();
  const people = runners();
  const plots = sweepPlots(
    [
      {
        title: "further.exercise.pathway",
        read: VEINS.read,
        measured: ({ request }) =>
          hasPathway(request.stage) && request.body.ageYears >= ADULT
            ? { range: VEINS_AT_PEAK, key: "further.exercise.measured" }
            : null,
      },
      { title: "further.exercise.rate", read: RATE.read },
      { title: "further.exercise.stroke", read: STROKE.read },
      { title: "further.exercise.output", read: OUTPUT.read },
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
      const tall = Math.min(0.47 * clear.height, SQUARE * clear.width);
      const picture: Box = wide ? { ...clear, width: clear.width * 0.66 } : { ...clear, height: tall };
      const charts: Box = wide
        ? { ...clear, x: clear.x + clear.width * 0.68, width: clear.width * 0.32 }
        : { ...clear, y: clear.y + tall + type.axis, height: clear.height - tall - type.axis };
      bodies.draw(frame, picture, viewport, theme);
      const sweep = frame.sweep?.over === "metabolicEquivalents" ? frame.sweep : null;
      plots.view.visible = sweep !== null;
      const now = numberSetting(frame.state.request, "metabolicEquivalents");
      const beside = pairOf(frame)
        .map(effortOf)
        .find((effort) => effort !== now);
      const efforts = sweep?.curves[0]?.points.map(({ at }) => at) ?? [];
      const words = WORDS * type.axis;
      const height = rowHeight(efforts, charts, type.axis);
      const below = { ...charts, width: charts.width - roomAhead(efforts, { ...charts, height }, type.axis) };
      const over = { height: height + words, stands: placesAmong(efforts) };
      const axis =
        sweep &&
        plots.draw(
          { sweep, foot: theme.say("further.axis.met"), mark: now, beside, picture: over },
          below,
          type.axis,
          theme,
        );
      people.view.visible = Boolean(axis);
      if (!axis) return;
      const row: Box = { ...charts, y: axis.top - height - words, height };
      const years = frame.state.request.body.ageYears;
      people.draw(
        { efforts, now, beside, years, time: frame.time, still: frame.still },
        axis,
        row,
        type.axis,
        theme,
      );
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
