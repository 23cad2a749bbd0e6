/** A talk as one file: a ZIP of `talk.json` and the pictures. What is not understood is named, and the rest is opened. */
import { zipSync } from "fflate";
import * as v from "valibot";
import { costFault } from "../../../lesson/own/figure-content.ts";
import { describeList, type Fault } from "../../../sim/faults.ts";
import {
  MAX_TITLE,
  PICTURE_NAME,
  type Pictures,
  pictureOf,
  type Stop,
  stepStop,
  stopSchema,
  type TalkPlan,
} from "../talk/own-stops.ts";
import { MAX_STOPS, MINUTES, readPlaylistFile, USUAL_MINUTES } from "../talk/playlist.ts";
import { MAX_PICTURE, typeOfPicture } from "./picture-kinds.ts";
import type { KeptTalk } from "./talk-store.ts";
import { unpackSome } from "./unpack-some.ts";

const KIND = "lungward-talk";
const VERSION = 1;
const MANIFEST = "talk.json";
const FOLDER = "pictures/";
/** Bytes of a file, and of all that it unpacks to. */
const LARGEST_FILE = 300_000_000;
/** bytes */
const LARGEST_MANIFEST = 4_000_000;

export async function writeTalkFile({ plan, pictures }: KeptTalk): Promise<Blob> {
  const manifest = `${JSON.stringify({ kind: KIND, version: VERSION, ...plan }, null, 2)}\n`;
  const files: Record<string, Uint8Array> = { [MANIFEST]: new TextEncoder().encode(manifest) };
  for (const name of new Set(plan.stops.map(pictureOf))) {
    const picture = name === null ? undefined : pictures.get(name);
    if (picture) files[FOLDER + name] = new Uint8Array(await picture.arrayBuffer());
  }
  // Pictures are packed already: store them.
  return new Blob([zipSync(files, { level: 0 }) as BlobPart], { type: "application/zip" });
}

export interface ReadTalk {
  readonly talk: KeptTalk | null;
  readonly faults: readonly Fault[];
}

/** characters of what is shown of a file's own words */
const LONGEST_FOUND = 60;
const fault = (path: string, found: string, allowed: string): Fault => ({
  path,
  found: found.slice(0, LONGEST_FOUND),
  allowed,
});

const refuse = (path: string, found: string, allowed: string): ReadTalk => ({
  talk: null,
  faults: [fault(path, found, allowed)],
});

/** Also a list of steps as earlier versions saved it. */
export async function readTalkFile(file: Blob): Promise<ReadTalk> {
  if (file.size > LARGEST_FILE) return refuse("file", `${file.size} bytes`, `at most ${LARGEST_FILE} bytes`);
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (bytes[0] !== 0x50 || bytes[1] !== 0x4b) return readPlaylist(new TextDecoder().decode(bytes));
  const unpacked = await unpackSome(bytes, LARGEST_FILE, largestOf);
  if (typeof unpacked === "string") return refuse("file", unpacked, "ZIP");
  const manifest = unpacked[MANIFEST];
  if (!manifest) return refuse("file", describeList(Object.keys(unpacked)) || "nothing", MANIFEST);
  return readManifest(new TextDecoder().decode(manifest), unpacked);
}

/** Bytes that a file of a talk may have; 0 for what no talk has. */
function largestOf(name: string): number {
  if (name === MANIFEST) return LARGEST_MANIFEST;
  return PICTURE_NAME.test(name.replace(FOLDER, "")) ? MAX_PICTURE : 0;
}

function readPlaylist(text: string): ReadTalk {
  const { playlist, faults } = readPlaylistFile(text);
  if (!playlist) return { talk: null, faults };
  const stops = playlist.stops.map(({ lesson, step }) => stepStop(lesson, step));
  return { talk: { plan: { ...playlist, stops }, pictures: new Map() }, faults };
}

function readManifest(text: string, files: Readonly<Record<string, Uint8Array>>): ReadTalk {
  let found: unknown;
  try {
    found = JSON.parse(text);
  } catch {
    return refuse(MANIFEST, text, "JSON");
  }
  const { kind, version, title, minutes, stops } = (found ?? {}) as Record<string, unknown>;
  if (kind !== KIND) return refuse("kind", String(kind), KIND);
  if (!Array.isArray(stops)) return refuse("stops", typeof stops, "list");
  const faults: Fault[] = [];
  if (version !== VERSION) faults.push(fault("version", String(version), String(VERSION)));
  const pictures = picturesIn(files, faults);
  const kept = stops.slice(0, MAX_STOPS).flatMap((stop, index) => readStop(stop, index, pictures, faults));
  if (stops.length > MAX_STOPS) faults.push(fault("stops", String(stops.length), `at most ${MAX_STOPS}`));
  const time = Number(minutes);
  const inRange = time >= MINUTES.min && time <= MINUTES.max;
  if (!inRange) faults.push(fault("minutes", String(minutes), `${MINUTES.min} to ${MINUTES.max}`));
  const plan: TalkPlan = {
    title: String(title ?? "").slice(0, MAX_TITLE),
    minutes: inRange ? time : USUAL_MINUTES,
    stops: kept,
  };
  return { talk: { plan, pictures }, faults };
}

/** One stop as far as it is understood; a stop without its picture keeps its notes and place only where it can be shown. */
function readStop(found: unknown, index: number, pictures: Pictures, faults: Fault[]): readonly Stop[] {
  const refuseStop = (path: string, what: string, allowed: string): readonly Stop[] => {
    faults.push(fault(`stops.${index + 1}${path}`, what, allowed));
    return [];
  };
  const read = v.safeParse(stopSchema, found);
  if (!read.success) {
    const [issue] = read.issues;
    // A person that is not understood leaves the stop without one.
    if (issue.path?.[0].key === "person") {
      const where = issue.path.map(({ key }) => String(key)).join(".");
      faults.push(fault(`stops.${index + 1}.${where}`, issue.received, issue.expected ?? issue.message));
      return readStop({ ...(found as object), person: null }, index, pictures, faults);
    }
    const path = issue.path?.map(({ key }) => String(key)).join(".");
    return refuseStop(path ? `.${path}` : "", issue.received, issue.expected ?? "?");
  }
  const stop = read.output;
  if (stop.kind === "picture" && !pictures.has(stop.picture))
    return refuseStop(".picture", stop.picture, `a file in ${FOLDER}`);
  // A state of the bench is drawn again: it does without its small picture.
  if (stop.kind === "bench" && stop.picture && !pictures.has(stop.picture))
    return [{ ...stop, picture: null }];
  return [stop];
}

function picturesIn(files: Readonly<Record<string, Uint8Array>>, faults: Fault[]): Pictures {
  const pictures = new Map<string, Blob>();
  for (const [path, bytes] of Object.entries(files)) {
    const name = path.startsWith(FOLDER) ? path.slice(FOLDER.length) : "";
    const type = typeOfPicture(bytes);
    if (!PICTURE_NAME.test(name) || !type) continue;
    const costly = type === "image/svg+xml" && costFault(name, new TextDecoder().decode(bytes));
    if (costly) faults.push(fault(path, costly.found, costly.allowed));
    else pictures.set(name, new Blob([bytes as BlobPart], { type }));
  }
  return pictures;
}
