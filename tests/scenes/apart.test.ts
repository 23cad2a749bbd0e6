import { expect, test } from "vitest";
import { t } from "../../src/i18n/index.ts";
import { apartIn, brieflyApart, namesIn } from "../../src/scenes/drawing/apart.ts";
import type { CirculationRequest } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

const asked = (set: CirculationRequest["set"], stage = START.request.stage): CirculationRequest => ({
  ...START.request,
  stage,
  set,
});

test("states of one stage are told apart by every setting in which they differ, be it a default", () => {
  const pair = [asked({ contractility: 0.5 }), asked({ contractility: 1, stiffness: 1.5 })];
  const [one, other] = apartIn(pair, t);
  expect(one).toMatch(/0\.50, .*1\.00$/);
  expect(other).toMatch(/1\.00, .*1\.50$/);
  expect(namesIn(pair, t)).toEqual([one, other]);
  expect(apartIn([asked({ contractility: 1 }), asked({})], t)).toEqual(["", ""]);
  // A word that is set has its own words.
  expect(apartIn([asked({ rhythm: "aai" }), asked({ rhythm: "vvi" })], t)[1]).toContain(
    t("parameter.rhythm.vvi"),
  );
});

test("another stage needs nothing more, and of three only the two of one stage are told apart", () => {
  const three = [asked({}), asked({ fenestrationDiameter: 4 }), asked({}, "atriopulmonary")];
  expect(apartIn(three, t)[2]).toBe("");
  expect(new Set(namesIn(three, t)).size).toBe(3);
  expect(brieflyApart(three, t)[1]).toMatch(/^Extracardiac, 4\.0/);
  expect(namesIn([asked({}), asked({}, "glenn")], t)).toEqual([t("stage.extracardiac"), t("stage.glenn")]);
});
