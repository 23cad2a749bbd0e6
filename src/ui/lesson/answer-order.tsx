/** Items to be put in order, by taps or keys alone: each moves up or down one place. */
import { useState } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import type { OrderQuestion } from "../../lesson/lesson.ts";
import { wordsOf } from "../../lesson/prose.ts";
import { fingerprint } from "../../lesson/read/lesson-version.ts";
import { entryAt, present } from "../../sim/checked/present.ts";
import { announce } from "../announce.tsx";
import { InlineView } from "./prose.tsx";
import type { Voice } from "./voice.ts";

export interface AnswerOrderProps {
  readonly question: OrderQuestion;
  readonly voice: Voice;
  readonly given: readonly string[] | null;
  readonly onAnswer: (order: readonly string[]) => void;
}

/** An order that depends on the names alone: the same for everyone, and seldom the one asked for. */
const mixed = (ids: readonly string[]): readonly string[] =>
  [...ids].sort((a, b) => fingerprint(`${a}-`).localeCompare(fingerprint(`${b}-`)));

export function AnswerOrder({ question, voice, given, onAnswer }: AnswerOrderProps) {
  const [order, setOrder] = useState(given ?? mixed(question.items.map(({ id }) => id)));
  const nameOf = (id: string) =>
    wordsOf(present(question.items.find((item) => item.id === id)).say, voice.number);
  const move = (from: number, to: number) => {
    if (to < 0 || to >= order.length) return;
    const next = [...order];
    next.splice(to, 0, ...next.splice(from, 1));
    setOrder(next);
    announce(t("lesson.moved", { item: nameOf(entryAt(order, from)), place: to + 1, count: order.length }));
  };
  return (
    <div class="order">
      <p>
        <InlineView words={question.ask} voice={voice} />
      </p>
      <ol>
        {order.map((id, index) => (
          <li key={id}>
            <span>
              <InlineView words={present(question.items.find((item) => item.id === id)).say} voice={voice} />
            </span>
            <MoveButton item={nameOf(id)} way="up" off={index === 0} onMove={() => move(index, index - 1)} />
            <MoveButton
              item={nameOf(id)}
              way="down"
              off={index === order.length - 1}
              onMove={() => move(index, index + 1)}
            />
          </li>
        ))}
      </ol>
      <button type="button" class="main" onClick={() => onAnswer(order)}>
        {t("lesson.check")}
      </button>
    </div>
  );
}

interface MoveButtonProps {
  readonly item: string;
  readonly way: "up" | "down";
  readonly off: boolean;
  readonly onMove: () => void;
}

const MoveButton = ({ item, way, off, onMove }: MoveButtonProps) => (
  <button
    type="button"
    class="move"
    aria-label={t(`lesson.move.${way}`, { item })}
    aria-disabled={off || undefined}
    onClick={onMove}
  >
    <span aria-hidden="true">{way === "up" ? "\u2191" : "\u2193"}</span>
  </button>
);
