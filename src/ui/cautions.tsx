/** The six cautions, wherever a family could act on what it sees. */
import { t } from "../i18n/index.ts";

export const CAUTIONS = ["learning", "model", "purpose", "team", "medicine", "emergency"] as const;

/** All six as sentences, in their order: for print, stills, clips and tables. */
export const cautionSentences = (): readonly string[] => CAUTIONS.map((name) => t(`caution.${name}`));

export const Cautions = () => (
  <section class="cautions" aria-labelledby="cautions">
    <h2 id="cautions">{t("caution.title")}</h2>
    <ul>
      {CAUTIONS.map((name) => (
        <li key={name} data-caution={name}>
          {t(`caution.${name}`)}
        </li>
      ))}
    </ul>
  </section>
);
