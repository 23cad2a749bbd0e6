/** The lesson's text with its line numbers; lines with faults are marked. */
import { forwardRef } from "preact/compat";
import { useEffect, useImperativeHandle, useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { LIMITS } from "../../lesson/format/limits.ts";
import { MAX_LENGTH } from "../shared/own/own-texts.ts";

export interface SourceTextProps {
  readonly text: string;
  readonly faulty: readonly number[];
  /** The line (1-based) that is in view when the text opens. */
  readonly at: number;
  readonly onText: (text: string) => void;
  /** The line (1-based) on which the cursor stands. */
  readonly onLine: (line: number) => void;
}

export interface SourceTextHandle {
  goTo(line: number): void;
  /** What differs is put in as if typed, so that the browser's undo takes it back. */
  exchange(next: string): void;
}

const lineAt = (text: string, position: number): number => text.slice(0, position).split("\n").length;

/** The one stretch in which two texts differ. */
function differenceOf(before: string, after: string): { from: number; to: number; by: string } {
  const most = Math.min(before.length, after.length);
  let from = 0;
  while (from < most && before[from] === after[from]) from++;
  let tail = 0;
  while (tail < most - from && before.at(-1 - tail) === after.at(-1 - tail)) tail++;
  return { from, to: before.length - tail, by: after.slice(from, after.length - tail) };
}

export const SourceText = forwardRef<SourceTextHandle, SourceTextProps>(
  ({ text, faulty, at, onText, onLine }, handle) => {
    const area = useRef<HTMLTextAreaElement>(null);
    const numbers = useRef<HTMLOListElement>(null);
    const lines = text.split("\n");
    const marked = new Set(faulty);
    const bringIntoView = (field: HTMLTextAreaElement, line: number): void => {
      field.scrollTop = ((line - 4) / lines.length) * field.scrollHeight;
    };
    useEffect(() => {
      if (area.current) bringIntoView(area.current, at);
    }, []);
    const goTo = (line: number): void => {
      const field = area.current;
      if (!field) return;
      const from = lines.slice(0, line - 1).join("\n").length + (line > 1 ? 1 : 0);
      field.focus();
      field.setSelectionRange(from, from + (lines[line - 1]?.length ?? 0));
      bringIntoView(field, line);
      onLine(line);
    };
    useImperativeHandle(handle, () => ({
      goTo,
      exchange(next) {
        const field = area.current;
        if (!field) return;
        const { from, to, by } = differenceOf(field.value, next);
        field.focus();
        field.setSelectionRange(from, to);
        // The only way into a field that the browser can undo; without it the text is replaced all the same.
        if (!document.execCommand("insertText", false, by)) onText(next);
        onLine(lineAt(next, from));
      },
    }));
    const tellLine = () => {
      if (area.current) onLine(lineAt(area.current.value, area.current.selectionStart));
    };
    return (
      <div class="source-text">
        <ol class="line-numbers" ref={numbers} aria-hidden="true">
          {lines.slice(0, LIMITS.lines).map((_, index) => (
            <li key={`${index + 1}`} class={marked.has(index + 1) ? "faulty" : undefined} />
          ))}
        </ol>
        <textarea
          ref={area}
          aria-label={t("author.text")}
          spellcheck={false}
          wrap="off"
          maxLength={MAX_LENGTH}
          dir="ltr"
          value={text}
          onInput={(event) => onText(event.currentTarget.value)}
          onKeyUp={tellLine}
          onClick={tellLine}
          onScroll={(event) => {
            if (numbers.current) numbers.current.scrollTop = event.currentTarget.scrollTop;
          }}
        />
      </div>
    );
  },
);
