import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, type Page, test } from "@playwright/test";
import { Window } from "happy-dom";
import { type Kit, packageFiles } from "../../src/lms/package/course-package.ts";
import { nameOf } from "../lms/cmi5-rules.ts";
import { cmi5System } from "../lms/course-systems/cmi5-system.ts";

/** Where the course system keeps its packages, and where it answers: another host. */
const COURSE = "/course-system";
const HOME = "https://course.example";
const BUILT = "dist/folder";

const kit: Kit = {
  version: "1",
  paths: readdirSync(BUILT, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => join(parentPath, name).slice(BUILT.length + 1)),
  read: async (path) => new Uint8Array(readFileSync(join(BUILT, path))),
};

/** The reader of the structure needs a document's parser, which Node has not. */
Object.assign(globalThis, { DOMParser: new Window().DOMParser });

const TYPES: Readonly<Record<string, string>> = {
  html: "text/html",
  js: "text/javascript",
  css: "text/css",
  wasm: "application/wasm",
};

async function servePackage(page: Page): Promise<string> {
  const course = {
    version: 1,
    lessons: ["04-energy-loss"],
    textVersion: "plain",
    passMark: 0.6,
    completedWhen: "finished",
    own: [],
  } as const;
  const words = { title: "One lesson", description: "Invented for a test" };
  const item = { id: "one", ...words, course: { ...course, lessons: [...course.lessons], own: [] } };
  const plan = {
    id: "test",
    ...words,
    language: "en",
    passMark: 0.6,
    standard: "cmi5",
    items: [item],
  } as const;
  const files = new Map<string, Uint8Array>();
  for await (const [path, bytes] of packageFiles(plan, kit)) files.set(path, bytes);
  await page.route(`**${COURSE}/**`, (route) => {
    const path = new URL(route.request().url()).pathname.slice(COURSE.length + 1);
    const body = files.get(path);
    const contentType = TYPES[path.split(".").pop()!];
    return body
      ? route.fulfill({ body: Buffer.from(body), ...(contentType ? { contentType } : {}) })
      : route.fulfill({ status: 404 });
  });
  return new TextDecoder().decode(files.get("cmi5.xml"));
}

test("a cmi5 package is launched, reports an answer to another host, and leads back where the course system wants", async ({
  page,
}) => {
  test.setTimeout(120_000);
  const errors: string[] = [];
  page.on("pageerror", ({ message }) => errors.push(message));
  const system = cmi5System(await servePackage(page), HOME);
  const { address, session } = system.launch(system.units[0]!, { returnURL: `${HOME}/back?id=1` });
  await page.route(`${HOME}/**`, async (route) => {
    const request = route.request();
    if (request.isNavigationRequest())
      return route.fulfill({ contentType: "text/html", body: "<title>The course</title>" });
    const body = request.postData();
    const answer = await session.answer(
      new Request(request.url(), {
        method: request.method(),
        headers: await request.allHeaders(),
        ...(body === null ? {} : { body }),
      }),
    );
    return route.fulfill({
      status: answer.status,
      headers: { ...Object.fromEntries(answer.headers), "access-control-allow-origin": "*" },
      body: await answer.text(),
    });
  });
  await page.goto(`${COURSE}/${address}`);
  await page.locator(".lesson-way-on").locator("button").last().click({ timeout: 30_000 });
  await page.locator(".question button.main").click();
  await expect(page.locator(".feedback")).toBeVisible({ timeout: 30_000 });
  await page.getByRole("link", { name: "Lessons" }).first().click();
  await page.getByRole("link", { name: "Back to your course" }).click();
  await expect(page).toHaveURL(`${HOME}/back?id=1`);
  expect(session.statements.map(nameOf)).toEqual(["initialized", "answered", "terminated"]);
  expect(session.refused).toEqual([]);
  expect(session.asked.filter((asked) => asked.startsWith("POST /token/")).length).toBe(1);
  // Come back to by the browser, the page knows that the visit is over.
  await page.goBack();
  const over = page.getByRole("alertdialog", { name: "Your course no longer records this" });
  await over.getByRole("link", { name: "Back to your course" }).click();
  await expect(page).toHaveURL(`${HOME}/back?id=1`);
  expect(session.refused).toEqual([]);
  expect(session.asked.filter((asked) => asked.startsWith("POST /token/")).length).toBe(1);
  expect(errors).toEqual([]);
});
