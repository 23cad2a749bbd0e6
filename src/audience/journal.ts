/** What is said in a room, in one order for everyone who follows it. */
import { existsSync, promises, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import * as v from "valibot";
import { messageOf } from "../sim/checked/message-of.ts";
import { code, stageKey } from "./line-messages.ts";
import { type RoomEntry, roomEntry } from "./room.ts";
import { newCode, newKey } from "./room-keys.ts";

export interface Journal {
  /**
   * Hears every entry in its order, earlier ones first; resolves when those were heard. Called once.
   * @param recount called when phones came or went elsewhere
   */
  follow(hear: (entry: RoomEntry) => void, recount: () => void): Promise<void>;
  /** Heard by all who follow once it is kept; a file that takes no more holds up no talk. */
  add(entry: RoomEntry): void;
  /** Phones that hang on other processes; `here` is how many hang on this one. */
  elsewhere(here: number): number;
  close(): Promise<void>;
  /** Closes and deletes. */
  erase(): Promise<void>;
}

/** ms in which entries are collected before they are written and forced to the disk together */
const TOGETHER = 10;
/** ms after which a file is of an earlier talk that was never ended */
const STALE = 24 * 3600 * 1000;

/** Of the file: answers are its owner's alone to read. */
const mode = 0o600;
const head = v.strictObject({ code, key: stageKey });

/**
 * The room of a file: that of an earlier process, or a new one.
 * @param now ms since 1970
 * @param onFault hears what keeps the file from being written; the talk goes on without it
 */
export function openFile(
  path: string,
  now: number,
  onFault: (message: string) => void,
): { code: string; key: string; journal: Journal } {
  const found = readRoom(path, now);
  const { code, key } = found ?? { code: newCode(), key: newKey() };
  if (!found) writeFileSync(path, JSON.stringify({ code, key }), { mode });
  return { code, key, journal: fileJournal(path, found?.earlier ?? [], onFault) };
}

/** null for a new file, and for one of a talk long past, which is deleted. @throws Error for any other file, which stays as it is */
function readRoom(path: string, now: number) {
  if (!existsSync(path)) return null;
  const about = statSync(path);
  const text = about.isFile() ? readFileSync(path, "utf8") : "another kind";
  if (text === "") return null;
  const [first = "", ...lines] = text.split("\n");
  const found = parse(head, first);
  if (!found)
    throw new Error(
      `--data ${path}: found a file of another kind, allowed: a new file or one of an earlier talk`,
    );
  if (now - about.mtimeMs > STALE) {
    rmSync(path);
    return null;
  }
  return { ...found, earlier: lines.flatMap((line) => parse(roomEntry, line) ?? []) };
}

function fileJournal(
  path: string,
  earlier: readonly RoomEntry[],
  onFault: (message: string) => void,
): Journal {
  let hear: (entry: RoomEntry) => void = () => {};
  let waiting: RoomEntry[] = [];
  let lines = "";
  let writing: Promise<void> | null = null;
  let closed = false;
  const write = async () => {
    await new Promise((done) => setTimeout(done, TOGETHER));
    const [text, entries] = [lines, waiting];
    lines = "";
    waiting = [];
    try {
      await promises.appendFile(path, text, { flush: true, mode });
    } catch (fault) {
      onFault(
        `${path}: ${messageOf(fault)}. The talk goes on; what is said until this file can be written again is lost if the server stops.`,
      );
    }
    for (const entry of entries) hear(entry);
  };
  const start = () => {
    writing ??= write().finally(() => {
      writing = null;
      if (lines) start();
    });
  };
  const finish = async () => {
    if (closed) return;
    closed = true;
    while (writing) await writing;
  };
  return {
    async follow(call) {
      hear = call;
      for (const entry of earlier) call(entry);
    },
    add(entry) {
      if (closed) return;
      // The break comes first: a line that broke off must not swallow the next one.
      lines += `\n${JSON.stringify(entry)}`;
      waiting.push(entry);
      start();
    },
    elsewhere: () => 0,
    close: finish,
    async erase() {
      await finish();
      rmSync(path, { force: true });
    },
  };
}

/** undefined for a line that is none. */
export function parse<Found>(schema: v.GenericSchema<unknown, Found>, line: string): Found | undefined {
  try {
    const found = v.safeParse(schema, JSON.parse(line));
    return found.success ? found.output : undefined;
  } catch {
    return undefined;
  }
}
