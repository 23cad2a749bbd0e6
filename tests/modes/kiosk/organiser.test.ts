import { describe, expect, it } from "vitest";
import { codeLock } from "../../../src/modes/kiosk/code-lock.ts";
import {
  checkSettings,
  DEFAULTS,
  largerType,
  offeredOf,
  readSettings,
  writeSettings,
} from "../../../src/modes/kiosk/organiser-settings.ts";

/** What a browser keeps, as far as the lock asks for it. */
function fakeStorage(first?: string): Storage {
  const kept = new Map(first === undefined ? [] : [["lungward.organiser.tries", first]]);
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
    get length() {
      return kept.size;
    },
  } as unknown as Storage;
}

/** `now`: both clocks */
const lockAt = (now: () => number, storage = fakeStorage()) =>
  codeLock({ now, date: now, storage: () => storage });

describe("the organiser's settings", () => {
  it("are valid whatever the storage contains", () => {
    for (const found of [null, 7, "x", [], { idle: -1, code: "abc", languages: [3, "es"], counting: "yes" }])
      expect(checkSettings(found)).toMatchObject({ idle: 60, code: "2468", counting: false });
    expect(checkSettings({ languages: [3, "es"] }).languages).toEqual(["es"]);
    expect(checkSettings({ ...DEFAULTS, idle: 120 }).idle).toBe(120);
  });

  // EN 301 549 V3.2.1, 5.1.4; the two examples of the user notes: 24 inch at 1080 x 1920 from 600 mm: about 40 px; 55 inch from 1 m: about 29 px.
  it("U15 size the larger words by the distance", () => {
    expect(Math.abs(largerType({ diagonal: 24, distance: 600 }, 1080, 1920) - 40)).toBeLessThanOrEqual(1);
    expect(Math.abs(largerType({ diagonal: 55, distance: 1000 }, 1080, 1920) - 29)).toBeLessThanOrEqual(1);
  });
});

describe("the organiser's code", () => {
  it("opens only as a whole, and rests for a minute after five wrong tries", () => {
    let now = 0;
    const lock = lockAt(() => now);
    expect(lock.opens("12468", "2468")).toBe(false);
    expect(lock.opens("2468", "2468")).toBe(true);
    for (let i = 0; i < 5; i++) expect(lock.opens("0000", "2468")).toBe(false);
    expect([lock.rests(), lock.opens("2468", "2468")]).toEqual([60_000, false]);
    now = 60_001;
    expect([lock.rests(), lock.opens("2468", "2468")]).toEqual([0, true]);
  });

  it("keeps its rest and its count of wrong tries over a reload; the right code leaves nothing", () => {
    const storage = fakeStorage();
    let date = 1_800_000_000_000;
    // Each page has a clock of its own, which starts at nothing.
    const reloaded = () => {
      const began = date;
      return codeLock({ now: () => date - began, date: () => date, storage: () => storage });
    };
    for (let i = 0; i < 4; i++) expect(reloaded().opens("0000", "2468")).toBe(false);
    expect(reloaded().opens("0000", "2468")).toBe(false);
    date += 20_000;
    expect([reloaded().rests(), reloaded().opens("2468", "2468")]).toEqual([40_000, false]);
    // A clock set back keeps nobody waiting for longer than a minute.
    date -= 3_600_000;
    expect(reloaded().rests()).toBe(60_000);
    date += 3_700_000;
    expect(reloaded().opens("2468", "2468")).toBe(true);
    expect(storage.length).toBe(0);
  });

  it("opens whatever stands in storage, or where there is none", () => {
    for (const junk of [
      "",
      "{",
      "null",
      "[]",
      '{"wrong":-1,"until":0}',
      '{"wrong":1e9,"until":1e300}',
      '{"wrong":0.5}',
    ])
      expect(lockAt(() => 5, fakeStorage(junk)).opens("2468", "2468"), junk).toBe(true);
    const late = lockAt(() => 5, fakeStorage('{"wrong":0,"until":8e15}'));
    expect(late.rests()).toBe(60_000);
    const denied = codeLock({
      now: () => 5,
      date: () => 5,
      storage: () => {
        throw new DOMException("denied");
      },
    });
    expect([denied.opens("1", "2468"), denied.opens("2468", "2468")]).toEqual([false, true]);
  });

  // A code of four digits is one of 10,000.
  it("takes ten hours of trying for less than a third of all codes", () => {
    let now = 0;
    const lock = lockAt(() => now);
    let tried = 0;
    for (; now < 10 * 3_600_000; now += 500)
      if (lock.rests() === 0 && !lock.opens(String(tried), "none")) tried++;
    expect(tried).toBeLessThan(3_200);
  });
});

it("what another kiosk offers and this one has not leaves no kiosk empty", () => {
  const all = ["de", "en"];
  expect(offeredOf(all, ["en", "xx"])).toEqual(["en"]);
  expect(offeredOf(all, ["xx"])).toEqual(all);
  expect(offeredOf(all, [])).toEqual(all);
});

describe("settings for a second kiosk", () => {
  const mine = { ...DEFAULTS, idle: 90, lessons: ["03-pathways"], contact: "Desk 2", code: "987654" };

  it("are the same there, but for the code", () => {
    const { code, ...settings } = mine;
    expect(readSettings(writeSettings(mine))).toEqual(settings);
    expect(writeSettings(mine)).not.toContain(code);
  });

  it("are refused from any other file, and a value out of range is the default", () => {
    for (const text of ["", "[]", "null", '{"kind":"other","idle":90}', "\0"])
      expect(readSettings(text)).toBeNull();
    expect(readSettings('{"kind":"lungward-kiosk","idle":9e9,"contact":7}')).toMatchObject({
      idle: 60,
      contact: "",
    });
  });
});
