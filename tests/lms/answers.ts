import type { ReportedAnswer } from "../../src/lms/record-adapter.ts";

const options = ["falls", "same", "rises"].map((id) => ({ id, say: `It ${id}` }));

export const CHOICE: ReportedAnswer = {
  lesson: "04-energy-loss",
  step: "narrow-ask",
  kind: "choice",
  asked: "What happens to the pressure of 13.1 mmHg?",
  language: "en",
  options,
  given: "same",
  correct: "rises",
  right: false,
};

export const ORDER: ReportedAnswer = {
  ...CHOICE,
  step: "order",
  kind: "sequencing",
  given: ["same", "falls", "rises"],
  correct: ["falls", "same", "rises"],
};

export const NUMBER: ReportedAnswer = {
  ...CHOICE,
  lesson: "15-numbers",
  step: "power",
  kind: "numeric",
  options: [],
  given: 2.6,
  correct: { low: 2.375, high: 2.625 },
  right: true,
};
