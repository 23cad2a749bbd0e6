/** One page for a family to take home: a picture with its caption, the numbers, the local team's own words, the cautions. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { formatNumber, formatQuantity, language, t, unitSymbol } from "../../words/index.ts";
import { Cautions } from "../cautions.tsx";
import { Switch } from "../choice.tsx";
import type { Figure } from "../figures.ts";
import { VERSION } from "../version.ts";

export interface HandoutProps {
  readonly title: string;
  /** What the picture shows, in sentences. */
  readonly caption: readonly string[];
  /** Made when the page opens; absent where nothing can be drawn. */
  readonly picture: () => Promise<string>;
  readonly figures: readonly Figure[];
  /** Settings in force: name and value in words. */
  readonly settings: readonly (readonly [name: string, value: string])[];
  readonly onClose: () => void;
}

export function Handout({ title, caption, picture, figures, settings, onClose }: HandoutProps) {
  const image = useSignal("");
  const large = useSignal(false);
  const words = useSignal("");
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.focus();
    document.documentElement.classList.add("handing-out");
    picture().then(
      (address) => {
        image.value = address;
      },
      () => {},
    );
    return () => {
      document.documentElement.classList.remove("handing-out");
    };
  }, []);
  return (
    <section class={large.value ? "handout large" : "handout"} aria-label={title}>
      <div class="handout-bar">
        <button type="button" class="main" onClick={() => print()}>
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
      <article class="sheet">
        <h1 ref={heading} tabIndex={-1}>
          {title}
        </h1>
        <figure>
          {image.value && <img src={image} alt={caption.join(" ")} />}
          <figcaption>{caption.join(" ")}</figcaption>
        </figure>
        <div class="sheet-columns">
          <table>
            <caption>{t("handout.numbers")}</caption>
            <tbody>
              {figures
                .filter(({ value, source }) => value !== null && source !== "field")
                .map(({ name, value, unit, digits }) => (
                  <tr key={name}>
                    <th scope="row">{t(`figure.${name}`)}</th>
                    <td>
                      <bdi>
                        {formatNumber(value!, digits)}
                        <span class="unit">{`\u202f${unitSymbol(unit)}`}</span>
                      </bdi>
                    </td>
                  </tr>
                ))}
            </tbody>
          </table>
          <table>
            <caption>{t("handout.settings")}</caption>
            <tbody>
              {settings.map(([name, value]) => (
                <tr key={name}>
                  <th scope="row">{name}</th>
                  <td>
                    <bdi>{value}</bdi>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        <label class="handout-words">
          <span>{t("handout.team")}</span>
          <textarea
            rows={3}
            maxLength={500}
            placeholder={t("handout.team.example")}
            value={words}
            onInput={(event) => {
              words.value = event.currentTarget.value;
            }}
          />
          <span class="handout-words-printed">{words}</span>
        </label>
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
