/** What the server holds in memory has bounds, whoever calls and however often. */
import { mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test, vi } from "vitest";
import { callerOf, MAX_WAITING } from "../../src/audience/caller-socket.ts";
import { MAX_TIMES } from "../../src/audience/room.ts";
import { serveSite } from "../../src/audience/site.ts";
import { caller, held } from "./held.ts";
import { ASK, token } from "./lines.ts";

test("a caller that takes nothing in is cut off before more is heaped up for it", () => {
  const socket = { bufferedAmount: MAX_WAITING, send: vi.fn(), terminate: vi.fn() };
  const slow = callerOf(socket as never, "");
  slow.send("a");
  expect([socket.send.mock.calls.length, socket.terminate.mock.calls.length]).toEqual([1, 0]);
  socket.bufferedAmount += 1;
  slow.send("b");
  expect([socket.send.mock.calls.length, socket.terminate.mock.calls.length]).toEqual([1, 1]);
});

test("words are written once for each language, and once for all that the lesson does not speak", async () => {
  const { room } = await held();
  const words = { en: { title: "A", text: "Blood." }, de: { title: "A", text: "Blut." } };
  room.hearStage({ kind: "words", step: "lesson#a", words });
  const heard: string[] = [];
  await Promise.resolve();
  const write = vi.spyOn(JSON, "stringify");
  for (let n = 0; n < 26; n++) {
    const phone = caller((text) => heard.push(text));
    room.join(phone, token(n), n < 10 ? "de" : `x${String.fromCharCode(97 + n)}`);
    room.hearPhone(phone, { kind: "words" });
  }
  const written = write.mock.calls.filter(([message]) => message.kind === "words").length;
  write.mockRestore();
  expect(heard.filter((text) => text.includes("Blut."))).toHaveLength(10);
  expect(heard.filter((text) => text.includes("Blood."))).toHaveLength(16);
  expect(written).toBe(2);
});

test("a file of the kit is read once, by however many names its host is asked", () => {
  const folder = mkdtempSync(join(tmpdir(), "kit-"));
  mkdirSync(join(folder, "assets"));
  const put = (text: string) => {
    for (const name of ["index.html", "assets/kit.js"])
      writeFileSync(join(folder, name), `${text}; connect-src 'self'`);
  };
  put("first");
  const serve = serveSite(folder, () => {});
  const get = (url: string, host: string): string => {
    const end = vi.fn();
    const response = { writeHead: () => ({ end }) };
    serve({ method: "GET", url, headers: { host } } as never, response as never);
    return String(end.mock.calls[0]).replace(/;.*/s, "");
  };
  for (let n = 0; n < 2001; n++) get("/", `host-${n}`);
  get("/assets/kit.js", "own");
  get("/", "own");
  put("second");
  expect([get("/assets/kit.js", "other"), get("/", "own")]).toEqual(["first", "first"]);
  // The name that was asked for first is no longer kept.
  expect(get("/", "host-0")).toBe("second");
});

test("being lost is kept only where it changes something, and so often at a question", async () => {
  const { room, kept } = await held();
  const heard: string[] = [];
  const phone = caller((text) => heard.push(text));
  const say = async (on: boolean) => {
    room.hearPhone(phone, { kind: "lost", on });
    await Promise.resolve();
  };
  const times = () => kept.filter(({ kind }) => kind === "lost").length;
  room.join(phone, token(1), "en");
  await Promise.resolve();
  await say(true);
  await say(true);
  expect(times()).toBe(1);
  for (let n = 0; n < 100; n++) await say(n % 2 === 1);
  expect(times()).toBe(MAX_TIMES);
  expect(heard.at(-1)).toBe('{"kind":"lost","on":false}');
  room.hearStage({ ...ASK, kind: "ask" });
  await Promise.resolve();
  await say(true);
  expect(times()).toBe(MAX_TIMES + 1);
});
