import { describe, expect, it } from "vitest";
import { ecgOver } from "../../src/scenes/drawing/ecg.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";

const POINTS = 4000;
const of = (rhythm: string) => solve({ ...START.request, set: rhythm === "sinus" ? {} : { rhythm } });

describe("the schematic ECG", () => {
  it("has one R wave for each of the model's beats, just before the ventricle's pressure rises", () => {
    const circulation = of("sinus");
    const { period, heartPeriod, time, pressures } = circulation.traces;
    const ecg = ecgOver(circulation, POINTS);
    const peaks = ecg.flatMap((value, i) =>
      value > 0.8 && value >= (ecg[i - 1] ?? 0) && value > (ecg[i + 1] ?? 0)
        ? [(period * i) / (POINTS - 1)]
        : [],
    );
    expect(peaks).toHaveLength(Math.round(period / heartPeriod));
    const ventricle = pressures.ventricle!;
    for (const peak of peaks) {
      const at = (seconds: number) => ventricle[time.findIndex((each) => each >= seconds % period)]!;
      // Within a seventh of a second it has risen steeply.
      expect(at(peak + 0.14) - at(peak)).toBeGreaterThan(20);
    }
  });

  it("shows the atria where they lead, and hides them where they do not", () => {
    const lead = (rhythm: string) => {
      const circulation = of(rhythm);
      const { period, heartPeriod } = circulation.traces;
      const ecg = ecgOver(circulation, POINTS);
      // From 0.26 to 0.14 s before the second beat.
      const index = (seconds: number) => Math.round(((POINTS - 1) * seconds) / period);
      return Math.max(...ecg.slice(index(heartPeriod - 0.24), index(heartPeriod - 0.14)));
    };
    expect(lead("sinus")).toBeGreaterThan(0.12);
    expect(lead("junctional")).toBeLessThan(0.05);
    expect(lead("no-atrial-contraction")).toBeLessThan(0.05);
  });
});
