/** A word with its explanation one tap away. */
import type { ComponentChildren } from "preact";
import type { GlossaryEntry } from "../../lesson/library/glossary.ts";
import { Disclosure } from "./disclosure.tsx";
import type { TextVersion } from "./voice.ts";

export interface TermProps {
  /** Undefined where the glossary has no entry: the word is then shown as it is. */
  readonly entry: GlossaryEntry | undefined;
  readonly version: TextVersion;
  readonly children: ComponentChildren;
}

export const Term = ({ entry, version, children }: TermProps) =>
  !entry ? (
    children
  ) : (
    <Disclosure class="term" words={children}>
      <strong>{entry.term}.</strong> {entry.plain}
      {version === "technical" && entry.technical ? ` ${entry.technical}` : ""}
    </Disclosure>
  );
