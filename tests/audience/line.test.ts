/** A page's line: to its own server alone, again after a break, never again once it is refused. */
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { type AudienceLine, openLine } from "../../src/audience/line.ts";
import { FakeSocket, forgetSockets, sockets } from "./fake-socket.ts";

const heard: object[] = [];
const states: boolean[] = [];
const refusals: number[] = [];
let line: AudienceLine<object>;

beforeEach(() => {
  forgetSockets();
  heard.length = 0;
  states.length = 0;
  refusals.length = 0;
  vi.useFakeTimers();
  vi.stubGlobal("WebSocket", FakeSocket);
  vi.stubGlobal("location", { origin: "https://talk.example.org" });
  line = openLine<object, object>({
    side: "phone",
    chance: () => 1,
    greeting: () => ({ kind: "join" }),
    read: (data) => (data.startsWith("{") ? JSON.parse(data) : null),
    hear: (message) => heard.push(message),
    onLine: (open) => states.push(open),
    onRefused: (code) => refusals.push(code),
  });
});
afterEach(() => {
  line.close();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test("it leads to the page's own server, encrypted as the page is", () => {
  expect(sockets.map(({ address }) => address)).toEqual(["wss://talk.example.org/hall/phone"]);
});

test("after a break it calls again and says who it is; while there is no line nothing is said", async () => {
  sockets[0]?.open();
  expect(line.say({ kind: "answer" })).toBe(true);
  sockets[0]?.close();
  expect(line.say({ kind: "answer" })).toBe(false);
  expect(states.at(-1)).toBe(false);
  await vi.advanceTimersByTimeAsync(1000);
  sockets[1]?.open();
  expect(sockets[1]?.sent).toEqual(['{"kind":"join"}']);
  expect(states.at(-1)).toBe(true);
});

test("what cannot be read is not heard, and the line goes on", () => {
  sockets[0]?.open();
  sockets[0]?.onmessage({ data: "junk" });
  sockets[0]?.hear({ kind: "own" });
  expect(heard).toEqual([{ kind: "here" }, { kind: "own" }]);
});

test("waits grow to five seconds at most, and half as much again by chance", async () => {
  for (const wait of [750, 1500, 3000, 6000, 7500, 7500]) {
    const calls = sockets.length;
    sockets.at(-1)?.close();
    await vi.advanceTimersByTimeAsync(wait - 1);
    expect(sockets).toHaveLength(calls);
    await vi.advanceTimersByTimeAsync(1);
    expect(sockets).toHaveLength(calls + 1);
  }
});

test("a device that slept calls at once; a silent line is given up", async () => {
  sockets[0]?.open();
  line.wake();
  expect(sockets).toHaveLength(1);
  await vi.advanceTimersByTimeAsync(25_000);
  line.wake();
  await vi.advanceTimersByTimeAsync(1);
  expect(sockets).toHaveLength(2);
  sockets[1]?.open();
  await vi.advanceTimersByTimeAsync(50_000);
  expect(sockets.length).toBeGreaterThan(2);
});

test("an ended talk and a wrong code are not asked for again", async () => {
  sockets[0]?.open();
  sockets[0]?.close(4010);
  await vi.advanceTimersByTimeAsync(60_000);
  expect(sockets).toHaveLength(1);
  expect(refusals).toEqual([4010]);
});
