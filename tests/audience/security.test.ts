/** What the audience's server refuses: strangers, guesses, floods and junk. */
import { writeFileSync } from "node:fs";
import { request } from "node:http";
import { join } from "node:path";
import { expect, test, vi } from "vitest";
import { callerAddress } from "../../src/audience/caller-address.ts";
import { limit, MAX_NAMES } from "../../src/audience/rate-limit.ts";
import { emptyRoom, enter, MAX_PHONES, MAX_TIMES } from "../../src/audience/room.ts";
import { newKey } from "../../src/audience/room-keys.ts";
import { ASK, answer, call, isAsked, opened, phoneOf, QUESTION, smallKit, stageOf, token } from "./lines.ts";

const otherCode = (code: string) => code.replace(/^./, code.startsWith("2") ? "3" : "2");

test("only the key's holder asks; a page of another origin does not even connect", async () => {
  const audience = await opened();
  const wrong = await stageOf({ ...audience, key: newKey() });
  expect(await wrong.closed).toBe(4003);
  const keyless = await call(audience, "stage");
  keyless.say(ASK);
  expect(await keyless.closed).toBe(1008);
  const phone = await phoneOf(audience, 1);
  phone.say(ASK);
  expect(await phone.closed).toBe(1008);
  const foreign = await call(audience, "phone", { origin: "https://example.org" });
  expect(await foreign.closed).toBe(1006);
  expect(foreign.heard).toEqual([]);
});

test("after sixty wrong codes from an address the right one is not looked at either, but for phones that were in", async () => {
  const audience = await opened();
  const known = await phoneOf(audience, 7);
  await expect.poll(() => known.last("ask")).toBeDefined();
  for (let n = 0; n < 60; n++) {
    const guess = await phoneOf({ ...audience, code: otherCode(audience.code) }, n);
    expect(await guess.closed).toBe(4004);
  }
  const late = await phoneOf(audience, 1);
  expect(await late.closed).toBe(4004);
  const holder = await stageOf(audience);
  expect(await holder.closed).toBe(4004);
  known.socket.close();
  const again = await phoneOf(audience, 7);
  await expect.poll(() => again.last("ask")).toBeDefined();
});

test("behind a trusted proxy each caller has attempts of its own; without trust a header buys none", async () => {
  const header = (value: string) => ({
    headers: { "x-forwarded-for": value },
    socket: { remoteAddress: "10.0.0.1" } as never,
  });
  expect(callerAddress(header("1.1.1.1, 2.2.2.2"), true)).toBe("2.2.2.2");
  expect(callerAddress(header("1.1.1.1"), false)).toBe("10.0.0.1");
  expect(callerAddress(header(""), true)).toBe("10.0.0.1");
  const audience = await opened(undefined, { trustProxy: true });
  for (let n = 0; n < 61; n++) {
    const wrong = { ...audience, code: otherCode(audience.code) };
    const guess = await phoneOf(wrong, n, "en", { "x-forwarded-for": "9.9.9.9" });
    expect(await guess.closed).toBe(4004);
  }
  const other = await phoneOf(audience, 1, "en", { "x-forwarded-for": "8.8.8.8" });
  await expect.poll(() => other.last("ask")).toBeDefined();
});

test.each([
  ["1.2.3.4", "1.2.3.4"],
  ["::ffff:1.2.3.4", "1.2.3.4"],
  ["::FFFF:102:304", "1.2.3.4"],
  ["2001:db8:1:2:aaaa::1", "2001:db8:1:2"],
  ["2001:0DB8:1:2:bbbb:0:0:2", "2001:db8:1:2"],
  ["2001:db8::1:2:3:4", "2001:db8:0:0"],
  ["fe80::1%eth0", "fe80:0:0:0"],
  ["::1", "0:0:0:0"],
  ["unknown", "unknown"],
])("a caller at %s is counted as %s", (remoteAddress, counted) => {
  expect(callerAddress({ headers: {}, socket: { remoteAddress } as never }, false)).toBe(counted);
});

test("a limit remembers so many names and no more: it forgets the one not heard of for longest", () => {
  const attempts = limit(1, 1e6, () => 0);
  attempts.take("oldest");
  attempts.take("again");
  for (let n = 2; n < MAX_NAMES; n++) attempts.take(`${n}`);
  attempts.take("again");
  expect([attempts.left("oldest"), attempts.left("again")]).toEqual([false, false]);
  attempts.take("one more");
  expect([attempts.left("oldest"), attempts.left("again")]).toEqual([true, false]);
});

test("what is left of a limit comes back with time", () => {
  let now = 0;
  const attempts = limit(2, 10, () => now);
  expect([attempts.take("a"), attempts.take("a"), attempts.take("a"), attempts.take("b")]).toEqual([
    true,
    true,
    false,
    true,
  ]);
  now = 5000;
  expect([attempts.take("a"), attempts.take("a")]).toEqual([true, false]);
});

const JUNK = [
  "",
  "{",
  "null",
  "[]",
  '{"kind":"ask"}',
  "x".repeat(600),
  '{"kind":"answer"}',
  '{"__proto__":1}',
];

