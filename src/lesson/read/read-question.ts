/** A question block -> Question. */
import * as v from "valibot";
import { present } from "../../sim/checked/present.ts";
import { nearestMatch } from "../../sim/faults.ts";
import { findParameter, PARAMETERS } from "../../sim/parameters/parameters.ts";
import { QUESTION_KINDS, QUESTION_SCHEMAS, TRANSLATED_SCHEMAS } from "../format/question-schema.ts";
import { type ReadRecord, readRecord } from "../format/yaml-record.ts";
import type { Answer, Question, Words } from "../lesson.ts";
import { type Expression, parseExpression } from "../model/expression.ts";
import type { Extract } from "./lesson-sections.ts";
import {
  type RawOf,
  type RawQuestion,
  type Reading,
  readTolerance,
  readUnit,
  sameKeys,
} from "./question-reading.ts";
import { readNumber, type TranslatedNumber, translateNumber } from "./read-number.ts";
import { type Refuse, readInline } from "./read-prose.ts";

const kindSchema = v.looseObject({ kind: v.picklist(QUESTION_KINDS) });
/** What is written for true and false by those who speak to people. */
const SPOKEN: Readonly<Record<string, string>> = Object.assign(Object.create(null), {
  yes: "true",
  right: "true",
  x: "true",
  no: "false",
  wrong: "false",
});
const NEVER: Expression = { kind: "number", value: 0 };

/** `nextStep`: id of the step after, the usual `reveal`. null when it is refused. */
export function readQuestion(block: Extract, nextStep: string | null, refuse: Refuse): Question | null {
  const read = readRecord(block.text, block.line, schemaFor, refuse);
  // The schema of a known kind has let it through.
  return read && build(read as ReadRecord<RawQuestion>, nextStep, block.line, refuse);
}

function schemaFor(raw: unknown): v.GenericSchema {
  const kind = (raw as { kind?: unknown } | null)?.kind;
  return QUESTION_SCHEMAS[present(QUESTION_KINDS.find((each) => each === kind))] ?? kindSchema;
}

function build(
  read: ReadRecord<RawQuestion>,
  nextStep: string | null,
  line: number,
  refuse: Refuse,
): Question | null {
  const raw = read.value;
  const words: Reading["words"] = (text, ...path) => readInline(text ?? "", read.lineOf(...path), refuse);
  const expression: Reading["expression"] = (value, ...path) => {
    const parsed = parseExpression(String(value));
    const spoken = path.at(-1) === "right" ? SPOKEN[String(value).toLowerCase()] : undefined;
    if (spoken)
      refuse(read.lineOf(...path), `right: ${value}`, "true or false", [
        `right: ${value}`,
        `right: ${spoken}`,
      ]);
    else if (!parsed.ok) refuse(read.lineOf(...path), parsed.found, parsed.allowed);
    if (spoken) return NEVER;
    return parsed.ok ? parsed.value : NEVER;
  };
  const asked = {
    ask: words(raw.ask, "ask"),
    hints: raw.hints.map((hint) => words(hint, "hints")),
    again: raw.again ?? null,
    room: raw.room,
    line,
  };
  const reading: Reading = { lineOf: (...path) => read.lineOf(...path), words, expression, refuse, asked };
  switch (raw.kind) {
    case "choose":
      return { kind: "choose", ...readChoice(raw, reading) };
    case "predict": {
      const choice = readChoice(raw, reading);
      const reveal = raw.reveal ?? nextStep;
      if (reveal === null)
        refuse(line, "a prediction in the last step", "a step after it that shows the answer");
      return { kind: "predict", ...choice, reveal: reveal ?? "" };
    }
    case "goal":
      return readGoal(raw, reading);
    case "estimate":
      return readEstimate(raw, reading);
    case "number":
      return readNumber(raw, reading);
    case "order":
      return readOrder(raw, reading);
  }
}

function readChoice(raw: RawOf<"predict"> | RawOf<"choose">, reading: Reading) {
  const { words, expression, asked } = reading;
  const answers = Object.entries(raw.answers).map(
    ([id, answer]): Answer => ({
      id,
      say: words(answer.say, "answers", id, "say"),
      because: words(answer.because, "answers", id, "because"),
      right:
        typeof answer.right === "boolean" ? answer.right : expression(answer.right, "answers", id, "right"),
      show: answer.show ?? null,
    }),
  );
  if (raw.scale && !sameKeys(raw.scale, Object.keys(raw.answers)))
    reading.refuse(
      reading.lineOf("scale"),
      `scale: ${raw.scale.join(", ")}`,
      "every key of the answers, each once",
    );
  return { ...asked, answers, scale: raw.scale ?? null };
}

