// @vitest-environment happy-dom
import "fake-indexeddb/auto";
import { readdirSync, readFileSync } from "node:fs";
import { createStore, get, set } from "idb-keyval";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { type Browser, eraseEverything, keptThings } from "../../../../src/modes/home/erase/kept-things.ts";

// Databases of its own: files share a process, and whoever finds "lungward-talk" made here lacks the stores that its owner expects.
beforeAll(() => {
  vi.stubGlobal("indexedDB", new IDBFactory());
});
afterAll(() => {
  vi.unstubAllGlobals();
});

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

const namesIn = (folder: string, name: RegExp): readonly string[] =>
  readdirSync(`src/${folder}`, { recursive: true, encoding: "utf8" })
    .filter((file) => /\.tsx?$/.test(file))
    .flatMap((file) =>
      [...readFileSync(`src/${folder}/${file}`, "utf8").matchAll(name)].map(([, found]) => found!),
    );

test.each([
  ["modes/lecture", "talk"],
  ["modes/kiosk", "kiosk"],
])("every key that %s names is told as its own kind", async (folder, kind) => {
  const keys = namesIn(folder, /"(lungward\.\w+(?:\.\w+)?)"/g);
  expect(keys.length).toBeGreaterThan(1);
  for (const key of keys) {
    localStorage.clear();
    localStorage.setItem(key, "1");
    expect([key, ...(await keptThings({ ...browser(), caches: () => undefined }))]).toEqual([key, kind]);
  }
  localStorage.clear();
});

test("where the browser does not list its databases, each of the kit's is found, and none is made", async () => {
  const names = namesIn("modes", /const DATABASE = "([\w-]+)"/g);
  expect(names.length).toBe(2);
  const factory = new IDBFactory();
  const unlisted = new Proxy(factory, {
    get: (target, key) => {
      if (key === "databases") return undefined;
      const value = Reflect.get(target, key);
      return typeof value === "function" ? value.bind(target) : value;
    },
  });
  const world: Browser = { ...browser(), caches: () => undefined, databases: () => unlisted };
  expect(await keptThings(world)).toEqual([]);
  expect(await factory.databases()).toEqual([]);
  const fill = (name: string) =>
    new Promise<void>((done) => {
      const request = factory.open(name);
      request.onupgradeneeded = () => request.result.createObjectStore("x").put("b", "a");
      request.onsuccess = () => {
        request.result.close();
        done();
      };
    });
  for (const name of names) await fill(name);
  expect(await keptThings(world)).toEqual(["lessons", "talk"]);
  expect(await eraseEverything(world)).toEqual([]);
  expect((await factory.databases()).length).toBe(2);
});

test("workers that may not be asked for and a cache that stays keep nothing else from being erased", async () => {
  localStorage.setItem("lungward.progress", "1");
  const denied = async (): Promise<never> => {
    throw new DOMException("denied", "SecurityError");
  };
  const world: Browser = {
    ...browser(),
    workers: () => ({ getRegistrations: denied }) as unknown as ServiceWorkerContainer,
    caches: () => ({ keys: async () => ["own-lessons"], delete: denied }) as unknown as CacheStorage,
  };
  expect(await eraseEverything(world)).toEqual(["offline"]);
  expect(localStorage.getItem("lungward.progress")).toBeNull();
});

test("a browser that denies everything holds nothing and is survived", async () => {
  const denied = (): never => {
    throw new DOMException("denied", "SecurityError");
  };
  const world: Browser = {
    home: HOME,
    storages: denied,
    databases: denied,
    caches: denied,
    workers: denied,
  };
  expect(await keptThings(world)).toEqual([]);
  expect(await eraseEverything(world)).toEqual([]);
});
