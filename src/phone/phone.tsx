/** The page of a phone in the hall: one question, one tap, and what the hall answered. */
import { useState } from "preact/hooks";
import { CODE_LENGTH } from "../audience/room-code.ts";
import { AnswerView } from "./answer-view.tsx";
import { ResultView } from "./result-view.tsx";
import { asked, askWords, join, lost, readCode, sayLost, speak, stage, steps } from "./seat.ts";
import { language, nameOf, TAGS, t } from "./words.ts";

export function Phone() {
  const now = stage.value;
  const inside = now === "open" || now === "gone";
  return (
    <>
      <header>
        <h1>{t("phone.title")}</h1>
        <label>
          <span class="unseen">{t("phone.language")}</span>
          <select value={language.value} onChange={({ currentTarget }) => speak(currentTarget.value)}>
            {TAGS.map((tag) => (
              <option key={tag} value={tag} lang={tag}>
                {nameOf(tag)}
              </option>
            ))}
          </select>
        </label>
      </header>
      <main>
        <p role="status" class={now === "gone" ? "note warn" : "note"}>
          {now === "joining" && t("phone.joining")}
          {now === "gone" && t("phone.gone")}
          {now === "noRoom" && t("phone.noRoom")}
          {now === "full" && t("phone.full")}
          {now === "over" && `${t("phone.over")} ${t("phone.over.help")}`}
        </p>
        {(now === "door" || now === "noRoom") && <Door />}
        {inside && <Question />}
        {inside && <Lost />}
        {(inside || now === "over") && <Words open={now === "over"} />}
      </main>
      <footer>
        <p>{t("phone.private")}</p>
        <p>
          {t("caution.short")} {t("caution.team")}
        </p>
      </footer>
    </>
  );
}

function Door() {
  const [fault, setFault] = useState(false);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        const code = readCode(String(new FormData(event.currentTarget).get("code") ?? ""));
        setFault(code === null);
        if (code) join(code);
      }}
    >
      <label for="code">{t("phone.code")}</label>
      <input
        id="code"
        name="code"
        autocomplete="off"
        autocapitalize="characters"
        spellcheck={false}
        maxLength={12}
        aria-invalid={fault}
        aria-describedby="code-fault"
      />
      <p id="code-fault" role="alert" class="fault">
        {fault && t("phone.code.fault", { length: CODE_LENGTH })}
      </p>
      <button type="submit" class="main">
        {t("phone.code.go")}
      </button>
    </form>
  );
}

function Question() {
  const now = asked.value;
  const question = now?.question;
  if (!now || !question) return <p class="wait">{t("phone.wait")}</p>;
  return (
    <section aria-labelledby="ask">
      <h2 id="ask">{question.ask}</h2>
      {now.result ? (
        <ResultView question={question} result={now.result} />
      ) : (
        <AnswerView key={question.key} question={question} locked={now.locked} />
      )}
    </section>
  );
}

const Lost = () => (
  <section class="lost">
    <button type="button" aria-pressed={lost.value} onClick={() => sayLost(!lost.peek())}>
      {t("phone.lost")}
    </button>
    <p role="status">{t(lost.value ? "phone.lost.on" : "phone.lost.help")}</p>
  </section>
);

function Words({ open }: { readonly open: boolean }) {
  const found = steps.value;
  return (
    <details
      open={open}
      onToggle={({ currentTarget }) => {
        if (currentTarget.open) askWords();
      }}
    >
      <summary>{t("phone.words")}</summary>
      {found?.length ? (
        found.map(({ title, text }, index) => (
          <section key={index}>
            <h3>{title}</h3>
            {text.split("\n").map((line, at) => (
              <p key={at}>{line}</p>
            ))}
          </section>
        ))
      ) : (
        <p>{t("phone.words.none")}</p>
      )}
    </details>
  );
}
