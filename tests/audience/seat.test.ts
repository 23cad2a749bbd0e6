/** A phone's seat: an answer is sent again once after a break, and never in a circle. */
import { beforeEach, expect, test, vi } from "vitest";
import { MAX_TIMES } from "../../src/audience/room.ts";
import { FakeSocket, forgetSockets, sockets } from "./fake-socket.ts";
import { caller, held } from "./held.ts";
import { ASK, QUESTION, token } from "./lines.ts";

const question = { key: "lesson#step", ask: "More?", choices: [{ id: "more", say: "More" }], unit: "" };
const ask = { kind: "ask", question, locked: false, result: null };

beforeEach(() => {
  forgetSockets();
  vi.resetModules();
  vi.stubGlobal("navigator", { languages: ["en"] });
  vi.stubGlobal("location", { origin: "https://talk.example.org" });
  vi.stubGlobal("WebSocket", FakeSocket);
  vi.useFakeTimers();
  return () => {
    vi.useRealTimers();
    vi.unstubAllGlobals();
  };
});

async function seated() {
  const seat = await import("../../src/phone/seat.ts");
  seat.join("2345678");
  sockets[0]?.open();
  sockets[0]?.hear(ask);
  return seat;
}
const answers = (at: number) => sockets[at]?.sent.filter((text) => text.includes('"answer"')).length;

test("an answer that the server does not take is not sent again: the phone says that it stays", async () => {
  const seat = await seated();
  seat.give("more");
  for (let n = 0; n < 3; n++) sockets[0]?.hear(ask);
  expect(answers(0)).toBe(1);
  expect([seat.pending.value, seat.refused.value]).toEqual([null, "more"]);
});

test("an answer given before a break is sent again once, when the question comes again", async () => {
  const seat = await seated();
  seat.give("more");
  sockets[0]?.close();
  await vi.advanceTimersByTimeAsync(1000);
  sockets[1]?.open();
  for (let n = 0; n < 3; n++) sockets[1]?.hear(ask);
  expect(answers(1)).toBe(1);
  sockets[1]?.hear({ kind: "own", question: question.key, own: "more" });
  expect([seat.own.value, seat.pending.value, seat.refused.value]).toEqual(["more", null, null]);
});

test("an answer given into a line that a device slept through is sent again as well", async () => {
  const seat = await seated();
  await vi.advanceTimersByTimeAsync(25_000);
  seat.give("more");
  seat.wake();
  await vi.advanceTimersByTimeAsync(1);
  sockets[1]?.open();
  sockets[1]?.hear(ask);
  expect(answers(1)).toBe(1);
  expect([seat.pending.value, seat.refused.value]).toEqual(["more", null]);
});

test("the answer after the last one that counts is said once, between a phone and a room", async () => {
  const seat = await seated();
  const { room } = await held();
  const phone = caller((data) => void Promise.resolve().then(() => sockets[0]?.onmessage({ data })));
  room.join(phone, token(1), "en");
  room.hearStage({ ...ASK, kind: "ask" });
  await vi.advanceTimersByTimeAsync(0);
  let said = 0;
  sockets[0]!.send = (text) => {
    if (++said < 200) room.hearPhone(phone, JSON.parse(text));
  };
  for (let n = 0; n <= MAX_TIMES; n++) {
    seat.give(QUESTION.choices[n % 2]!.id);
    await vi.advanceTimersByTimeAsync(0);
  }
  expect(said).toBe(MAX_TIMES + 1);
  expect([seat.pending.value, seat.own.value, seat.refused.value]).toEqual([null, "less", "more"]);
});
