/** The inviting screen: the topic named in each offered language in turn, and one large button for each language. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { LANGUAGES, languageName, MESSAGES } from "../../i18n/index.ts";
import { entryAt, present } from "../../sim/checked/present.ts";
import { PATHWAY_STAGES, type PathwayStage } from "../../sim/parameters/request.ts";
import { setStage } from "../../state/edit.ts";
import { isMoving } from "../shared/handles/play.ts";
import type { Context } from "../shared/mode.ts";
import { offeredOf, organiser } from "./organiser-settings.ts";

/** s: each title stands this long; the pathway behind changes with every third */
const TURN = 7;

export interface WelcomeProps {
  readonly context: Context;
  readonly onLanguage: (tag: string) => void;
}

/** A message of a language other than the one in force; it has no arguments. */
const inLanguage = (tag: string, key: string): string =>
  MESSAGES[tag]?.[key] ?? present(present(MESSAGES.en)[key]);

export function Welcome({ context, onLanguage }: WelcomeProps) {
  const { session } = context;
  const turn = useSignal(0);
  useEffect(() => {
    const change = setInterval(() => {
      if (!isMoving(context)) return;
      turn.value++;
      if (turn.value % 3 !== 0) return;
      const state = session.scene.peek();
      const now = PATHWAY_STAGES.indexOf(state.request.stage as PathwayStage);
      session.show(setStage(entryAt(PATHWAY_STAGES, (now + 1) % PATHWAY_STAGES.length))(state));
    }, TURN * 1000);
    return () => clearInterval(change);
  }, [context, session, turn]);
  const offered = offeredOf(LANGUAGES, organiser.value.languages);
  const tag = offered[turn.value % offered.length] ?? "en";
  return (
    // The words move a little at each turn: nothing bright stands at one place for hours.
    <div class={`kiosk-welcome place-${turn.value % 3}`}>
      <div class="clear" data-clear />
      <main class="kiosk-invite">
        <h1 lang={tag} key={tag}>
          {inLanguage(tag, "home.title")}
        </h1>
        <ul class="kiosk-languages">
          {offered.map((each) => (
            <li key={each}>
              <button type="button" class="main" lang={each} onClick={() => onLanguage(each)}>
                <strong>{languageName(each)}</strong>
                <span>{inLanguage(each, "kiosk.begin")}</span>
              </button>
            </li>
          ))}
        </ul>
        <p lang={tag}>{inLanguage(tag, "caution.short")}</p>
      </main>
    </div>
  );
}
