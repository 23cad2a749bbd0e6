/** Lessons of one's own on this device: kept at each change, earlier versions too; nothing takes another's place. */
import { computed, type ReadonlySignal, signal } from "@preact/signals";
import { MAX_FIGURE_TEXT, splitFigures } from "../../../lesson/own/own-figures.ts";

export interface OwnText {
  readonly id: string;
  /** As its owner calls it; the lesson's title is in its text. */
  readonly name: string;
  readonly text: string;
  /** ms since 1970 */
  readonly changed: number;
  /** Stands beside the kit's lessons once it can be read. */
  readonly listed: boolean;
  /** Oldest first. */
  readonly earlier: readonly EarlierText[];
}

interface EarlierText {
  /** ms since 1970: when it was left */
  readonly at: number;
  readonly text: string;
}

/** Where texts are kept. Each call may reject: storage is denied or full. */
export interface TextStore {
  all(): Promise<readonly unknown[]>;
  put(text: OwnText): Promise<void>;
  remove(id: string): Promise<void>;
}

export interface OwnTexts {
  /** Latest first. */
  readonly list: ReadonlySignal<readonly OwnText[]>;
  /** False once something could not be kept beyond this page. */
  readonly keeps: ReadonlySignal<boolean>;
  /** @returns the new text's id; `listed` as in `OwnText` */
  add(name: string, text: string, listed?: boolean): string;
  write(id: string, text: string): void;
  rename(id: string, name: string): void;
  show(id: string, listed: boolean): void;
  remove(id: string): void;
}

const MAX_TEXTS = 200;
const MAX_EARLIER = 20;
/** ms: changes closer together than this are one version */
const VERSION_REST = 120_000;
/** A version is kept at once where so much of the text goes in one step. */
const LARGE_CUT = 0.5;
/** characters */
export const MAX_NAME = 80;
/** characters of a text, and so bytes of a file that is taken: far more than the longest lesson */
export const MAX_LENGTH = 500_000;
export const MAX_KILOBYTES = MAX_LENGTH / 1000;

/** Words and figures each within their bound. */
export function fitsAsText(file: string): boolean {
  const { text, figures } = splitFigures(file);
  return text.length <= MAX_LENGTH && figures.length <= MAX_FIGURE_TEXT;
}

export interface OwnTextsOptions {
  readonly store: TextStore;
  readonly now?: () => number;
  readonly newId?: () => string;
}

/** Reads what is kept; what is no text of ours is passed over and stays where it is. */
export async function openOwnTexts({
  store,
  now = Date.now,
  newId = () => crypto.randomUUID(),
}: OwnTextsOptions): Promise<OwnTexts> {
  const keeps = signal(true);
  const found = await store.all().catch((): readonly unknown[] => {
    keeps.value = false;
    return [];
  });
  const texts = signal<readonly OwnText[]>(found.filter(isOwnText).slice(0, MAX_TEXTS));
  const keep = (text: OwnText): void => {
    texts.value = [text, ...texts.value.filter(({ id }) => id !== text.id)];
    store.put(text).catch(() => {
      keeps.value = false;
    });
  };
  const change = (id: string, edit: (text: OwnText) => OwnText): void => {
    const text = texts.value.find((each) => each.id === id);
    if (text) keep(edit(text));
  };
  return {
    list: computed(() => [...texts.value].sort((a, b) => b.changed - a.changed)),
    keeps,
    add(name, text, listed = true) {
      const id = newId();
      keep({
        id,
        name: name.trim().slice(0, MAX_NAME) || "-",
        text,
        changed: now(),
        listed,
        earlier: [],
      });
      return id;
    },
    write: (id, text) => change(id, (old) => (old.text === text ? old : withEarlier(old, text, now()))),
    rename: (id, name) =>
      change(id, (old) => ({ ...old, name: name.trim().slice(0, MAX_NAME) || old.name, changed: now() })),
    show: (id, listed) => change(id, (old) => ({ ...old, listed })),
    remove(id) {
      texts.value = texts.value.filter((each) => each.id !== id);
      store.remove(id).catch(() => {
        keeps.value = false;
      });
    },
  };
}

/** `text` in the place of the old one, which becomes a version when it stood for a while or is cut down. */
function withEarlier(old: OwnText, text: string, at: number): OwnText {
  const last = old.earlier.at(-1)?.at ?? 0;
  const worth = old.text.trim() !== "" && old.text !== old.earlier.at(-1)?.text;
  const due = at - last >= VERSION_REST || text.length < LARGE_CUT * old.text.length;
  const earlier = worth && due ? [...old.earlier, { at, text: old.text }].slice(-MAX_EARLIER) : old.earlier;
  return { ...old, text, changed: at, earlier };
}

export function isOwnText(found: unknown): found is OwnText {
  if (typeof found !== "object" || found === null) return false;
  const { id, name, text, changed, listed, earlier } = found as Record<string, unknown>;
  return (
    typeof id === "string" &&
    typeof name === "string" &&
    typeof text === "string" &&
    fitsAsText(text) &&
    typeof changed === "number" &&
    typeof listed === "boolean" &&
    Array.isArray(earlier) &&
    earlier.every((each) => typeof each?.at === "number" && typeof each?.text === "string")
  );
}
