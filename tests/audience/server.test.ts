/** A room on its server: what counts, what each is told, and what a restart keeps. */
import { appendFileSync, existsSync, readFileSync, utimesSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { expect, test } from "vitest";
import { openFile } from "../../src/audience/journal.ts";
import { ASK, answer, isAsked, newFile, opened, phoneOf, QUESTION, stageOf, token } from "./lines.ts";

test("a phone answers once, may change it until it is locked, and only for a choice of the question", async () => {
  const audience = await opened();
  const stage = await stageOf(audience);
  stage.say(ASK);
  const [a, b] = [await phoneOf(audience, 1), await phoneOf(audience, 2, "de")];
  await expect.poll(() => a.last("ask")?.question).toMatchObject({ ask: "More or less?" });
  await expect.poll(() => b.last("ask")?.question).toMatchObject({ choices: [{ say: "Mehr" }, {}] });
  b.say({ kind: "join", code: audience.code, token: token(2), language: "en" });
  await expect.poll(() => b.last("ask")?.question).toMatchObject({ ask: "More or less?" });
  a.say(answer("more"));
  a.say(answer("less"));
  b.say(answer("more"));
  b.say(answer("nowhere"));
  b.say(answer(3));
  const tally = () => stage.last("counts")?.tally;
  await expect.poll(tally).toEqual({ less: 1, more: 1 });
  expect(stage.last("hall")).toMatchObject({ phones: 2 });
  const result = { counts: [1, 1], edges: [], model: null };
  stage.say({ ...ASK, locked: true, result });
  await expect.poll(() => a.last("ask")).toMatchObject({ locked: true, result });
  a.say(answer("more"));
  await expect.poll(() => a.heard.at(-1)).toMatchObject({ kind: "own", own: "less" });
  expect(tally()).toEqual({ less: 1, more: 1 });
});

test("a number is asked for freely, and one is counted for each phone", async () => {
  const audience = await opened();
  const stage = await stageOf(audience);
  stage.say({ ...ASK, question: { ...QUESTION, choices: [], unit: { en: "mmHg" } } });
  const [a, b] = [await phoneOf(audience, 1), await phoneOf(audience, 2)];
  await isAsked(b);
  a.say(answer(7));
  a.say(answer(8.5));
  b.say(answer("more"));
  b.say(answer(12));
  await expect.poll(() => stage.last("counts")?.numbers).toEqual([8.5, 12]);
});

test("a phone that slept and a server that was started anew keep every answer; the end of the talk erases them", async () => {
  const file = newFile();
  const first = await opened(file);
  const stage = await stageOf(first);
  stage.say(ASK);
  const phone = await phoneOf(first, 1);
  await isAsked(phone);
  phone.say(answer("more"));
  await expect.poll(() => phone.last("own")).toMatchObject({ own: "more" });
  await first.close();
  // As a process leaves it that dies while it writes.
  appendFileSync(file, '\n{"kind":"ans');
  const second = await opened(file);
  expect([second.code, second.key]).toEqual([first.code, first.key]);
  const again = await phoneOf(second, 1);
  await expect.poll(() => again.last("own")).toMatchObject({ own: "more" });
  const holder = await stageOf(second);
  await expect.poll(() => holder.last("counts")?.tally).toEqual({ more: 1 });
  again.say(answer("less"));
  await expect.poll(() => again.last("own")).toMatchObject({ own: "less" });
  await second.close();
  const third = await opened(file);
  const last = await stageOf(third);
  await expect.poll(() => last.last("counts")?.tally).toEqual({ less: 1 });
  last.say({ kind: "end" });
  expect(await last.closed).toBe(4010);
  await expect.poll(() => existsSync(file)).toBe(false);
});

test("answers that the speaker clears are forgotten, on the phones too", async () => {
  const audience = await opened();
  const stage = await stageOf(audience);
  stage.say(ASK);
  const phone = await phoneOf(audience, 1);
  await isAsked(phone);
  phone.say(answer("more"));
  await expect.poll(() => stage.last("counts")?.tally).toEqual({ more: 1 });
  stage.say({ kind: "clear", question: QUESTION.key });
  await expect.poll(() => phone.last("own")?.own).toBeNull();
  await expect.poll(() => stage.last("counts")?.tally).toEqual({});
});

test("a file of a talk that nobody ended is not taken up a day later", async () => {
  const file = newFile();
  const first = await opened(file);
  await first.close();
  const longAgo = new Date(Date.now() - 25 * 3600 * 1000);
  utimesSync(file, longAgo, longAgo);
  expect((await opened(file)).code).not.toBe(first.code);
});

test.each(["notes\n", '{"code":"","key":""}\n', "\n"])(
  "a file of another kind (%j) stays as it is, however old",
  (text) => {
    const file = newFile();
    writeFileSync(file, text);
    const longAgo = new Date(Date.now() - 25 * 3600 * 1000);
    utimesSync(file, longAgo, longAgo);
    expect(() => openFile(file, Date.now(), () => {})).toThrow(
      /^--data .*: found a file of another kind, allowed: /,
    );
    expect(readFileSync(file, "utf8")).toBe(text);
    expect(() => openFile(dirname(file), Date.now(), () => {})).toThrow(/another kind/);
  },
);

test("lost phones are counted for the stage and start afresh with the next question", async () => {
  const audience = await opened();
  const stage = await stageOf(audience);
  const phone = await phoneOf(audience, 1);
  phone.say({ kind: "lost", on: true });
  phone.say({ kind: "lost", on: true });
  await expect.poll(() => stage.last("hall")).toMatchObject({ lost: 1 });
  stage.say(ASK);
  await expect.poll(() => stage.last("hall")).toMatchObject({ lost: 0 });
});

test("a phone reads again the steps shown, in its language, when it asks and when the talk ends", async () => {
  const audience = await opened();
  const stage = await stageOf(audience);
  const words = { en: { title: "A", text: "Blood." }, de: { title: "A", text: "Blut." } };
  stage.say({ kind: "words", step: "lesson#a", words });
  const phone = await phoneOf(audience, 1, "de");
  await expect
    .poll(
      () => {
        phone.say({ kind: "words" });
        return phone.last("words")?.steps;
      },
      { interval: 600 },
    )
    .toEqual([words.de]);
  const french = await phoneOf(audience, 2, "fr");
  await expect.poll(() => french.last("ask")).toBeDefined();
  stage.say({ kind: "end" });
  expect(await french.closed).toBe(4010);
  expect(french.last("words")?.steps).toEqual([words.en]);
});
