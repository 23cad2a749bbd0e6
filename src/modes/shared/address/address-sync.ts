/** Where the page is: keeps place, scene and address bar together. Nothing else writes the place or the browser's history. */
import { effect, type ReadonlySignal, signal } from "@preact/signals";
import type { Fault } from "../../../sim/faults.ts";
import { readAddress, writeAddress } from "../../../state/address.ts";
import type { SceneState } from "../../../state/scene-state.ts";
import type { Session } from "../session.ts";
import { type Place, readPlace, writePlace } from "./place.ts";

/** A word that stays in the address whatever link is followed: by it a course system's visit is found again after a reload. */
const STAYING = "registration";

/** ms without a change until the address bar has the scene */
const SCENE_REST = 600;

/** Steps back at once that a closed page survives: a long press on a mouse's or a browser's button offers ten. */
const BARRIER = 10;

export interface AddressSync {
  /** Where we are: mode, lesson, step, language. */
  readonly place: ReadonlySignal<Place>;
  /** The scene that the page was opened with. */
  readonly opening: SceneState;
  /** Goes there; the browser's history gets no entry of its own. */
  go(change: Partial<Place>): void;
  /** The address bar has the scene, so that reloading the page opens what was seen; until the returned function is called. */
  followScene(scene: ReadonlySignal<SceneState>): () => void;
  /** The browser's back and forward stay where we are until the returned function is called. */
  closeWayOut(): () => void;
  /** Links within the page and the browser's back and forward move without a reload. */
  listen(session: Pick<Session, "show">): void;
}

/** @param onDropped is given what of each address read could not be used */
export function openAddress(onDropped: (place: Place, dropped: readonly Fault[]) => void): AddressSync {
  const first = readPlace(location.search);
  const opened = readAddress(first.place.state || "1");
  const place = signal(first.place);
  let closed = false;
  onDropped(first.place, [...first.dropped, ...opened.dropped]);

  const move = (next: Place): void => {
    const { [STAYING]: stays } = place.peek().more;
    place.value = stays && !next.more[STAYING] ? { ...next, more: { ...next.more, [STAYING]: stays } } : next;
  };
  const go = (change: Partial<Place>): void => move({ ...place.peek(), ...change });
  /** Takes the address bar's word for where we are, and for the scene if it has one. */
  const arrive = ({ show }: Pick<Session, "show">): void => {
    const { place: next, dropped } = readPlace(location.search);
    const read = next.state && next.state !== place.peek().state ? readAddress(next.state) : null;
    onDropped(next, [...dropped, ...(read?.dropped ?? [])]);
    if (read) show(read.state);
    move(next);
  };
  /** Entries of the same place lie above the page, topped up whenever one is gone back. */
  const stay = (): void => {
    const { barrier } = (history.state ?? {}) as { readonly barrier?: unknown };
    for (let height = typeof barrier === "number" ? barrier + 1 : 1; height <= BARRIER; height++)
      history.pushState({ barrier: height }, "", writePlace(place.peek()));
  };

  return {
    place,
    opening: opened.state,
    go,
    followScene(scene) {
      let due: ReturnType<typeof setTimeout>;
      const stop = scene.subscribe((state) => {
        clearTimeout(due);
        due = setTimeout(() => go({ state: writeAddress(state) }), SCENE_REST);
      });
      return () => {
        stop();
        clearTimeout(due);
      };
    },
    closeWayOut() {
      closed = true;
      stay();
      return () => {
        closed = false;
      };
    },
    listen(session) {
      addEventListener("popstate", () => (closed ? stay() : arrive(session)));
      addEventListener("click", (event) => {
        const query = queryOfLink(event);
        if (query === null) return;
        event.preventDefault();
        history.pushState(null, "", query);
        arrive(session);
        scrollTo(0, 0);
      });
      effect(() => {
        const query = writePlace(place.value);
        if (query === location.search) return;
        history.replaceState(history.state, "", query === "?" ? location.pathname : query);
      });
    },
  };
}

/** The whole link to a place, for someone else to open. */
export const linkTo = (place: Place): string => new URL(writePlace(place), location.href).href;

/** null for clicks that the browser is to answer: no link of ours, or one that opens beside the page. */
function queryOfLink(event: MouseEvent): string | null {
  const link = event.target instanceof Element ? event.target.closest("a") : null;
  const query = link?.getAttribute("href");
  const beside = link?.target || event.ctrlKey || event.metaKey || event.shiftKey;
  return query?.startsWith("?") && !beside && !event.defaultPrevented ? query : null;
}
