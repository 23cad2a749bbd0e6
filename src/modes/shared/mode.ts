/** What a mode is to the page: a person in a place. It composes the rest and holds no facts of its own. */
import type { ReadonlySignal, Signal } from "@preact/signals";
import type { AddressSync } from "./address/address-sync.ts";
import type { Place } from "./address/place.ts";
import type { Session } from "./session.ts";
import type { StageLoop } from "./stage/stage-loop.ts";

export const THEMES = ["dark", "light"] as const;
type ThemeName = (typeof THEMES)[number];

/** What the page gives to whichever mode is open. One of each lives as long as the page. */
export interface Context {
  /** The chain with undo: the only way in which a mode changes the scene. */
  readonly session: Session;
  /** The one moving picture, behind every mode that shows it. */
  readonly stage: StageLoop;
  /** The only way in which a mode changes the place. */
  readonly address: AddressSync;
  readonly place: ReadonlySignal<Place>;
  readonly theme: Signal<ThemeName>;
  /** True while the person or the device asks that nothing moves by itself. */
  readonly reducedMotion: Signal<boolean>;
}

export interface Mode {
  /** Fills `host` and gives back how to leave it empty again. */
  mount(host: HTMLElement, context: Context): () => void;
}
