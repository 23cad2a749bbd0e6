/** The phone page's few messages in every language at once: a hall must not wait for a second file. */
import { signal } from "@preact/signals";
import { type Arguments, formatMessage, parseMessage } from "../i18n/message-format.ts";

type Table = Readonly<Record<string, string>>;

const files = import.meta.glob<Table>(["../i18n/*/phone.json", "../i18n/*/cautions.json"], {
  eager: true,
  import: "default",
});

const tables = new Map<string, Table>();
for (const [path, table] of Object.entries(files)) {
  const tag = path.split("/").at(-2) ?? "";
  tables.set(tag, { ...tables.get(tag), ...table });
}

export const TAGS: readonly string[] = ["en", ...[...tables.keys()].filter((tag) => tag !== "en").sort()];

const nearest = (wanted: readonly string[]): string =>
  wanted.map((tag) => tag.split("-")[0] ?? "").find((tag) => tables.has(tag)) ?? "en";

export const language = signal(nearest(navigator.languages));

export function t(key: string, args?: Arguments): string {
  const text = tables.get(language.value)?.[key] ?? tables.get("en")?.[key] ?? `[${key}]`;
  return formatMessage(parseMessage(text), language.value, args);
}

export const writeNumber = (value: number): string =>
  new Intl.NumberFormat(language.value, { maximumFractionDigits: 2 }).format(value).replace("-", "\u2212");

/** With the unit as it is written. */
export const writeAmount = (value: number, unit: string): string =>
  unit ? `${writeNumber(value)}\u202f${unit}` : writeNumber(value);

/** A language by its own name. */
export function nameOf(tag: string): string {
  const name = new Intl.DisplayNames([tag], { type: "language" }).of(tag) ?? tag;
  return name.charAt(0).toLocaleUpperCase(tag) + name.slice(1);
}
