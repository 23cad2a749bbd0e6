/** The talk under way in the making, kept in the browser's database at each change with its pictures. */
import { createStore, get, set } from "idb-keyval";
import * as v from "valibot";
import { inTime } from "../../shared/own/in-time.ts";
import { PICTURE_NAME, type Pictures, pictureOf, planSchema, type TalkPlan } from "../talk/own-stops.ts";

export interface KeptTalk {
  readonly plan: TalkPlan;
  readonly pictures: Pictures;
}

const DATABASE = "lungward-talk";
const DRAFT = "draft";

const keptSchema = v.object({ plan: planSchema, pictures: v.array(v.tuple([v.string(), v.instance(Blob)])) });

let made: ReturnType<typeof createStore> | undefined;
/** Made at the first use: where storage is denied, making it throws. */
const store = () => {
  made ??= createStore(DATABASE, "talk");
  return made;
};

/** A read waits for the write before it. */
let writing: Promise<void> = Promise.resolve();

/** Where storage refused it: the talk can still be given in this window. */
let unstored: KeptTalk | null = null;

let tabs: BroadcastChannel | undefined;
const otherTabs = (): BroadcastChannel => {
  tabs ??= new BroadcastChannel(DATABASE);
  return tabs;
};

/** Called when another tab has kept a talk, until the returned function is. */
export function onOtherTab(changed: () => void): () => void {
  otherTabs().addEventListener("message", changed);
  return () => otherTabs().removeEventListener("message", changed);
}

/** Opening a database makes it: a page that only looks must leave none behind. */
async function isThere(): Promise<boolean> {
  const known = await indexedDB.databases?.();
  return known === undefined || known.some(({ name }) => name === DATABASE);
}

/** null where none is kept, or none of ours. */
export async function readKeptTalk(): Promise<KeptTalk | null> {
  await writing;
  if (unstored) return unstored;
  const kept = await inTime(isThere().then((there) => (there ? get(DRAFT, store()) : null))).catch(
    () => null,
  );
  const found = v.safeParse(keptSchema, kept);
  if (!found.success) return null;
  const { plan, pictures } = found.output;
  return { plan, pictures: new Map(pictures.filter(([name]) => PICTURE_NAME.test(name))) };
}

/** Rejects where storage is denied or full. Pictures that no stop shows are left out. */
export function keepTalk({ plan, pictures }: KeptTalk): Promise<void> {
  const used = new Set(plan.stops.map(pictureOf));
  const kept = { plan, pictures: [...pictures].filter(([name]) => used.has(name)) };
  const written = writing.then(() => inTime(set(DRAFT, kept, store())));
  writing = written.then(
    () => {
      unstored = null;
      otherTabs().postMessage(null);
    },
    () => {
      unstored = { plan, pictures };
    },
  );
  return written;
}
