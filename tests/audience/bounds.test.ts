/** What the server holds in memory has bounds, whoever calls and however often. */
import { expect, test, vi } from "vitest";
import { callerOf, MAX_WAITING } from "../../src/audience/caller-socket.ts";
import { caller, held } from "./held.ts";
import { token } from "./lines.ts";

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
