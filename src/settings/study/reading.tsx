/** What stands beside the lessons: a page of prose, all words explained, all publications. */
import { ProseView } from "../../interface/lesson/prose.tsx";
import { TranslationNote } from "../../interface/lesson/script.tsx";
import { SourceLine } from "../../interface/lesson/source-mark.tsx";
import type { Voice } from "../../interface/lesson/voice.ts";
import type { Shelf } from "../../lesson/shelf.ts";
import { language, t } from "../../words/index.ts";
import { GLOSSARY, SOURCES } from "../place-faults.ts";
import { keptTelling } from "../preferences.ts";
import { writePlace } from "../where.ts";
import type { StudyProps } from "./study-home.tsx";

export function Reading({ context, shelf, page }: StudyProps & { readonly page: string }) {
  const back = writePlace({ ...context.place.value, more: {} });
  const title =
    page === GLOSSARY
      ? t("study.glossary")
      : page === SOURCES
        ? t("lesson.sources")
        : shelf.pages[page]?.title;
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
      {page === GLOSSARY && <GlossaryList shelf={shelf} />}
      {page === SOURCES && (
        <ul>
          {Object.entries(shelf.sources).map(([key, source]) => (
            <li key={key}>
              <SourceLine source={source} />
            </li>
          ))}
        </ul>
      )}
      {page !== GLOSSARY && page !== SOURCES && <PageText shelf={shelf} page={page} />}
    </main>
  );
}

function PageText({ shelf, page }: { readonly shelf: Shelf; readonly page: string }) {
  const found = shelf.pages[page];
  if (!found) return null;
  const voice: Voice = {
    telling: keptTelling.value,
    glossary: shelf.glossary,
    sources: shelf.sources,
    number: () => t("lesson.waiting"),
    follow: null,
  };
  return (
    <div lang={found.language === language() ? undefined : found.language}>
      <TranslationNote translation={found.translation} />
      {found.sections.map((section) => (
        <section key={section.title}>
          {section.title && <h2>{section.title}</h2>}
          <ProseView prose={section.prose} voice={voice} />
        </section>
      ))}
    </div>
  );
}

const GlossaryList = ({ shelf }: { readonly shelf: Shelf }) => (
  <dl class="glossary-list">
    {Object.entries(shelf.glossary)
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
