/** The line between a talk's windows in a real browser: rooms apart, other pages shut out. */
import { expect, type Page } from "@playwright/test";
import { test } from "./resting-field.ts";

test.setTimeout(180_000);

const LESSON = "?mode=lecture&lesson=03-pathways&step=1";
const at = (room: Page, step: number) =>
  expect(room.locator(".room-place")).toContainText(`${step} `, { timeout: 60_000 });
const roomOf = (page: Page) =>
  page.evaluate(() => JSON.parse(sessionStorage.getItem("lungward.lecture.room") ?? "null") as string | null);

async function openSpeaker(room: Page): Promise<Page> {
  const opened = room.context().waitForEvent("page");
  await room.keyboard.press("s");
  const speaker = await opened;
  await expect(speaker.locator(".speaker-head")).toContainText("Step 1 of", { timeout: 60_000 });
  return speaker;
}

/** Counts what a room says on the channel of its own in a second. */
const saidInASecond = (page: Page, id: string | null) =>
  page.evaluate(
    (room) =>
      new Promise<number>((done) => {
        let count = 0;
        const channel = new BroadcastChannel(`lungward.lecture.${room}`);
        channel.onmessage = () => count++;
        setTimeout(() => {
          channel.close();
          done(count);
        }, 1000);
      }),
    id,
  );

test("two rooms in one browser do not know each other: each clicker drives its own, and none talks by itself", async ({
  context,
  page: one,
}) => {
  const two = await context.newPage();
  for (const room of [one, two]) {
    await room.goto(LESSON);
    await at(room, 1);
  }
  const [first, second] = [await roomOf(one), await roomOf(two)];
  expect(first).toMatch(/^[0-9a-f]{32}$/);
  expect(second).not.toBe(first);
  expect(await saidInASecond(two, first)).toBe(0);
  await one.bringToFront();
  const speaker = await openSpeaker(one);
  await speaker.keyboard.press("PageDown");
  await at(one, 2);
  await at(two, 1);
  await two.bringToFront();
  await two.keyboard.press("PageDown");
  await two.keyboard.press("PageDown");
  await at(two, 3);
  await expect(speaker.locator(".speaker-head")).toContainText("Step 2 of");
});

test("10,000 junk messages leave the clicker alive", async ({ page: room }) => {
  await room.goto(LESSON);
  await at(room, 1);
  const speaker = await openSpeaker(room);
  const id = await roomOf(room);
  await speaker.evaluate((name) => {
    const channel = new BroadcastChannel(`lungward.lecture.${name}`);
    const kinds = ["next", "go", "blank", "point", "aside", "hold", "talk", "__proto__"];
    for (let n = 0; n < 10_000; n++) {
      const event = { kind: kinds[n % 8], at: [null, 1e9, "x", [9]][n % 4], to: {}, state: [] };
      const message = [{ kind: "event", event }, { kind: "event" }, null, { kind: "talk", talk: 3 }][n % 4];
      channel.postMessage(n % 3 ? { lungwardChannel: name, version: 1, id: `junk.${n}`, message } : message);
    }
    channel.close();
  }, id);
  await at(room, 1);
  await speaker.keyboard.press("PageDown");
  await at(room, 2);
  await expect(speaker.locator(".speaker-head")).toContainText("Step 2 of");
});

test("a page of another origin that opens the room and knows its number can neither steer nor listen", async ({
  context,
  page: foreign,
  baseURL,
}) => {
  // A page that this test serves under another name.
  await foreign.route("http://elsewhere.test/", (route) =>
    route.fulfill({ contentType: "text/html", body: "<title>elsewhere</title>" }),
  );
  await foreign.goto("http://elsewhere.test/");
  const opened = context.waitForEvent("page");
  await foreign.evaluate((address) => {
    const state = window as unknown as { room: Window | null; heard: unknown[] };
    state.heard = [];
    addEventListener("message", ({ data }) => state.heard.push(data));
    state.room = open(address);
  }, `${baseURL}${LESSON}`);
  const room = await opened;
  await at(room, 1);
  const id = await roomOf(room);
  await foreign.evaluate((name) => {
    const { room: other } = window as unknown as { room: Window };
    for (const message of [{ kind: "hello" }, { kind: "event", event: { kind: "next" } }, { kind: "pause" }])
      other.postMessage({ lungwardChannel: name, version: 1, id: `foreign.${message.kind}`, message }, "*");
  }, id);
  await room.keyboard.press("b");
  await room.keyboard.press("b");
  await room.waitForTimeout(1000);
  await at(room, 1);
  expect(await foreign.evaluate(() => (window as unknown as { heard: unknown[] }).heard)).toEqual([]);
});
