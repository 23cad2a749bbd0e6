/** The channel between a talk's windows: what is heard of all that may be sent. */
import fc from "fast-check";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { speak, startTalk } from "../../../../src/modes/lecture/talk/talk.ts";
import {
  CHANNEL_VERSION,
  newRoom,
  openWindowChannel,
} from "../../../../src/modes/lecture/windows/window-channel.ts";
import {
  readToRoom,
  readToSpeaker,
  type ToRoom,
} from "../../../../src/modes/lecture/windows/window-messages.ts";

const ORIGIN = "http://127.0.0.1:1";
const ROOM = newRoom();
/** Stands for the page's own end: what the browser would call when a window posts. */
let arrive: (event: Partial<MessageEvent>) => void = () => {};

beforeEach(() => {
  vi.stubGlobal("origin", ORIGIN);
  vi.stubGlobal("window", {});
  vi.stubGlobal("BroadcastChannel", undefined);
  vi.stubGlobal("addEventListener", (_: string, listen: typeof arrive) => {
    arrive = listen;
  });
  vi.stubGlobal("removeEventListener", () => {});
});
afterEach(() => {
  vi.unstubAllGlobals();
});

let count = 0;
const envelope = (message: unknown, more: object = {}) => ({
  lungwardChannel: ROOM,
  version: CHANNEL_VERSION,
  id: `other.${count++}`,
  message,
  ...more,
});
const next: ToRoom = { kind: "event", event: { kind: "next" } };

function listening() {
  const heard: ToRoom[] = [];
  const channel = openWindowChannel<unknown, ToRoom>(ROOM, readToRoom, (message) => heard.push(message));
  return { heard, channel };
}

test("a message of the room from a page of this origin is heard, once", () => {
  const { heard } = listening();
  const data = envelope(next);
  arrive({ data, origin: ORIGIN });
  arrive({ data, origin: ORIGIN });
  expect(heard).toEqual([next]);
});

test("a page of another origin is not heard, whatever it knows, and nothing is posted to it", () => {
  const { heard, channel } = listening();
  const posted = vi.fn();
  const source = { closed: false, postMessage: posted } as unknown as Window;
  arrive({ data: envelope(next), origin: "https://example.org", source });
  arrive({ data: envelope(next), origin: "null", source });
  channel.post({ kind: "hello" });
  expect(heard).toEqual([]);
  expect(posted).not.toHaveBeenCalled();
});

test("another room is not heard", () => {
  const { heard } = listening();
  arrive({ data: envelope(next, { lungwardChannel: newRoom() }), origin: ORIGIN });
  arrive({ data: envelope(next, { lungwardChannel: "lungward.lecture" }), origin: ORIGIN });
  expect(heard).toEqual([]);
});

test("messages go only to this page's own origin, with the room and a version", () => {
  const { channel } = listening();
  const postMessage = vi.fn();
  channel.join({ closed: false, postMessage } as unknown as Window);
  channel.post({ kind: "hello" });
  expect(postMessage).toHaveBeenCalledWith(
    expect.objectContaining({ lungwardChannel: ROOM, version: CHANNEL_VERSION, message: { kind: "hello" } }),
    "/",
  );
});

test("an event of a version to come is passed over; one that is known is heard, whatever else is said", () => {
  const { heard } = listening();
  arrive({ data: envelope({ kind: "event", event: { kind: "fly" } }, { version: 9 }), origin: ORIGIN });
  arrive({ data: envelope({ kind: "applause", loud: 3 }, { version: 9 }), origin: ORIGIN });
  arrive({ data: envelope(next, { version: 9, tone: "soft" }), origin: ORIGIN });
  expect(heard).toEqual([next]);
});

test("10,000 junk messages are neither read nor answered, and the talk continues", () => {
  const { heard } = listening();
  const kinds = fc.constantFrom(
    "event",
    "pause",
    "hello",
    "talk",
    "go",
    "point",
    "aside",
    "blank",
    "__proto__",
  );
  const junk = fc.oneof(
    fc.anything({ withBigInt: true, withMap: true, withTypedArray: true, withNullPrototype: true }),
    fc.record({ kind: kinds, event: fc.anything(), at: fc.anything() }),
    fc.record({
      kind: fc.constant("event"),
      event: fc.record({ kind: kinds, at: fc.anything(), to: fc.anything(), state: fc.anything() }),
    }),
  );
  let talk = startTalk(10);
  fc.assert(
    fc.property(junk, fc.boolean(), (message, wrapped) => {
      const before = heard.length;
      arrive({ data: wrapped ? envelope(message) : message, origin: ORIGIN });
      for (const each of heard.slice(before)) if (each.kind === "event") talk = speak(talk, each.event);
    }),
    { numRuns: 10_000 },
  );
  expect(talk.at).toBeGreaterThanOrEqual(0);
  expect(talk.at).toBeLessThan(10);
  heard.length = 0;
  arrive({ data: envelope(next), origin: ORIGIN });
  expect(heard).toEqual([next]);
  expect(speak(startTalk(10), { kind: "next" }).at).toBe(1);
});

test.each([
  { kind: "event", event: { kind: "go", at: 1e9 } },
  { kind: "event", event: { kind: "go", at: 0.5 } },
  { kind: "event", event: { kind: "go", at: Number.NaN } },
  { kind: "event", event: { kind: "point", at: [2, 0] } },
  { kind: "event", event: { kind: "point", at: [0] } },
  { kind: "event", event: { kind: "aside", state: "1".repeat(5000) } },
  { kind: "event", event: { kind: "blank", to: "none" } },
  { kind: "event", event: { kind: "next", more: 1 } },
  { kind: "event" },
  {},
  null,
])("out of bounds: %j", (message) => {
  expect(readToRoom(message)).toBeNull();
});

test("the speaker's window accepts only a complete talk", () => {
  const reported = {
    kind: "talk",
    talk: startTalk(3),
    hall: null,
    list: "a*b",
    minutes: 20,
    began: null,
    paused: false,
    reader: 7,
  };
  expect(readToSpeaker(reported)).toEqual(reported);
  expect(readToSpeaker({ ...reported, minutes: 1e9 })).toBeNull();
  expect(readToSpeaker({ ...reported, talk: { ...reported.talk, count: -1 } })).toBeNull();
  expect(readToSpeaker({ kind: "hello" })).toBeNull();
});
