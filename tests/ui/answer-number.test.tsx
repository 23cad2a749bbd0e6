// @vitest-environment happy-dom
import { render } from "preact";
import { act } from "preact/test-utils";
import { afterEach, describe, expect, it, vi } from "vitest";
import type { NumberQuestion, Words } from "../../src/lesson/lesson.ts";
import { parseExpression } from "../../src/lesson/model/expression.ts";
import { AnswerNumber } from "../../src/ui/lesson/answer-number.tsx";
import type { Voice } from "../../src/ui/lesson/voice.ts";

const host = document.createElement("div");
document.body.append(host);
afterEach(() => render(null, host));

const words = (text: string): Words => [{ kind: "text", text }];
const literal = (text: string) => {
  const parsed = parseExpression(text);
  if (!parsed.ok) throw new Error(parsed.found);
  return parsed.value;
};
const question: NumberQuestion = {
  kind: "number",
  ask: words("What power is that?"),
  hints: [],
  again: null,
  room: false,
  line: 1,
  value: literal("12.5"),
  format: { unit: "mW", digits: 1, signed: false, bare: false },
  within: { value: 0.5, percent: false },
  mistakes: [
    { id: "high", say: words("Twice"), value: literal("25"), because: words("Once.") },
    { id: "low", say: words("Half"), value: literal("6.25"), because: words("In full.") },
  ],
  right: words("Yes."),
  wrong: words("No."),
  solution: [words("Multiply.")],
};
const voice: Voice = {
  version: "technical",
  glossary: {},
  sources: {},
  number: () => "12",
  amount: (of) => (of.kind === "number" ? of.value : null),
  follow: null,
};

function mount(pick: boolean) {
  const onAnswer = vi.fn();
  act(() =>
    render(
      <AnswerNumber {...{ question, voice, pick, onAnswer }} given={null} judgement={null} again={false} />,
      host,
    ),
  );
  const submit = () =>
    act(() => void host.querySelector("form")!.dispatchEvent(new Event("submit", { cancelable: true })));
  const type = (text: string) =>
    act(() => {
      const input = host.querySelector("input")!;
      input.value = text;
      input.dispatchEvent(new Event("input", { bubbles: true }));
    });
  return { onAnswer, submit, type };
}

describe("a problem with a number", () => {
  it.each([
    ["12.5", 12.5],
    ["12,5", 12.5],
    [" 12.5 mW", 12.5],
    ["\u22123", -3],
  ])("reads %o", (text, value) => {
    const { onAnswer, submit, type } = mount(false);
    type(text);
    submit();
    expect(onAnswer).toHaveBeenCalledWith(value);
  });

  it("has a label and its unit, and says what to type when that is no number", () => {
    const { onAnswer, submit, type } = mount(false);
    const input = host.querySelector("input")!;
    expect(host.querySelector(`label[for="${input.id}"]`)!.textContent).toBe("What power is that?");
    const described = () =>
      input
        .getAttribute("aria-describedby")!
        .split(" ")
        .map((id) => document.getElementById(id)!.textContent)
        .join(" ");
    expect(described()).toBe("mW");
    type("about twelve");
    submit();
    expect(onAnswer).not.toHaveBeenCalled();
    expect(input.getAttribute("aria-invalid")).toBe("true");
    expect(host.querySelector("[role=alert]")!.textContent).toMatch(/about twelve.*such as 98\.7/);
    expect(described()).toMatch(/^mW .*about twelve/);
    type("");
    submit();
    expect(host.querySelector("[role=alert]")!.textContent).not.toMatch(/is not a number/);
  });

  it("offers the right number among the mistakes' where nobody types, the lowest first", () => {
    const { onAnswer, submit } = mount(true);
    expect(host.querySelector("input[type=text]")).toBeNull();
    const labels = [...host.querySelectorAll("label")].map((label) => label.textContent);
    expect(labels).toEqual(["6.3\u202fmW", "12.5\u202fmW", "25.0\u202fmW"]);
    act(() => host.querySelectorAll<HTMLInputElement>("input[type=radio]")[2]!.click());
    submit();
    expect(onAnswer).toHaveBeenCalledWith("high");
  });
});
