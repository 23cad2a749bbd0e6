/** What stands beside the lessons: a page of prose, all words explained, all publications. */

import { language, t } from "../../i18n/index.ts";
import type { Library } from "../../lesson/library/library.ts";
import { ProseView } from "../../ui/lesson/prose.tsx";
import { TranslationNote } from "../../ui/lesson/script.tsx";
import { SourceLine } from "../../ui/lesson/source-mark.tsx";
import type { Voice } from "../../ui/lesson/voice.ts";
import { GLOSSARY, SOURCES } from "../place-faults.ts";
import { writePlace } from "../shared/address/place.ts";
import { keptVersion } from "../shared/preferences.ts";
import type { StudyProps } from "./study-props.ts";

export function Reading({ context, library, page }: StudyProps & { readonly page: string }) {
  const back = writePlace({ ...context.place.value, more: {} });
  const title =
    page === GLOSSARY
      ? t("study.glossary")
      : page === SOURCES
        ? t("lesson.sources")
        : library.pages[page]?.title;
  return (
    <main class="lesson-text">
      <p class="off-paper actions">
        <a class="button" href={back}>
          {t("study.lessons")}
        </a>
        <button type="button" onClick={() => print()}>
          {t("study.print")}
        </button>
      </p>
      <h1>{title ?? t("study.noPage")}</h1>
      {page === GLOSSARY && <GlossaryList library={library} />}
      {page === SOURCES && (
        <ul>
          {Object.entries(library.sources).map(([key, source]) => (
            <li key={key}>
              <SourceLine source={source} />
            </li>
          ))}
        </ul>
      )}
      {page !== GLOSSARY && page !== SOURCES && <PageText library={library} page={page} />}
    </main>
  );
}

function PageText({ library, page }: { readonly library: Library; readonly page: string }) {
  const found = library.pages[page];
  if (!found) return null;
  const voice: Voice = {
    version: keptVersion.value,
    glossary: library.glossary,
    sources: library.sources,
    number: () => t("lesson.waiting"),
    amount: () => null,
    follow: null,
  };
  return (
    <div lang={found.language === language() ? undefined : found.language}>
      <TranslationNote translation={found.translation} language={found.language} />
      {found.sections.map((section) => (
        <section key={section.title}>
          {section.title && <h2>{section.title}</h2>}
          <ProseView prose={section.prose} voice={voice} />
        </section>
      ))}
    </div>
  );
}

const GlossaryList = ({ library }: { readonly library: Library }) => (
  <dl class="glossary-list">
    {Object.entries(library.glossary)
      .sort(([, a], [, b]) => a.term.localeCompare(b.term, language()))
      .map(([key, { term, plain, technical }]) => (
        <div key={key}>
          <dt>
            <strong>{term}</strong>
          </dt>
          <dd>
            {plain} {technical && <span class="quiet-text">{technical}</span>}
          </dd>
        </div>
      ))}
  </dl>
);
