/** A question for a typed number, against the model: its value, its mistakes apart from it and from each other, its solution. */

import { widthOfNumber } from "../judge/tolerance.ts";
import type { NumberQuestion, Words } from "../lesson.ts";
import { type Expression, evaluate } from "../model/expression.ts";
import { lookupIn, type Situation } from "../model/figure-paths.ts";
import { inlinesOf } from "../prose.ts";
import type { Refuse } from "../read/read-prose.ts";

interface Named {
  readonly name: string;
  readonly value: number;
  /** How far from it still counts as it. */
  readonly within: number;
}

export function checkNumber(question: NumberQuestion, situation: Situation, refuse: Refuse): void {
  const fault = (found: string, allowed: string) => refuse(question.line, found, allowed);
  const lookup = lookupIn(situation);
  const named = (name: string, of: Expression): readonly Named[] => {
    const value = evaluate(of, lookup);
    if (value === null) fault(`no value for ${name}`, "an expression that the model has a number for");
    return value === null ? [] : [{ name, value, within: widthOfNumber(question, value) }];
  };
  const all = [
    ...named("value", question.value),
    ...question.mistakes.flatMap(({ id, value }) => named(`mistake "${id}"`, value)),
  ];
  if (all.length !== question.mistakes.length + 1) return;
  for (const [first, second] of pairs(all)) {
    if (Math.abs(first.value - second.value) > first.within + second.within) continue;
    fault(
      `${first.name} ${first.value.toPrecision(4)} and ${second.name} ${second.value.toPrecision(4)}`,
      `further apart than their tolerances, ${first.within.toPrecision(2)} and ${second.within.toPrecision(2)}`,
    );
  }
  checkSolution(question, situation, fault);
}

const pairs = <Item>(list: readonly Item[]): (readonly [Item, Item])[] =>
  list.flatMap((first, index) => list.slice(index + 1).map((second) => [first, second] as const));

/** The worked solution ends with the number that is asked for, as the model has it. */
function checkSolution(
  { solution, value, format }: NumberQuestion,
  situation: Situation,
  fault: (found: string, allowed: string) => void,
): void {
  const lookup = lookupIn(situation);
  const last = lastFigure(solution);
  const [end, wanted] = [last && evaluate(last.of, lookup), evaluate(value, lookup)];
  if (last && last.format.unit !== format.unit)
    fault(`a solution that ends in ${last.format.unit}`, `one that ends in ${format.unit}`);
  else if (end === null || wanted === null || Math.abs(end - wanted) > 1e-6 * Math.abs(wanted))
    fault(
      `a solution that ends with ${end?.toPrecision(4) ?? "no live number"}`,
      `${wanted?.toPrecision(4)}`,
    );
}

const lastFigure = (solution: readonly Words[]) =>
  solution
    .flatMap((line) => [...inlinesOf(line)].flatMap((node) => (node.kind === "figure" ? [node.figure] : [])))
    .pop() ?? null;