test.each(JUNK)(
  "junk (%j) ends the line of whoever says it, outside and inside, and the room stays",
  async (junk) => {
    const audience = await opened();
    const stage = await stageOf(audience);
    stage.say(ASK);
    const [good, inside] = [await phoneOf(audience, 1), await phoneOf(audience, 2)];
    const holder = await stageOf(audience);
    await Promise.all([isAsked(good), isAsked(inside)]);
    await expect.poll(() => holder.last("held")).toBeDefined();
    good.say(answer("more"));
    await expect.poll(() => stage.last("counts")?.tally).toEqual({ more: 1 });
    const strangers = [await call(audience, "phone"), await call(audience, "stage")];
    for (const line of [inside, holder, ...strangers]) {
      for (let n = 0; n < 20; n++) line.say(junk);
      expect(await line.closed).toBe(1008);
    }
    good.say(answer("less"));
    await expect.poll(() => stage.last("counts")?.tally).toEqual({ less: 1 });
    await expect.poll(() => stage.last("hall")).toMatchObject({ phones: 1 });
  },
);

test("10,000 junk messages leave the room as it was; too much or too large ends the line", async () => {
  const audience = await opened();
  const stage = await stageOf(audience);
  stage.say(ASK);
  const good = await phoneOf(audience, 1);
  await isAsked(good);
  good.say(answer("more"));
  await expect.poll(() => stage.last("counts")?.tally).toEqual({ more: 1 });
  for (let line = 0; line < 100; line++) {
    const bad = await call(audience, "phone");
    for (let n = 0; n < 100; n++) bad.say(JUNK[(line + n) % JUNK.length]!);
    expect(await bad.closed).toBe(1008);
  }
  const large = await call(audience, "phone");
  large.say("x".repeat(100_000));
  expect(await large.closed).toBe(1009);
  const fast = await phoneOf(audience, 2);
  for (let n = 0; n < 40; n++) fast.say(answer("more"));
  expect(await fast.closed).toBe(1008);
  good.say(answer("less"));
  await expect.poll(() => stage.last("counts")?.tally).toMatchObject({ less: 1 });
  await expect.poll(() => stage.last("hall")).toMatchObject({ phones: 1 });
});

test("one phone has one voice: a second token on its line is refused, a second line of it changes its one answer", async () => {
  const audience = await opened();
  const stage = await stageOf(audience);
  stage.say(ASK);
  const [a, twin] = [await phoneOf(audience, 1), await phoneOf(audience, 1)];
  await isAsked(twin);
  a.say(answer("more"));
  twin.say(answer("less"));
  await expect.poll(() => a.last("own")).toMatchObject({ own: "less" });
  await expect.poll(() => stage.last("counts")?.tally).toEqual({ less: 1 });
  a.say({ kind: "join", code: audience.code, token: token(2), language: "en" });
  expect(await a.closed).toBe(1008);
});

test("a room has bounds: phones, and changes of mind of each", () => {
  let room = enter(emptyRoom(), { ...ASK, kind: "ask" } as never);
  for (let n = 0; n <= MAX_PHONES; n++) room = enter(room, { kind: "join", token: token(n) });
  expect(room.tokens.size).toBe(MAX_PHONES);
  const entry = { kind: "answer", question: QUESTION.key, token: token(1), answer: "more" } as const;
  room = enter(room, { ...entry, token: token(MAX_PHONES) });
  expect(room.answers.size).toBe(0);
  for (let n = 0; n < MAX_TIMES; n++) room = enter(room, entry);
  room = enter(room, { ...entry, answer: "less" });
  expect(room.answers.get(QUESTION.key)?.get(token(1))?.answer).toBe("more");
});

/** As it is written, without a client that tidies the address. */
const get = (port: number, path: string, headers: Record<string, string> = {}) =>
  new Promise<{ status: number; headers: Record<string, unknown>; text: string }>((done) => {
    request({ port, path, host: "127.0.0.1", headers }, (response) => {
      let text = "";
      response.on("data", (part) => {
        text += part;
      });
      response.on("end", () => done({ status: response.statusCode ?? 0, headers: response.headers, text }));
    }).end();
  });

test("a page whose policy would keep phones from connecting is refused, and the operator alone is told the reason", async () => {
  const folder = smallKit();
  const policy = `<meta http-equiv="Content-Security-Policy" content="default-src 'none'">`;
  writeFileSync(join(folder, "phone.html"), policy);
  const onFault = vi.fn();
  const { port } = await opened(undefined, { folder, onFault });
  const page = await get(port, "/phone");
  expect([page.status, page.text]).toEqual([500, "This file cannot be served now."]);
  expect(onFault).toHaveBeenCalledWith(expect.stringMatching(/^phone\.html: .*connect-src 'self'/));
  expect((await get(port, "/")).status).toBe(200);
});

test("the site gives out its own folder and nothing else, and its pages reach their own host alone", async () => {
  const { port } = await opened();
  for (const path of ["/../package.json", "/..%2f..%2fetc/passwd", "/%00", "//etc/passwd", "/.%2e/x"])
    expect((await get(port, path)).status, path).toBeGreaterThanOrEqual(400);
  const page = await get(port, "/phone");
  expect(page.text).toContain(`connect-src 'self' ws://127.0.0.1:${port} wss://127.0.0.1:${port} data:`);
  expect(page.headers).toMatchObject({
    "x-content-type-options": "nosniff",
    "referrer-policy": "no-referrer",
  });
  expect((await get(port, "/", { host: "x; script-src *" })).status).toBe(400);
  const door = await get(port, "/stage");
  expect(door.headers["content-security-policy"]).toMatch(/^default-src 'none'; script-src 'sha256-[^']+';/);
  expect(door.text).not.toContain("unsafe");
});
