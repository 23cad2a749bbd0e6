/** What the server says to a phone, read by hand: a library for it would be the larger part of the page. */
import type { ToPhone } from "../audience/line-messages.ts";

type Is = (found: unknown) => boolean;

const isObject = (found: unknown): found is Readonly<Record<string, unknown>> =>
  typeof found === "object" && found !== null;
const isText: Is = (found) => typeof found === "string";
const isNumber: Is = (found) => typeof found === "number";
const isFlag: Is = (found) => typeof found === "boolean";
const isAnswer: Is = (found) => found === null || isText(found) || isNumber(found);
const isList =
  (each: Is): Is =>
  (found) =>
    Array.isArray(found) && found.every(each);
const isForm =
  (form: Readonly<Record<string, Is>>): Is =>
  (found) =>
    isObject(found) && Object.keys(form).every((name) => form[name]?.(found[name]));
const isNullOr =
  (each: Is): Is =>
  (found) =>
    found === null || each(found);

const question = isForm({
  ...{ key: isText, ask: isText, unit: isText },
  choices: isList(isForm({ id: isText, say: isText })),
});
const result = isForm({ counts: isList(isNumber), edges: isList(isNumber), model: isAnswer });

const FORMS: Readonly<Record<ToPhone["kind"], Is>> = {
  ask: isForm({ question: isNullOr(question), locked: isFlag, result: isNullOr(result) }),
  own: isForm({ question: isText, own: isAnswer }),
  lost: isForm({ on: isFlag }),
  words: isForm({ steps: isList(isForm({ title: isText, text: isText })) }),
  here: isObject,
};
const forms = new Map<unknown, Is>(Object.entries(FORMS));

const isToPhone = (found: unknown): found is ToPhone =>
  isObject(found) && (forms.get(found.kind)?.(found) ?? false);

/** null for what is no message. */
export function readToPhone(data: string): ToPhone | null {
  try {
    const found: unknown = JSON.parse(data);
    return isToPhone(found) ? found : null;
  } catch {
    return null;
  }
}
