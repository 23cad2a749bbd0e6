/** The fields of each kind of question, and what a new one begins with. */
import type { Path } from "../../../lesson/edit/yaml-edit.ts";
import type { QuestionKind } from "../../../lesson/format/question-schema.ts";

/** `what` names the edit for undo. */
export type EditQuestion = (what: string, ...edits: (readonly [Path, unknown])[]) => void;

type FieldForm =
  | "words"
  | "expression"
  | "unit"
  | "amount"
  | "control"
  | "best"
  | "step"
  | "switch"
  | "list"
  | "answers"
  | "entries";

export interface QuestionField {
  readonly key: string;
  readonly form: FieldForm;
  /** Left out of the text where it is left empty. */
  readonly optional?: boolean;
}

const field = (key: string, form: FieldForm = "words", optional = false): QuestionField => ({
  key,
  form,
  optional,
});
const ASKED = [
  field("hints", "list", true),
  field("again", "amount", true),
  field("room", "switch", true),
] as const;
const RIGHT = [field("right"), field("wrong")] as const;

export const QUESTION_FIELDS: Readonly<Record<QuestionKind, readonly QuestionField[]>> = {
  predict: [field("ask"), field("answers", "answers"), field("reveal", "step", true), ...ASKED],
  choose: [field("ask"), field("answers", "answers"), ...ASKED],
  goal: [
    field("ask"),
    field("control", "control"),
    field("until", "expression"),
    field("best", "best", true),
    field("within", "amount", true),
    field("reached"),
    field("further", "words", true),
    field("missed"),
    ...ASKED,
  ],
  estimate: [
    field("ask"),
    field("of", "expression"),
    field("unit", "unit"),
    field("within", "amount"),
    field("close"),
    field("low"),
    field("high"),
    ...ASKED,
  ],
  number: [
    field("ask"),
    field("value", "expression"),
    field("unit", "unit"),
    field("within", "amount"),
    field("mistakes", "entries"),
    ...RIGHT,
    field("solution", "list"),
    ...ASKED,
  ],
  order: [field("ask"), field("items", "entries"), field("lowest", "switch", true), ...RIGHT, ...ASKED],
};

/** What one entry of a list with keys has: its words, and where it needs one an expression. */
export const ENTRY_FIELDS: Readonly<Record<string, readonly QuestionField[]>> = {
  answers: [field("say"), field("because"), field("show", "step", true)],
  mistakes: [field("say"), field("value", "expression"), field("because")],
  items: [field("say"), field("value", "expression", true)],
};

/** Names of the fields that a list shows for its entries. */
export const namesWithin = (list: string, entries: unknown): readonly string[] =>
  Object.keys(typeof entries === "object" ? (entries ?? {}) : {}).flatMap((entry) => [
    `question.${list}.${entry}`,
    ...[...(ENTRY_FIELDS[list] ?? []).map(({ key }) => key), ...(list === "answers" ? ["right"] : [])].map(
      (key) => `question.${list}.${entry}.${key}`,
    ),
  ]);

type Raw = Readonly<Record<string, unknown>>;

/** Empty where words are wanted: the checker asks for each. What the old question has in common stays. */
export function newQuestion(kind: QuestionKind, old: Raw): Raw {
  const { ask = "", hints, again, room } = old;
  const asked = Object.entries({ hints, again, room }).filter(([, value]) => value !== undefined);
  return { kind, ask, ...OWN[kind](old), ...Object.fromEntries(asked) };
}

const twoAnswers = ({ answers }: Raw): Raw => ({
  answers: answers ?? {
    a: { say: "", right: true, because: "" },
    b: { say: "", because: "" },
  },
});

const OWN: Readonly<Record<QuestionKind, (old: Raw) => Raw>> = {
  predict: twoAnswers,
  choose: twoAnswers,
  goal: () => ({ control: "conduitDiameter", until: "pathway.pressureDrop < 0.5", reached: "", missed: "" }),
  estimate: () => ({
    of: "pathway.pressureDrop",
    unit: "mmHg 2",
    within: "20 %",
    close: "",
    low: "",
    high: "",
  }),
  number: () => ({
    value: "pathway.pressureDrop",
    unit: "mmHg 2",
    within: "5 %",
    mistakes: { a: { say: "", value: "2 * pathway.pressureDrop", because: "" } },
    right: "",
    wrong: "",
    solution: ["{{ pathway.pressureDrop | mmHg 2 }}"],
  }),
  order: () => ({
    items: {
      a: { say: "", value: "pressures.hepaticVein" },
      b: { say: "", value: "pressures.atrium" },
    },
    right: "",
    wrong: "",
  }),
};

/** A key that no entry has yet. */
export function freshKey(keys: readonly string[]): string {
  for (let code = "a".charCodeAt(0); code <= "z".charCodeAt(0); code++)
    if (!keys.includes(String.fromCharCode(code))) return String.fromCharCode(code);
  return `answer-${keys.length + 1}`;
}
