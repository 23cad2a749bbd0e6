/** Giving an answer: a tap on a choice, or a number. */
import { useState } from "preact/hooks";
import type { PhoneQuestion } from "../audience/line-messages.ts";
import { LARGEST } from "../audience/room-code.ts";
import { parseNumber } from "../i18n/parse-number.ts";
import { give, own, pending, refused } from "./seat.ts";
import { t, writeNumber } from "./words.ts";

interface AnswerProps {
  readonly question: PhoneQuestion;
  readonly locked: boolean;
}

export function AnswerView({ question, locked }: AnswerProps) {
  const given = pending.value ?? own.value;
  return (
    <>
      {question.choices.length > 0 ? (
        <ul>
          {question.choices.map(({ id, say }) => (
            <li key={id}>
              <button
                type="button"
                class="choice"
                disabled={locked}
                aria-pressed={given === id}
                onClick={() => give(id)}
              >
                {say}
              </button>
            </li>
          ))}
        </ul>
      ) : (
        <NumberForm question={question} locked={locked} />
      )}
      <p role="status" class="note">
        {noteOf(locked)}
      </p>
    </>
  );
}

function noteOf(locked: boolean): string {
  if (locked) return t(own.value === null ? "phone.locked.none" : "phone.locked");
  if (pending.value !== null) return t("phone.sending");
  if (refused.value !== null) return t("phone.settled");
  return own.value === null ? "" : t("phone.counted");
}

function NumberForm({ question: { unit }, locked }: AnswerProps) {
  const [fault, setFault] = useState(false);
  const given = pending.value ?? own.value;
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        const number = parseNumber(String(new FormData(event.currentTarget).get("number") ?? ""));
        const fits = number !== undefined && Math.abs(number) <= LARGEST;
        setFault(!fits);
        if (fits) give(number);
      }}
    >
      <label for="number">{unit ? t("phone.number.in", { unit }) : t("phone.number")}</label>
      <input
        id="number"
        name="number"
        inputMode="decimal"
        autocomplete="off"
        maxLength={12}
        readOnly={locked}
        aria-invalid={fault}
        aria-describedby="number-fault"
        defaultValue={typeof given === "number" ? writeNumber(given) : ""}
      />
      <p id="number-fault" role="alert" class="fault">
        {fault && t("phone.number.fault")}
      </p>
      <button type="submit" class="main" disabled={locked}>
        {t("phone.number.send")}
      </button>
    </form>
  );
}
