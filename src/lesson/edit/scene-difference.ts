/** What a scene block must say so that a step shows what is seen: only what differs from the scene that it is laid over. */
import { CASES, type ParameterValue } from "../../sim/parameters/request.ts";
import { personOf } from "../../state/person.ts";
import type { SceneState, View } from "../../state/scene-state.ts";
import type { ScenePatch } from "../format/scene-patch.ts";
import { applyPatch } from "../model/apply-patch.ts";
import { type Scenes, statesAround } from "../model/states.ts";
import type { Path } from "./yaml-edit.ts";

const VIEW_KEYS = [
  "colouring",
  "overlay",
  "labels",
  "handles",
  "streamlines",
  "gradeLine",
  "ledger",
  "playSpeed",
  "focus",
  "camera",
  "swipe",
  "clots",
] as const satisfies readonly (keyof View)[];

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** `applyPatch(over, ...)` of it gives what is seen, but for a pause and dye, which a look cannot tell. */
export function sceneDifference(over: SceneState, shown: SceneState): ScenePatch {
  // Settings that do not act at this stage are no part of what is seen.
  const seen = applyPatch(shown, { stage: shown.request.stage });
  const patch: ScenePatch = {};
  if (seen.scene !== over.scene) patch.scene = seen.scene;
  if (seen.request.stage !== over.request.stage) patch.stage = seen.request.stage;
  setPersonOf(patch, over, seen);
  const laid = applyPatch(over, patch);
  if (seen.request.volumeRule !== laid.request.volumeRule) patch.volumeRule = seen.request.volumeRule;
  const set = settingsBetween(laid.request.set, seen.request.set);
  if (Object.keys(set).length > 0) patch.set = set;
  const view = Object.fromEntries(
    VIEW_KEYS.filter((key) => !same(seen.view[key], over.view[key])).map((key) => [key, seen.view[key]]),
  );
  if (Object.keys(view).length > 0) patch.view = view as NonNullable<ScenePatch["view"]>;
  if (!same(seen.beside, over.beside))
    patch.beside = seen.beside.map(({ stage, set: differs }) => ({
      ...(stage ? { stage } : {}),
      ...(differs ? { set: { ...differs } } : {}),
    }));
  return patch;
}

/** A person or case by name where it is one, else the body. */
function setPersonOf(patch: ScenePatch, over: SceneState, seen: SceneState): void {
  const person = personOf(seen.request);
  const moved = { ...over.request, stage: seen.request.stage };
  if (person && person !== personOf(moved) && !same(seen.request.body, over.request.body)) {
    patch.preset = person;
    return;
  }
  if (same(seen.request.body, over.request.body)) return;
  const name = (Object.keys(CASES) as (keyof typeof CASES)[]).find((each) =>
    same(CASES[each], seen.request.body),
  );
  if (name) patch.case = name;
  else patch.body = { ...seen.request.body };
}

function settingsBetween(
  from: Readonly<Record<string, ParameterValue>>,
  to: Readonly<Record<string, ParameterValue>>,
): Record<string, ParameterValue> {
  const names = new Set([...Object.keys(from), ...Object.keys(to)]);
  return Object.fromEntries(
    [...names].filter((name) => from[name] !== to[name]).map((name) => [name, to[name] ?? "default"]),
  );
}

/** Edits of the step's scene block, what it is laid over and its time kept. */
export function sceneEdits(lesson: Scenes, index: number, seen: SceneState): readonly [Path, unknown][] {
  const before = lesson.steps[index]?.patch ?? {};
  const { others } = statesAround(lesson, index);
  const over = others[before.from ?? "previous"] ?? seen;
  const wanted: ScenePatch = sceneDifference(over, seen);
  const edits: [Path, unknown][] = [];
  for (const key of ["scene", "stage", "preset", "case", "body", "volumeRule", "beside"] as const)
    if (!same(before[key], wanted[key])) edits.push([[key], wanted[key]]);
  for (const key of ["set", "view"] as const) {
    const [old, next] = [before[key] ?? {}, wanted[key] ?? {}] as Record<string, unknown>[];
    for (const name of new Set([...Object.keys(old ?? {}), ...Object.keys(next ?? {})]))
      if (name !== "dye" && !same(old?.[name], next?.[name])) edits.push([[key, name], next?.[name]]);
  }
  return edits;
}
