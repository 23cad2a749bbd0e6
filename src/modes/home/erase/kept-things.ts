/** Everything that the kit keeps in this browser, under its own names: what there is, and its end. Other pages of the same address keep theirs. */
import { inTime } from "../../shared/own/in-time.ts";

const KEPT_KINDS = ["record", "lessons", "talk", "kiosk", "team", "choices", "offline"] as const;
export type KeptKind = (typeof KEPT_KINDS)[number];

/** What a browser keeps things in. Each part may be denied. */
export interface Browser {
  readonly storages: () => readonly Storage[];
  readonly databases: () => IDBFactory;
  readonly caches: () => CacheStorage | undefined;
  readonly workers: () => ServiceWorkerContainer | undefined;
  /** Address of the folder that the kit is served from. */
  readonly home: string;
}

const PREFIX = "lungward";
const DATABASES: Readonly<Record<string, KeptKind>> = { "lungward-own": "lessons", "lungward-talk": "talk" };
const KEYS: readonly (readonly [name: RegExp, kind: KeptKind])[] = [
  [/^lungward\.(progress|launch)$/, "record"],
  [/^lungward\.(unsaved|draft)$/, "lessons"],
  [/^lungward\.(lecture|speaker)/, "talk"],
  [/^lungward\.(organiser|counts)/, "kiosk"],
  [/^lungward\.teamText$/, "team"],
];
/** Of a ward's own lessons; the rest carry the address in their names. */
const OWN_CACHE = "own-lessons";

const kindOf = (key: string): KeptKind => KEYS.find(([name]) => name.test(key))?.[1] ?? "choices";

/** In the order of `KEPT_KINDS`; a part that is denied holds nothing. */
export async function keptThings(browser: Browser): Promise<readonly KeptKind[]> {
  const found = new Set<KeptKind>([
    ...keysOf(browser).map(({ key }) => kindOf(key)),
    ...(await databasesOf(browser)).map((name) => DATABASES[name] ?? "choices"),
    ...((await cachesOf(browser)).length > 0 ? (["offline"] as const) : []),
  ]);
  return KEPT_KINDS.filter((kind) => found.has(kind));
}

/** @returns what is left, where something could not be erased */
export async function eraseEverything(browser: Browser): Promise<readonly KeptKind[]> {
  for (const { storage, key } of keysOf(browser)) storage.removeItem(key);
  for (const name of await databasesOf(browser)) {
    // Emptied, not deleted: a deletion waits for every open tab, and whoever opens it meanwhile waits too.
    await emptyDatabase(browser.databases(), name).catch(() => {});
  }
  await stopWorkers(browser).catch(() => {});
  for (const name of await cachesOf(browser)) {
    await browser
      .caches()
      ?.delete(name)
      .catch(() => {});
  }
  return keptThings(browser);
}

async function stopWorkers({ workers, home }: Browser): Promise<void> {
  const registrations = (await workers()?.getRegistrations()) ?? [];
  await Promise.all(registrations.filter(({ scope }) => scope === home).map((each) => each.unregister()));
}

function keysOf(browser: Browser): readonly { readonly storage: Storage; readonly key: string }[] {
  try {
    return browser.storages().flatMap((storage) =>
      Array.from({ length: storage.length }, (_, index) => storage.key(index) ?? "")
        .filter((key) => key.startsWith(PREFIX))
        .map((key) => ({ storage, key })),
    );
  } catch {
    return [];
  }
}

/** Only those that hold something: one that was erased is there, empty. */
async function databasesOf(browser: Browser): Promise<readonly string[]> {
  try {
    const factory = browser.databases();
    const filled: string[] = [];
    for (const name of await namesIn(factory))
      if (await isFilled(factory, name).catch(() => false)) filled.push(name);
    return filled;
  } catch {
    return [];
  }
}

/** A browser that does not list its databases is asked for each of the kit's. */
async function namesIn(factory: Pick<IDBFactory, "databases"> | { databases?: undefined }) {
  if (!factory.databases) return Object.keys(DATABASES);
  const all = (await factory.databases()).map(({ name }) => name ?? "");
  return all.filter((name) => name.startsWith(PREFIX));
}

async function cachesOf(browser: Browser): Promise<readonly string[]> {
  try {
    const names = (await browser.caches()?.keys()) ?? [];
    return names.filter((name) => name === OWN_CACHE || name.endsWith(browser.home));
  } catch {
    return [];
  }
}

const answer = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((done, failed) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
  });

async function withStores<T>(
  factory: IDBFactory,
  name: string,
  use: (stores: readonly IDBObjectStore[]) => Promise<T>,
): Promise<T> {
  const request = factory.open(name);
  // There is none: looking must not make one, without the stores that its owner expects.
  request.onupgradeneeded = () => request.transaction?.abort();
  const database = await inTime(answer(request));
  try {
    const names = [...database.objectStoreNames];
    if (names.length === 0) return await use([]);
    const transaction = database.transaction(names, "readwrite");
    return await use(names.map((each) => transaction.objectStore(each)));
  } finally {
    database.close();
  }
}

const isFilled = (factory: IDBFactory, name: string): Promise<boolean> =>
  withStores(factory, name, async (stores) => {
    const counts = await Promise.all(stores.map((store) => answer(store.count())));
    return counts.some((count) => count > 0);
  });

const emptyDatabase = (factory: IDBFactory, name: string): Promise<unknown> =>
  withStores(factory, name, (stores) => Promise.all(stores.map((store) => answer(store.clear()))));
