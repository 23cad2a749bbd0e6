/** What the tests of the audience share: a server on a port of its own, and lines to it as a stage and as phones. */
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, expect } from "vitest";
import { WebSocket } from "ws";
import { openFile } from "../../src/audience/journal.ts";
import type { Rooms } from "../../src/audience/reception.ts";
import { oneRoom } from "../../src/audience/rooms.ts";
import { type Audience, openAudience } from "../../src/audience/server.ts";

export const token = (n: number) => n.toString(16).padStart(32, "0");

export const QUESTION = {
  key: "lesson#step",
  ask: { en: "More or less?", de: "Mehr oder weniger?" },
  choices: [
    { id: "more", say: { en: "More", de: "Mehr" } },
    { id: "less", say: { en: "Less", de: "Weniger" } },
  ],
  unit: null,
};
export const ASK = { kind: "ask", question: QUESTION, locked: false, result: null };
export const answer = (id: unknown) => ({ kind: "answer", question: QUESTION.key, answer: id });

export interface Line {
  readonly heard: Record<string, unknown>[];
  readonly closed: Promise<number>;
  readonly socket: WebSocket;
  say(message: unknown): void;
  /** The last message of a kind. */
  last(kind: string): Record<string, unknown> | undefined;
}

export interface Served extends Audience {
  readonly code: string;
  readonly key: string;
  readonly file: string;
}

export const newFile = () => join(mkdtempSync(join(tmpdir(), "audience-")), "room.jsonl");

/** A folder with the least of a built kit. */
export function smallKit(): string {
  const folder = mkdtempSync(join(tmpdir(), "kit-"));
  const policy = "default-src 'none'; connect-src 'self' data:";
  for (const name of ["index.html", "phone.html"])
    writeFileSync(join(folder, name), `<meta content="${policy}"><p>${name}</p>`);
  return folder;
}

export const serveRooms = (rooms: Rooms, more: Partial<Parameters<typeof openAudience>[0]> = {}) =>
  openAudience({
    rooms,
    folder: smallKit(),
    host: "127.0.0.1",
    port: 0,
    origins: [],
    trustProxy: false,
    onFault: () => {},
    address: (port) => `http://127.0.0.1:${port}/phone`,
    ...more,
  });

export async function serve(file = newFile(), more: Parameters<typeof serveRooms>[1] = {}): Promise<Served> {
  const { code, key, journal } = openFile(file, Date.now(), () => {});
  const rooms = await oneRoom({ code, key, journal }, () => {});
  const audience = await serveRooms(rooms, more);
  const close = async () => {
    await audience.close();
    await journal.close();
  };
  return { ...audience, code, key, file, close };
}

const open = new Set<Served>();
afterEach(async () => {
  for (const audience of open) await audience.close();
});

/** A server that is closed at the test's end, unless the test closes it. */
export async function opened(...given: Parameters<typeof serve>): Promise<Served> {
  const audience = await serve(...given);
  const close = async () => {
    if (open.delete(own)) await audience.close();
  };
  const own = { ...audience, close };
  open.add(own);
  return own;
}

export async function call(
  { port }: Pick<Audience, "port">,
  path: "phone" | "stage",
  headers: Record<string, string> = {},
): Promise<Line> {
  const own = `http://127.0.0.1:${port}`;
  const socket = new WebSocket(`ws://127.0.0.1:${port}/hall/${path}`, {
    headers: { origin: own, ...headers },
  });
  const heard: Record<string, unknown>[] = [];
  socket.on("message", (data) => heard.push(JSON.parse(data.toString())));
  socket.on("error", () => {});
  const closed = new Promise<number>((done) => socket.on("close", done));
  await Promise.race([new Promise((done) => socket.on("open", done)), closed]);
  return {
    heard,
    closed,
    socket,
    say: (message) => socket.send(typeof message === "string" ? message : JSON.stringify(message)),
    last: (kind) => heard.findLast((message) => message.kind === kind),
  };
}

/** Waits until the question has reached a phone. */
export const isAsked = (phone: Line) => expect.poll(() => phone.last("ask")?.question).toBeTruthy();

type At = Pick<Served, "port" | "code" | "key">;

export async function stageOf(audience: At): Promise<Line> {
  const stage = await call(audience, "stage");
  stage.say({ kind: "hold", code: audience.code, key: audience.key });
  return stage;
}

export async function phoneOf(audience: At, n: number, language = "en", headers = {}): Promise<Line> {
  const phone = await call(audience, "phone", headers);
  phone.say({ kind: "join", code: audience.code, token: token(n), language });
  return phone;
}
