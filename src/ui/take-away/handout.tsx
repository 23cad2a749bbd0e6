/** One page for a family to take home: pictures and words, the local team's own text, the cautions. */
import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { formatQuantity, language, t } from "../../i18n/index.ts";
import { VERSION } from "../app-version.ts";
import { Cautions } from "../cautions.tsx";
import { Switch } from "../choice.tsx";
import { printAs } from "./print-as.ts";
import { TeamWords } from "./team-words.tsx";

/** Class of the whole page while its handout is what goes on paper. */
export const HANDING_OUT = "handing-out";

export interface HandoutProps {
  readonly title: string;
  /** Of its words, where they are not in the page's. */
  readonly written?: string;
  /** What the page has, to choose beside it. */
  readonly choice?: ComponentChildren;
  readonly children: ComponentChildren;
  readonly onClose: () => void;
}

export function Handout({ title, written = language(), choice, children, onClose }: HandoutProps) {
  const large = useSignal(false);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.focus();
    document.documentElement.classList.add(HANDING_OUT);
    return () => {
      document.documentElement.classList.remove(HANDING_OUT);
    };
  }, []);
  return (
    <section class={large.value ? "handout large" : "handout"} aria-label={title}>
      <div class="handout-bar">
        <button type="button" class="main" onClick={() => printAs(title, written)}>
          {t("handout.print")}
        </button>
        <Switch
          label={t("handout.large")}
          on={large.value}
          onChange={(on) => {
            large.value = on;
          }}
        />
        <button type="button" onClick={onClose}>
          {t("dialog.close")}
        </button>
      </div>
      {choice}
      <article class="sheet">
        <h1 ref={heading} tabIndex={-1}>
          {title}
        </h1>
        {children}
        <TeamWords />
        <Cautions />
        <p class="sheet-made">
          {t("handout.made", {
            version: VERSION,
            date: new Intl.DateTimeFormat(language(), { dateStyle: "long" }).format(new Date()),
          })}
        </p>
      </article>
    </section>
  );
}

/** "18 mm", or the word of a word parameter. */
export const settingInWords = (name: string, value: number | string, unit: string, digits: number): string =>
  typeof value === "number" ? formatQuantity(value, unit, digits) : t(`parameter.${name}.${value}`);
