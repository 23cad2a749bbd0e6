// @vitest-environment happy-dom
import { signal } from "@preact/signals";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { linkTo, openAddress } from "../../../../src/modes/shared/address/address-sync.ts";
import { AT_HOME, type Place } from "../../../../src/modes/shared/address/place.ts";
import type { Fault } from "../../../../src/sim/faults.ts";
import { readAddress, writeAddress } from "../../../../src/state/address.ts";
import { setStage } from "../../../../src/state/edit.ts";
import { type SceneState, START } from "../../../../src/state/scene-state.ts";

const TUNNEL = setStage("lateral-tunnel")(START);

/** The browser's own way back: the address bar has changed by the time the page hears of it. */
const back = (query: string) => {
  history.replaceState(null, "", query);
  dispatchEvent(new PopStateEvent("popstate"));
};

function opened(query: string) {
  history.replaceState(null, "", query);
  const reported: { place: Place; dropped: readonly Fault[] }[] = [];
  const shown: SceneState[] = [];
  const address = openAddress((place, dropped) => reported.push({ place, dropped }));
  address.listen({ show: (state) => shown.push(state) });
  return { address, reported, shown };
}

const listening: (readonly [string, EventListener])[] = [];

beforeEach(() => {
  const add = window.addEventListener.bind(window);
  vi.stubGlobal("addEventListener", (kind: string, listener: EventListener) => {
    listening.push([kind, listener]);
    add(kind, listener);
  });
  vi.useFakeTimers();
  vi.stubGlobal("scrollTo", () => {});
  history.replaceState(null, "", "/");
});
afterEach(() => {
  for (const each of listening.splice(0)) removeEventListener(...each);
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe("the address of the page", () => {
  test("what it was opened with is its place and its scene; what cannot be used is reported", () => {
    const { address, reported } = opened(`/?mode=bench&colour=1&state=${writeAddress(TUNNEL)}~tnowhere`);
    expect(address.place.value).toMatchObject({ mode: "bench", more: { colour: "1" } });
    expect(address.opening.request.stage).toBe("lateral-tunnel");
    expect(reported).toHaveLength(1);
    expect(reported[0]!.dropped).toMatchObject([{ path: "stage", found: "nowhere" }]);
  });

  test("going somewhere changes the address bar in place", () => {
    const { address } = opened("/?mode=study&lesson=a&language=de");
    const entries = history.length;
    address.go({ step: "two" });
    expect(location.search).toBe("?mode=study&lesson=a&step=two&language=de");
    expect(history.length).toBe(entries);
  });

  test("the address has the scene once it has rested, and follows it no longer than asked", () => {
    const { address } = opened("/?mode=bench");
    const scene = signal(START);
    const stop = address.followScene(scene);
    scene.value = TUNNEL;
    vi.advanceTimersByTime(599);
    expect(location.search).toBe("?mode=bench");
    vi.advanceTimersByTime(1);
    expect(location.search).toBe(`?mode=bench&state=${writeAddress(TUNNEL)}`);
    scene.value = START;
    stop();
    vi.advanceTimersByTime(5000);
    expect(location.search).toBe(`?mode=bench&state=${writeAddress(TUNNEL)}`);
  });

  test("the browser's back goes to the earlier place, and shows its scene where it has one", () => {
    const { address, shown } = opened("/?mode=bench");
    back(`/?mode=bench&state=${writeAddress(TUNNEL)}`);
    expect(shown).toEqual([readAddress(writeAddress(TUNNEL)).state]);
    back("/?mode=study&lesson=a");
    expect(address.place.value).toMatchObject({ mode: "study", lesson: "a", state: "" });
    expect(shown).toHaveLength(1);
  });

  test("with the way out closed back and forward stay, the chosen language included; then they work again", () => {
    const { address } = opened("/?mode=kiosk");
    const reopen = address.closeWayOut();
    address.go({ language: "es" });
    back("/?mode=home");
    expect(address.place.value).toMatchObject({ mode: "kiosk", language: "es" });
    expect(location.search).toBe("?mode=kiosk&language=es");
    reopen();
    back("/?mode=home");
    expect(address.place.value.mode).toBe("home");
  });

  test("several steps back at once stay too, and are topped up as often as they are gone", () => {
    const { address } = opened("/?mode=kiosk");
    const push = vi.spyOn(history, "pushState");
    address.closeWayOut();
    expect(push).toHaveBeenCalledTimes(10);
    for (let turn = 0; turn < 5; turn++) {
      push.mockClear();
      history.replaceState({ barrier: 3 }, "", "/?mode=kiosk");
      dispatchEvent(new PopStateEvent("popstate"));
      expect(push).toHaveBeenCalledTimes(7);
      expect(history.state).toEqual({ barrier: 10 });
    }
    push.mockRestore();
  });

  test("a launched visit's registration stays in the address, whatever link is followed", () => {
    const { address } = opened("/?mode=study&endpoint=https://a.example/&registration=r1");
    back("/?mode=study&lesson=a");
    expect(location.search).toBe("?mode=study&lesson=a&registration=r1");
    address.go({ more: { view: "text" } });
    expect(location.search).toBe("?mode=study&lesson=a&view=text&registration=r1");
    back("/?mode=study&registration=r2");
    expect(address.place.value.more.registration).toBe("r2");
  });

  test.each([
    ["a link within the page", '<a href="?mode=kiosk">x</a>', {}, "kiosk"],
    ["one to elsewhere", '<a href="docs/">x</a>', {}, "home"],
    ["one that opens beside the page", '<a href="?mode=kiosk" target="_blank">x</a>', {}, "home"],
    ["one pressed for a window of its own", '<a href="?mode=kiosk">x</a>', { ctrlKey: true }, "home"],
  ])("%s", (_, html, keys, mode) => {
    const { address } = opened("/?mode=home");
    document.body.innerHTML = html;
    // After the page's own: nothing is loaded here, whatever a browser would do.
    addEventListener("click", (event) => event.preventDefault());
    const click = new MouseEvent("click", { bubbles: true, cancelable: true, ...keys });
    document.querySelector("a")!.dispatchEvent(click);
    expect(address.place.value.mode).toBe(mode);
  });

  test("a link to a place is whole and opens that place", () => {
    opened("/?mode=home");
    const link = new URL(linkTo({ ...AT_HOME, mode: "lecture", more: { list: "a.b" } }));
    expect(link.origin).toBe(location.origin);
    expect(link.search).toBe("?mode=lecture&list=a.b");
  });
});
