/** Text of a lesson file -> Lesson, or every fault with its line. Nothing here throws, whatever the text. */
import type { Fault } from "../../sim/faults.ts";
import { frontSchema } from "../format/front-matter.ts";
import { LIMITS } from "../format/limits.ts";
import { type ScenePatch, sceneSchema, settingFaults } from "../format/scene-patch.ts";
import { type ReadRecord, readRecord } from "../format/yaml-record.ts";
import type { Lesson, Part, Step } from "../lesson.ts";
import { readFigures, sourceOf, splitFigures } from "../own/own-figures.ts";
import { withOwnKeys } from "../own/own-keys.ts";
import { parseReference } from "../prose.ts";
import { type Extract, type PartName, type StepExtract, splitLesson } from "./lesson-sections.ts";
import { versionOf } from "./lesson-version.ts";
import { type Figures, type Refuse, readProse } from "./read-prose.ts";
import { readQuestion } from "./read-question.ts";
import { readTask } from "./read-task.ts";
import { checkReferences } from "./references.ts";

export interface Reading<T> {
  /** null when there was any fault. */
  readonly value: T | null;
  readonly faults: readonly Fault[];
}

/** Collects faults as `file:line`, up to a number that a reader can use. */
export function refuseIn(file: string): { refuse: Refuse; faults: Fault[] } {
  const faults: Fault[] = [];
  return {
    faults,
    refuse(line, found, allowed, fix) {
      if (faults.length < LIMITS.faults)
        faults.push({ path: `${file}:${line}`, found, allowed, ...(fix ? { fix } : {}) });
      else if (faults.length === LIMITS.faults)
        faults.push({
          path: `${file}:${line}`,
          found: "further faults",
          allowed: "none; fix those above first",
        });
    },
  };
}

/** `file`: its path as faults should name it; its base name must be the lesson's id. */
export function readLesson(written: string, file: string, language = "en"): Reading<Lesson> {
  const { refuse, faults } = refuseIn(file);
  const { text, figures: section } = splitFigures(written);
  const own = readFigures(section);
  for (const { found, allowed } of own.faults) refuse(text.split("\n").length, found, allowed);
  const figures = new Map(own.figures.map((figure) => [figure.name, sourceOf(figure)]));
  const extract = splitLesson(text, refuse);
  const front = extract.front && readRecord(extract.front.text, extract.front.line, frontSchema, refuse);
  if (extract.steps.length === 0 && faults.length === 0) refuse(1, "no step", "## Title {#its-id}");
  const tag = front?.value.language ?? language;
  const steps = extract.steps.map((step, index) =>
    readStep(step, extract.steps[index + 1]?.id ?? null, { language: tag, figures }, refuse),
  );
  if (!front) return { value: null, faults };
  const { value } = front;
  checkPatch(front, value.start, ["start"], refuse);
  for (const [name, patch] of Object.entries(value.states))
    checkPatch(front, patch, ["states", name], refuse);
  const recall = value.recall.flatMap((written) => {
    const reference = parseReference(written.includes("#") ? written : `#${written}`);
    if (!reference) refuse(front.lineOf("recall"), JSON.stringify(written), "step or lesson#step");
    return reference ? [reference] : [];
  });
  const unversioned = {
    ...value,
    file,
    language: tag,
    recall,
    tell: value.tell ?? null,
    goals: value.goals ?? null,
    steps,
    translation: null,
  };
  const lesson: Lesson = withOwnKeys({ ...unversioned, version: versionOf(unversioned) });
  checkReferences(lesson, front, refuse);
  return { value: faults.length === 0 ? lesson : null, faults };
}

function readStep(
  extract: StepExtract,
  nextId: string | null,
  { language, figures }: { readonly language: string; readonly figures: Figures },
  refuse: Refuse,
): Step {
  const part = (name: PartName): Part | null => readPart(extract.parts[name], language, refuse, figures);
  const { scene, question, task } = extract.blocks;
  const read = scene ? readRecord(scene.text, scene.line, sceneSchema, refuse) : null;
  if (read) checkPatch(read, read.value, [], refuse);
  return {
    id: extract.id,
    title: extract.title,
    line: extract.line,
    plain: part("plain") ?? { language, prose: [], line: extract.line },
    technical: part("technical"),
    notes: part("notes"),
    caution: part("caution"),
    patch: read?.value ?? {},
    patchLine: scene?.line ?? extract.line,
    seconds: read?.value.seconds ?? null,
    question: question ? readQuestion(question, nextId, refuse) : null,
    task: readTask(task, refuse),
  };
}

export function readPart(
  extract: Extract | undefined,
  language: string,
  refuse: Refuse,
  figures?: Figures,
): Part | null {
  if (!extract) return null;
  return { language, prose: readProse(extract.text, extract.line, refuse, figures), line: extract.line };
}

/** What the schema cannot know: the parameters and their ranges. */
function checkPatch(read: ReadRecord<unknown>, patch: ScenePatch, path: string[], refuse: Refuse): void {
  const check = (set: ScenePatch["set"], ...at: (string | number)[]) => {
    for (const { name, found, allowed, fix } of settingFaults(set)) {
      refuse(read.lineOf(...path, ...at, "set", name), `set.${name}: ${found}`, allowed, fix);
    }
  };
  check(patch.set);
  for (const [index, beside] of (patch.beside ?? []).entries()) check(beside.set, "beside", index);
  for (const [other, key] of [
    ["case", "body"],
    ["preset", "case"],
    ["preset", "body"],
  ] as const)
    if (patch[other] && patch[key])
      refuse(read.lineOf(...path, key), `${other} and ${key}`, "one of the two");
}
