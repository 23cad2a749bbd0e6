/** A person of the speaker's own at a stop: invented, and in place of the one whom the lesson or the bench has there. */
import * as v from "valibot";
import { formatQuantity, t } from "../../../i18n/index.ts";
import type { Lesson, Step } from "../../../lesson/lesson.ts";
import { findParameter, PARAMETERS } from "../../../sim/parameters/parameters.ts";
import {
  BODY_RANGES,
  type CirculationRequest,
  type ParameterValue,
} from "../../../sim/parameters/request.ts";
import { setBody, setParameter } from "../../../state/edit.ts";
import type { SceneState } from "../../../state/scene-state.ts";
import { settingSentence } from "./what-changed.ts";

const within = ({ min, max }: { readonly min: number; readonly max: number }) =>
  v.pipe(v.number(), v.minValue(min), v.maxValue(max));

const setting = (name: string, value: ParameterValue): boolean => {
  const parameter = findParameter(name);
  if (parameter?.kind === "number")
    return typeof value === "number" && value >= parameter.min && value <= parameter.max;
  return parameter?.words.some((word) => word === value) ?? false;
};

export const personSchema = v.object({
  body: v.object({
    ageYears: within(BODY_RANGES.ageYears),
    bsa: within(BODY_RANGES.bsa),
    haemoglobin: within(BODY_RANGES.haemoglobin),
  }),
  /** Parameters by name, over what the stop sets. */
  set: v.pipe(
    v.record(v.string(), v.union([v.number(), v.string()])),
    v.check(
      (set) => Object.entries(set).every(([name, value]) => setting(name, value)),
      "parameters within their ranges",
    ),
  ),
});
export type OwnPerson = v.InferOutput<typeof personSchema>;

/** The scene with this person in it. */
export function personIn(state: SceneState, person: OwnPerson | null): SceneState {
  if (!person) return state;
  const edits = Object.entries(person.set).map(([name, value]) => setParameter(name, value));
  return edits.reduce((next, edit) => edit(next), setBody(person.body)(state));
}

/** Copies by lesson and person: equal persons share one, so that a prediction and its answer stay one lesson. */
const copies = new WeakMap<Lesson, Map<string, Lesson>>();

/** The lesson as this person goes through it at step `index`: what other steps set themselves stays as they set it. */
export function lessonWith(lesson: Lesson, index: number, person: OwnPerson | null): Lesson {
  if (!person) return lesson;
  const plain = Object.keys(person.set).length === 0;
  const key = JSON.stringify([person, plain ? "" : index]);
  const known = copies.get(lesson) ?? new Map<string, Lesson>();
  copies.set(lesson, known);
  const copy = known.get(key) ?? copyFor(lesson, index, person);
  known.set(key, copy);
  return copy;
}

function copyFor(lesson: Lesson, index: number, { body, set }: OwnPerson): Lesson {
  const start = { ...lesson.start, body, set: { ...lesson.start.set, ...set } };
  const states = Object.entries(lesson.states).map(([name, patch]) => [name, { ...patch, body }] as const);
  const steps = lesson.steps.map((step, place): Step => {
    const { patch } = step;
    const own = place === index ? { set: { ...patch.set, ...set } } : {};
    return { ...step, patch: { ...patch, body, ...own } };
  });
  return { ...lesson, start, states: Object.fromEntries(states), steps };
}

/** "Invented person: 12 years, 1.20 m², haemoglobin 14.0 g/dL", with what is set besides. */
export function personSentence({ body, set }: OwnPerson, request: CirculationRequest): string {
  const settings = PARAMETERS.filter(({ name }) => Object.hasOwn(set, name)).map((parameter) =>
    settingSentence(request, parameter),
  );
  const person = t("lecture.person.is", {
    age: formatQuantity(body.ageYears, "years", Number.isInteger(body.ageYears) ? 0 : 1),
    size: formatQuantity(body.bsa, "m2", 2),
    haemoglobin: formatQuantity(body.haemoglobin, "g/dL", 1),
  });
  return [person, ...settings].join("; ");
}
