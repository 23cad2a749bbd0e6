/** A talk while it is put together: its stops and pictures, kept at each change, and what a file opened for it could not bring. */
import { batch, computed, effect, type ReadonlySignal, signal } from "@preact/signals";
import type { Lesson } from "../../../lesson/lesson.ts";
import type { Fault } from "../../../sim/faults.ts";
import type { Place } from "../../shared/address/place.ts";
import type { Taken } from "../files/take-pictures.ts";
import { type ReadTalk, readTalkFile } from "../files/talk-file.ts";
import type { KeptTalk } from "../files/talk-store.ts";
import {
  fitsInLink,
  MAX_TITLE,
  ownIn,
  type Pictures,
  pictureStop,
  type Stop,
  type TalkPlan,
  withMore,
} from "../talk/own-stops.ts";
import { MAX_STOPS, MINUTES, USUAL_MINUTES, writeStops } from "../talk/playlist.ts";
import { type FoundStop, findStops, KEPT_TALK, stopsOfList } from "../talk/stops.ts";
import { type PlanHistory, planHistory } from "./plan-history.ts";

/** Where a talk is kept. Each call may reject: storage is denied or full. */
export interface TalkStore {
  read(): Promise<KeptTalk | null>;
  keep(talk: KeptTalk): Promise<void>;
  /** Called when another tab has kept one, until the returned function is. */
  onOtherTab(changed: () => void): () => void;
}

export interface TalkDraft extends PlanHistory {
  readonly pictures: ReadonlySignal<Pictures>;
  /** What files could not bring. */
  readonly faults: ReadonlySignal<readonly Fault[]>;
  /** Name of the file opened last, where it is no talk. */
  readonly refusedFile: ReadonlySignal<string | null>;
  /** False once something could not be kept beyond this page. */
  readonly keeps: ReadonlySignal<boolean>;
  /** The stops that can be shown. */
  readonly found: ReadonlySignal<readonly FoundStop[]>;
  /** Resolved once what was kept is here. */
  readonly ready: Promise<void>;
  /** The talk of a link or file beside the one that is here, until `takeOffered` or `keepOwn` answers. */
  readonly offered: ReadonlySignal<KeptTalk | null>;
  takeOffered(): void;
  keepOwn(): void;
  setStops(subject: string | null, change: (stops: readonly Stop[]) => readonly Stop[]): void;
  addPictures(pictures: Taken["pictures"]): void;
  /** @param refusedFile name of a file that is no talk */
  report(faults: readonly Fault[], refusedFile?: string | null): void;
  /** A file's talk comes in where there is none, else it is offered; one that is no talk changes nothing. */
  open(file: Blob): Promise<void>;
  talk(): KeptTalk;
  /** The words of an address that open it. */
  words(): Place["more"];
  /** Of an address for another device: where a link cannot hold all, its steps and how much is left out. */
  linkWords(): Place["more"];
  release(): void;
}

