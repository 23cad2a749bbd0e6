/** What stage and phone take from their server: messages of the right form alone. */
import { expect, test } from "vitest";
import { LONGEST, readMessage, toStage } from "../../src/audience/line-messages.ts";
import { readToPhone } from "../../src/phone/read-message.ts";
import { caller, held } from "./held.ts";
import { ASK, answer, QUESTION, token } from "./lines.ts";

const question = { key: "a#b", ask: "More?", choices: [{ id: "a", say: "A" }], unit: "" };
const ask = { kind: "ask", question, locked: false, result: null };

test.each([
  null,
  [],
  {},
  { kind: "constructor" },
  { ...ask, question: { ...question, choices: null } },
  { ...ask, question: { ...question, choices: [{ id: "a" }] } },
  { ...ask, question: undefined },
  { ...ask, locked: "no" },
  { ...ask, result: { counts: [1], edges: ["0"], model: null } },
  { kind: "own", question: "a#b", own: {} },
  { kind: "lost" },
  { kind: "words", steps: [{ title: "A" }] },
])("a phone does not take %j", (message) => {
  expect(readToPhone(JSON.stringify(message))).toBeNull();
});

test("a phone takes whatever a room says", async () => {
  const { room } = await held();
  const heard: string[] = [];
  const phone = caller((text) => heard.push(text));
  const turn = () => Promise.resolve();
  room.join(phone, token(1), "en");
  room.hearStage({ ...ASK, kind: "ask" });
  room.hearStage({ kind: "words", step: "a#b", words: { en: { title: "A", text: "Blood." } } });
  await turn();
  room.hearPhone(phone, answer("more") as never);
  room.hearPhone(phone, { kind: "lost", on: true });
  room.hearPhone(phone, { kind: "words" });
  await turn();
  const result = { counts: [1, 0], edges: [], model: "more" };
  room.hearStage({ kind: "ask", question: QUESTION, locked: true, result });
  await turn();
  expect(new Set(heard.map((text) => readToPhone(text)?.kind))).toEqual(
    new Set(["ask", "words", "own", "lost"]),
  );
  expect(readToPhone("{")).toBeNull();
});

test("the stage takes counts and who is there, and no other form of them", () => {
  const read = (message: unknown) => readMessage(toStage, JSON.stringify(message), LONGEST.toStage);
  const counts = { kind: "counts", question: "a#b", tally: { a: 2 }, numbers: [7.5] };
  const hall = { kind: "hall", phones: 2, lost: 0 };
  expect([read(counts), read(hall), read({ ...hall, further: 1 })]).toEqual([counts, hall, hall]);
  for (const bad of [
    { ...counts, tally: { a: "2" } },
    { ...counts, numbers: null },
    { ...hall, phones: -1 },
    { kind: "held" },
    { kind: "other" },
  ])
    expect(read(bad)).toBeNull();
});