function readGoal(
  raw: RawOf<"goal">,
  { words, expression, asked, refuse, lineOf }: Reading,
): Question | null {
  if (findParameter(raw.control)?.kind !== "number") {
    const numbers = PARAMETERS.filter(({ kind }) => kind === "number").map(({ name }) => name);
    const near = nearestMatch(raw.control, numbers);
    refuse(
      lineOf("control"),
      `control: ${raw.control}`,
      `a parameter with a number${near ? `; nearest: ${near}` : `, such as ${numbers.slice(0, 3).join(", ")}`}`,
    );
    return null;
  }
  return {
    kind: "goal",
    ...asked,
    control: raw.control,
    until: expression(raw.until, "until"),
    best: raw.best ?? null,
    within: raw.within,
    reached: words(raw.reached, "reached"),
    further: words(raw.further ?? raw.reached, "further"),
    missed: words(raw.missed, "missed"),
  };
}

function readEstimate(raw: RawOf<"estimate">, reading: Reading): Question {
  const { words, expression, asked } = reading;
  return {
    kind: "estimate",
    ...asked,
    of: expression(raw.of, "of"),
    format: readUnit(raw.unit, reading),
    within: readTolerance(raw.within),
    close: words(raw.close, "close"),
    low: words(raw.low, "low"),
    high: words(raw.high, "high"),
  };
}

function readOrder(raw: RawOf<"order">, { words, expression, asked, refuse, lineOf }: Reading): Question {
  const items = Object.entries(raw.items).map(([id, item]) => ({
    id,
    say: words(item.say, "items", id, "say"),
    value: item.value === undefined ? null : expression(item.value, "items", id, "value"),
  }));
  const listed = sameKeys(raw.order ?? [], Object.keys(raw.items));
  if (raw.order ? !listed : items.some(({ value }) => value === null)) {
    refuse(
      lineOf(raw.order ? "order" : "items"),
      "an order that leaves items out",
      "order: every key once, or a value for every item",
    );
  }
  return {
    kind: "order",
    ...asked,
    items,
    order: raw.order ?? null,
    lowest: raw.lowest,
    right: words(raw.right, "right"),
    wrong: words(raw.wrong, "wrong"),
  };
}

/** The source's question with a translation's words. null when the words do not fit it. */
export function translateQuestion(question: Question, block: Extract, refuse: Refuse): Question | null {
  const read = readRecord(
    block.text,
    block.line,
    TRANSLATED_SCHEMAS[question.kind] as v.GenericSchema,
    refuse,
  );
  if (!read) return null;
  // Checked by the schema of this kind just above.
  const raw = read.value as Record<string, unknown>;
  const words = (key: string): Words => readInline(String(raw[key] ?? ""), read.lineOf(key), refuse);
  const asked = {
    ask: words("ask"),
    hints: (raw.hints as string[]).map((hint) => readInline(hint, read.lineOf("hints"), refuse)),
  };
  if (asked.hints.length !== question.hints.length) {
    refuse(read.lineOf("hints"), `${asked.hints.length} hints`, `${question.hints.length}, as in the source`);
  }
  const fits = (given: object, wanted: readonly string[], key: string): boolean => {
    const same = sameKeys(Object.keys(given), wanted);
    if (!same)
      refuse(read.lineOf(key), Object.keys(given).join(", "), `the source's keys: ${wanted.join(", ")}`);
    return same;
  };
  switch (question.kind) {
    case "predict":
    case "choose": {
      const given = raw.answers as Record<string, { say: string; because: string }>;
      if (
        !fits(
          given,
          question.answers.map(({ id }) => id),
          "answers",
        )
      )
        return null;
      const answers = question.answers.map((answer) => ({
        ...answer,
        say: readInline(present(given[answer.id]).say, read.lineOf("answers", answer.id, "say"), refuse),
        because: readInline(
          present(given[answer.id]).because,
          read.lineOf("answers", answer.id, "because"),
          refuse,
        ),
      }));
      return { ...question, ...asked, answers };
    }
    case "goal": {
      const further = raw.further === undefined ? words("reached") : words("further");
      return { ...question, ...asked, reached: words("reached"), further, missed: words("missed") };
    }
    case "estimate":
      return { ...question, ...asked, close: words("close"), low: words("low"), high: words("high") };
    case "number":
      return translateNumber(question, read as ReadRecord<TranslatedNumber>, asked, refuse);
    case "order": {
      const given = raw.items as Record<string, string>;
      if (
        !fits(
          given,
          question.items.map(({ id }) => id),
          "items",
        )
      )
        return null;
      const items = question.items.map((item) => ({
        ...item,
        say: readInline(present(given[item.id]), read.lineOf("items", item.id), refuse),
      }));
      return { ...question, ...asked, items, right: words("right"), wrong: words("wrong") };
    }
  }
}
