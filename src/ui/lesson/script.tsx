/** The text of one step: as much of a version as the mode shows, and its caution. */

import { language, t } from "../../i18n/index.ts";
import type { Part, Step, Translation } from "../../lesson/lesson.ts";
import { firstOf } from "../../lesson/prose.ts";
import { ProseView } from "./prose.tsx";
import type { Voice } from "./voice.ts";

export interface ScriptProps {
  readonly step: Step;
  readonly voice: Voice;
  /** 1: a lecture's sentence; 2: a kiosk's; left out: all. */
  readonly paragraphs?: number;
}

/** The part of this step in the chosen version; the plain one where there is no other. */
const partOf = (step: Step, { version }: Voice): Part =>
  (version === "technical" ? step.technical : null) ?? step.plain;

export function Script({ step, voice, paragraphs }: ScriptProps) {
  const part = partOf(step, voice);
  return (
    <div class="script" lang={part.language}>
      <ProseView
        prose={paragraphs === undefined ? part.prose : firstOf(part.prose, paragraphs)}
        voice={voice}
      />
    </div>
  );
}

export const StepCaution = ({ step, voice }: { readonly step: Step; readonly voice: Voice }) =>
  step.caution && (
    <div class="step-caution" role="note" lang={step.caution.language}>
      <ProseView prose={step.caution.prose} voice={voice} />
    </div>
  );

/** State of a translation: whether it can be relied on, or that there is none. */
export function TranslationNote({
  translation,
  language: written,
}: {
  readonly translation: Translation | null;
  /** Of the text. */
  readonly language: string;
}) {
  if (!translation)
    return written === language() ? null : <p class="translation-note">{t("lesson.notTranslated")}</p>;
  return (
    <>
      {!translation.reviewed && <p class="translation-note">{t("lesson.notReviewed")}</p>}
      {translation.outOfDate && <p class="translation-note">{t("lesson.outOfDate")}</p>}
    </>
  );
}
