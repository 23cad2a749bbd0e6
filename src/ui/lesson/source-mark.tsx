/** A publication one tap away, and the list of a lesson's publications. */

import { t } from "../../i18n/index.ts";
import type { Source, Sources } from "../../lesson/library/glossary.ts";
import { Disclosure } from "./disclosure.tsx";

export const SourceMark = ({
  source,
  name,
}: {
  readonly source: Source | undefined;
  readonly name: string;
}) =>
  source ? (
    <Disclosure
      class="source-mark"
      name={t("lesson.source", { authors: source.authors })}
      words={t("lesson.sourceMark")}
    >
      <SourceLine source={source} />
    </Disclosure>
  ) : (
    <span>[{name}]</span>
  );

/** Titles are in their own language; English unless the file says otherwise. */
export const SourceLine = ({ source }: { readonly source: Source }) => (
  <>
    <bdi>
      {source.authors}
      {source.year ? ` (${source.year}). ` : ". "}
      <cite lang={source.language ?? "en"}>{source.title}</cite>
      {source.where ? `. ${source.where}` : ""}
      {source.doi ? `. doi ${source.doi}` : ""}
      {source.url ? `. ${source.url}` : ""}
    </bdi>{" "}
    <span class="quiet-text">({t(`lesson.read.${source.read}`)})</span>
  </>
);

export const SourceList = ({
  keys,
  sources,
}: {
  readonly keys: readonly string[];
  readonly sources: Sources;
}) => (
  <ul class="source-list">
    {keys.map((key) => (
      <li key={key}>{sources[key] ? <SourceLine source={sources[key]} /> : key}</li>
    ))}
  </ul>
);