/** `lessons`: those of the language in use now */
export function talkDraft(
  asked: Place["more"],
  lessons: () => readonly Lesson[],
  store: TalkStore,
): TalkDraft {
  const linked = planInLink(asked);
  const offered = signal<KeptTalk | null>(null);
  const history = planHistory(linked);
  const { plan, edit } = history;
  const pictures = signal<Pictures>(new Map());
  const reports = fileReports();
  const { report } = reports;
  const keeps = signal(true);
  let stopKeeping = () => {};
  let stored: TalkPlan | null = null;
  // Else the next change here would write over what was put in there, such as a state of the bench.
  const stopFollowing = store.onOtherTab(async () => {
    await ready;
    const kept = await store.read().catch(() => null);
    if (!kept || sameTalk(kept.plan, plan.peek())) return;
    pictures.value = new Map([...pictures.peek(), ...kept.pictures]);
    stored = kept.plan;
    edit(null, () => kept.plan);
  });
  const ready = store
    .read()
    .catch(() => {
      keeps.value = false;
      return null;
    })
    .then((kept) => {
      if (kept) {
        pictures.value = new Map([...kept.pictures, ...pictures.peek()]);
        edit(null, () => kept.plan);
        if (linked.stops.length > 0 && !sameSteps(kept.plan, linked))
          offered.value = { plan: linked, pictures: new Map() };
      }
      stored = kept || linked.stops.length === 0 ? plan.peek() : null;
      stopKeeping = effect(() => {
        if (plan.value === stored) return;
        stored = plan.value;
        store.keep({ plan: plan.value, pictures: pictures.peek() }).catch(() => {
          keeps.value = false;
        });
      });
    });
  const take = (talk: KeptTalk) => {
    pictures.value = new Map([...pictures.peek(), ...talk.pictures]);
    edit(null, () => talk.plan);
  };
  const setStops: TalkDraft["setStops"] = (subject, change) =>
    edit(subject, (before) => ({ ...before, stops: change(before.stops).slice(0, MAX_STOPS) }));
  return {
    ...history,
    pictures,
    ...reports,
    keeps,
    found: computed(() => findStops(plan.value.stops, lessons()).found),
    ready,
    offered,
    takeOffered() {
      const taken = offered.peek();
      offered.value = null;
      if (taken) take(taken);
    },
    keepOwn() {
      offered.value = null;
      report([]);
    },
    setStops,
    addPictures(taken) {
      if (taken.length === 0) return;
      pictures.value = new Map([...pictures.peek(), ...taken.map(({ name, blob }) => [name, blob] as const)]);
      const more = taken.map(({ name, title }) => pictureStop(name, title));
      setStops(null, (stops) => withMore(stops, more));
    },
    async open(file) {
      const { talk, faults: refused } = await readTalkFile(file).catch(() => NOT_READ);
      const dropped = talk ? findStops(talk.plan.stops, lessons()).dropped : [];
      if (talk) report([...refused, ...dropped]);
      else report([], nameOf(file));
      if (talk && plan.peek().stops.length > 0) offered.value = talk;
      else if (talk) take(talk);
    },
    talk: () => ({ plan: plan.value, pictures: pictures.value }),
    words() {
      return fitsInLink(plan.value.stops) ? stepsOf(plan.value) : { talk: KEPT_TALK };
    },
    linkWords() {
      const { stops } = plan.value;
      if (fitsInLink(stops)) return stepsOf(plan.value);
      return { ...stepsOf(plan.value), without: String(ownIn(stops)) };
    },
    release() {
      stopFollowing();
      stopKeeping();
    },
  };
}

function fileReports(): Pick<TalkDraft, "faults" | "refusedFile" | "report"> {
  const faults = signal<readonly Fault[]>([]);
  const refusedFile = signal<string | null>(null);
  return {
    faults,
    refusedFile,
    report: (found, refused = null) =>
      batch(() => {
        faults.value = found;
        refusedFile.value = refused;
      }),
  };
}

function planInLink({ list, minutes, title }: Place["more"]): TalkPlan {
  const time = Number(minutes);
  return {
    stops: stopsOfList(list ?? ""),
    minutes: time >= MINUTES.min && time <= MINUTES.max ? time : USUAL_MINUTES,
    // A stranger's link must not turn the order of the words around its own.
    title: (title ?? "").replace(/[\p{Cc}\p{Bidi_Control}]/gu, "").slice(0, MAX_TITLE),
  };
}

/** A folder, or moved since it was chosen. */
const NOT_READ: ReadTalk = { talk: null, faults: [] };

const nameOf = (file: Blob): string => ("name" in file ? String(file.name) : "");

function stepsOf({ stops, minutes, title }: TalkPlan): Place["more"] {
  const list = writeStops(stops.flatMap((stop) => (stop.kind === "step" ? [stop] : [])));
  return { list, minutes: String(minutes), title };
}

const sameTalk = (one: TalkPlan, other: TalkPlan): boolean => JSON.stringify(one) === JSON.stringify(other);

const sameSteps = (one: TalkPlan, other: TalkPlan): boolean =>
  JSON.stringify(one.stops) === JSON.stringify(other.stops);
