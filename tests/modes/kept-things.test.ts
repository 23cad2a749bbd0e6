// @vitest-environment happy-dom
import "fake-indexeddb/auto";
import { createStore, get, set } from "idb-keyval";
import { expect, test } from "vitest";
import { type Browser, eraseEverything, keptThings } from "../../src/modes/home/erase/kept-things.ts";

const HOME = "https://ward.example/kit/";

function browser(): Browser & { readonly cached: Set<string>; readonly scopes: Set<string> } {
  const cached = new Set([
    `workbox-precache-v2-${HOME}`,
    "own-lessons",
    "workbox-precache-v2-https://ward.example/",
  ]);
  const scopes = new Set([HOME, "https://ward.example/other/"]);
  return {
    cached,
    scopes,
    home: HOME,
    storages: () => [localStorage, sessionStorage],
    databases: () => indexedDB,
    caches: () =>
      ({
        keys: async () => [...cached],
        delete: async (name: string) => cached.delete(name),
      }) as unknown as CacheStorage,
    workers: () =>
      ({
        getRegistrations: async () =>
          [...scopes].map((scope) => ({ scope, unregister: async () => scopes.delete(scope) })),
      }) as unknown as ServiceWorkerContainer,
  };
}

test("all that the kit keeps is listed and goes; what another page keeps stays", async () => {
  for (const key of ["progress", "unsaved", "organiser", "counts", "teamText", "theme"])
    localStorage.setItem(`lungward.${key}`, "1");
  localStorage.setItem("other.progress", "1");
  sessionStorage.setItem("lungward.lecture.began", "1");
  // An open tab holds both of the kit's databases.
  const [texts, talk, other] = ["lungward-own", "lungward-talk", "another"].map((name) =>
    createStore(name, "x"),
  );
  for (const store of [texts!, talk!, other!]) await set("a", "b", store);
  const world = browser();
  const kinds = ["record", "lessons", "talk", "kiosk", "team", "choices", "offline"];
  expect(await keptThings(world)).toEqual(kinds);
  expect(await eraseEverything(world)).toEqual([]);
  expect([localStorage.length, localStorage.getItem("other.progress"), sessionStorage.length]).toEqual([
    1,
    "1",
    0,
  ]);
  expect(await get("a", other)).toBe("b");
  expect([...world.cached]).toEqual(["workbox-precache-v2-https://ward.example/"]);
  expect([...world.scopes]).toEqual(["https://ward.example/other/"]);
});

test("a browser that denies everything holds nothing and is survived", async () => {
  const denied = (): never => {
    throw new DOMException("denied", "SecurityError");
  };
  const world: Browser = {
    home: HOME,
    storages: denied,
    databases: denied,
    caches: () => undefined,
    workers: () => undefined,
  };
  expect(await keptThings(world)).toEqual([]);
  expect(await eraseEverything(world)).toEqual([]);
});
