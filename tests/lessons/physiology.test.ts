/** What a lesson says of bodies, held to the model's curves and to the list of publications. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readLessonFiles } from "../../src/cli/lesson-files.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { CASES } from "../../src/sim/parameters/request.ts";

const { lessons, sources } = readLessonFiles("lessons");
const english = lessons.en ?? [];
const text = (id: string): string => readFileSync(`lessons/en/${id}.md`, "utf8");

/** Where a curve stands highest, as a part of the breath, each beat evened out. */
function peak(curve: ArrayLike<number>, beats: number): number {
  const samples = curve.length - 1;
  const beat = Math.round(samples / beats);
  const even = Array.from({ length: samples }, (_, i) => {
    let sum = 0;
    for (let k = 0; k < beat; k++) sum += curve[(i + k - (beat >> 1) + samples) % samples]!;
    return sum;
  });
  return even.indexOf(Math.max(...even)) / samples;
}

test("the order of one deep breath is the model's: caval flow, blood in the lungs, filling of the heart", () => {
  const { traces } = solve({
    kind: "circulation",
    stage: "extracardiac",
    body: CASES.caseB,
    volumeRule: "fixed-volume",
    set: { breathing: "deep" },
  });
  const beats = traces.period / traces.heartPeriod;
  const volume = (name: string) => Array.from(traces.volumes[name] ?? []);
  const [lungLeft, lungRight, ventricle] = [volume("lungLeft"), volume("lungRight"), volume("ventricle")];
  const at: Record<string, number> = {
    in: 0,
    vein: peak(traces.flows.ivc ?? [], beats),
    lungs: peak(
      lungLeft.map((volume, i) => volume + lungRight[i]!),
      beats,
    ),
    heart: peak(ventricle, beats),
  };
  const question = english
    .find(({ id }) => id === "07-without-a-pump")
    ?.steps.find(({ id }) => id === "recoil")?.question;
  expect(question).toMatchObject({ order: Object.keys(at).sort((a, b) => at[a]! - at[b]!) });
});

test("in the catheter lesson the aorta swings with the beat, the path hardly, and the atrium shows two waves", () => {
  const { traces, pressures } = solve({
    kind: "circulation",
    stage: "extracardiac",
    body: CASES.caseA,
    volumeRule: "fixed-volume",
    set: { fenestrationDiameter: 4 },
  });
  const swing = (name: string) => {
    const curve = traces.pressures[name] ?? [];
    return Math.max(...curve) - Math.min(...curve);
  };
  expect(swing("aorta")).toBeGreaterThan(30);
  expect(swing("pathway")).toBeLessThan(swing("aorta") / 10);
  const beat = Math.round(((traces.time.length - 1) * traces.heartPeriod) / traces.period);
  const atrium = Array.from((traces.pressures.atrium ?? []).slice(0, beat));
  const before = (i: number, by: number) => atrium[(i + by + beat) % beat]!;
  const peaks = atrium.filter((value, i) => value > before(i, -1) && value >= before(i, 1));
  expect(peaks.filter((value) => value > pressures.atrium + 0.5).length).toBeGreaterThanOrEqual(2);
});

test("fluid that seeps is given in ratios: the model's millilitres are of a teaching size", () => {
  for (const { id } of english) expect(text(id), id).not.toMatch(/\{\{[^}]*exchange\.[^}]*\|\s*mL/);
});

test("every publication in the list is cited by a lesson", () => {
  const cited = english.map(({ id }) => text(id)).join("\n");
  const idle = Object.keys(sources).filter((key) => !new RegExp(`[\\^\\[ ]${key}[\\],]`).test(cited));
  expect(Object.keys(sources)).toContain("fontan-1971");
  expect(idle).toEqual([]);
});
