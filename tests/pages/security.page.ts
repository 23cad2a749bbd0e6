/** Both builds keep to themselves: policy, hosts, cookies, what is kept; and no lesson text can run or load. */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, type Page } from "@playwright/test";
import { readSources } from "../house/sources.ts";
import { expectAccessible, figure, paste } from "./page.ts";
import { test } from "./resting-field.ts";

test.setTimeout(240_000);
test.use({ serviceWorkers: "allow", reuseContext: false });

const BUILDS = {
  "the served folder": "",
  "the single file": pathToFileURL(resolve("dist/single/index.html")).href,
};
/** `lungward.<name>`, as docs/deploy.md tells readers. */
const reported = [...readFileSync("docs/deploy.md", "utf8").matchAll(/`(lungward\.[\w.]+)`/g)].map(
  (match) => match[1]!,
);

/** Every address asked for that is neither this file's, this server's, nor made by the page itself. */
function watchRequests(page: Page): string[] {
  const strange: string[] = [];
  const served = new URL(test.info().project.use.baseURL!).host;
  page.context().on("request", (request) => {
    const { protocol, host } = new URL(request.url());
    const own = protocol === "file:" || protocol === "data:" || protocol === "blob:";
    if (!own && host !== served) strange.push(request.url());
  });
  return strange;
}

async function expectStrictPolicy(page: Page): Promise<void> {
  const policy = (await page.locator("meta[http-equiv=Content-Security-Policy]").getAttribute("content"))!;
  expect(policy).toContain("default-src 'none'");
  const scripts = /script-src ([^;]*)/.exec(policy)![1]!;
  expect(scripts.split(" ")).not.toContain("'unsafe-eval'");
  expect(scripts).not.toContain("'unsafe-inline'");
  expect(policy).not.toMatch(/https?:|\*/);
}

for (const [build, base] of Object.entries(BUILDS)) {
  test(`U12 U30 ${build} carries its policy, asks no other host, sets no cookie, keeps only what the docs list`, async ({
    page,
  }) => {
    const strange = watchRequests(page);
    const blocked: string[] = [];
    page.on("console", (message) => {
      if (/Content Security Policy/i.test(message.text())) blocked.push(message.text());
    });
    await page.goto(`${base}?mode=bench`);
    await figure(page, "pressureDrop");
    await expectStrictPolicy(page);

    await page.keyboard.press("t");
    await page.goto(`${base}?mode=study&lesson=04-energy-loss`);
    await expect(page.locator(".lesson-words h2")).toBeVisible({ timeout: 60_000 });
    await page.goto(`${base}?mode=author&view=text`);
    await page.locator("textarea").fill("A text that is no lesson.");
    await page.goto(`${base}?mode=lecture&lesson=04-energy-loss`);
    await page.waitForTimeout(2000);
    await page.goto(`${base}?mode=kiosk`);
    await expect(page.locator(".kiosk-welcome")).toBeVisible({ timeout: 60_000 });
    const kept = await page.evaluate(async () => ({
      keys: [...Object.keys(localStorage), ...Object.keys(sessionStorage)],
      cookies: document.cookie,
      databases: (await indexedDB.databases()).map(({ name }) => name),
    }));
    expect(kept.keys).toContain("lungward.theme");
    expect(kept.keys.filter((key) => !reported.includes(key))).toEqual([]);
    expect(kept).toMatchObject({ cookies: "", databases: ["lungward-own"] });
    expect(await page.context().cookies()).toEqual([]);
    expect(strange).toEqual([]);
    expect(blocked).toEqual([]);
  });
}

test("the docs' pages carry the same policy, show a live figure, search and have no violations; the notices name each package that is built in", async ({
  page,
  request,
}) => {
  const strange = watchRequests(page);
  const blocked: string[] = [];
  page.on("console", (message) => {
    if (/Content Security Policy/i.test(message.text())) blocked.push(message.text());
  });
  await page.goto("docs/index.html");
  await expectStrictPolicy(page);
  await expect(page.frameLocator("iframe").locator("[data-figure]").first()).toBeVisible({ timeout: 60_000 });
  await page.getByRole("searchbox").fill("lost graphics");
  await page.locator("#found a").filter({ hasText: "Faults tried" }).click();
  await expect(page).toHaveURL(/docs\/reliability\.html/);
  await expectStrictPolicy(page);
  await expectAccessible(page);
  expect(strange).toEqual([]);
  expect(blocked).toEqual([]);
  const notices = await (await request.get("third-party-notices.txt")).text();
  const { dependencies } = JSON.parse(readFileSync("package.json", "utf8")) as {
    dependencies: Record<string, string>;
  };
  const brought = new Set(
    readSources("src").flatMap(({ path, imports }) =>
      // Of the server for phones the page has only the line, which imports no package.
      path.startsWith("src/audience/")
        ? []
        : imports.flatMap(({ own, typeOnly, target }) => (own || typeOnly ? [] : [target])),
    ),
  );
  const silent = Object.entries(dependencies).flatMap(([name, version]) =>
    brought.has(name) && !notices.includes(`${name} ${version}`) ? [name] : [],
  );
  expect(silent).toEqual([]);
  const [title, owner] = [/^\S+ \d+\.\d+\.\d+ \(/, /copyright/i];
  const packages = notices.split(/\n-{78}\n\n/);
  expect(packages.filter((each) => !title.test(each) || !owner.test(each))).toEqual([]);
  expect(await (await request.get("LICENSE.txt")).text()).toBe(readFileSync("LICENSE", "utf8"));
  // What the page does not run needs no notice: the file is not a list of all that is installed.
  expect(notices).not.toContain("typescript");
});

test("the policy stops inline scripts and other hosts", async ({ page }) => {
  await page.goto("?mode=author&view=text");
  await expect(page.locator("textarea")).toBeVisible({ timeout: 60_000 });
  const tried = await page.evaluate(async () => {
    const stopped: string[] = [];
    document.addEventListener("securitypolicyviolation", (event) => stopped.push(event.effectiveDirective));
    const script = document.createElement("script");
    script.textContent = "document.body.dataset.ran = 'inline'";
    document.body.append(script);
    const picture = new Image();
    const pictureLoads = new Promise((done) => {
      picture.onload = () => done(true);
      picture.onerror = () => done(false);
    });
    picture.src = "https://example.org/x.png";
    return {
      inline: document.body.dataset.ran ?? null,
      fetched: await fetch("https://example.org/").then(
        () => true,
        () => false,
      ),
      picture: await pictureLoads,
      stopped: stopped.sort(),
    };
  });
  // The browser itself says that it was the policy, not a missing network, that stopped each.
  expect(tried).toEqual({
    inline: null,
    fetched: false,
    picture: false,
    stopped: ["connect-src", "img-src", "script-src-elem"],
  });
});

/** Known ways to smuggle a script into markup, by kind: common practice among testers of sanitisers, no source. */
const VECTORS = [
  "<script>window.ran=1</script>",
  "<SCRIPT SRC=https://example.org/x.js></SCRIPT>",
  "<<script>window.ran=1//<</script>",
  "<scr<script>ipt>window.ran=1</scr</script>ipt>",
  "<img src=x onerror=window.ran=1>",
  '<img src="x` `<script>window.ran=1</script>"` `>',
  "<img src=javascript:window.ran=1>",
  "<img/src/onerror=window.ran=1>",
  "<svg onload=window.ran=1>",
  "<svg><script>window.ran=1</script></svg>",
  "<svg><animate onbegin=window.ran=1 attributeName=x dur=1s>",
  "<svg><use href='data:image/svg+xml;base64,PHN2Zy8+#x'/></svg>",
  "<math><mtext><table><mglyph><style><img src=x onerror=window.ran=1>",
  "<math><annotation-xml encoding='text/html'><img src=x onerror=window.ran=1></annotation-xml></math>",
  "<iframe src=javascript:window.ran=1></iframe>",
  "<iframe srcdoc='<script>parent.ran=1</script>'></iframe>",
  "<object data=javascript:window.ran=1></object>",
  "<embed src=javascript:window.ran=1>",
  "<video><source onerror=window.ran=1></video>",
  "<audio src=x onerror=window.ran=1></audio>",
  "<details open ontoggle=window.ran=1>x</details>",
  "<input autofocus onfocus=window.ran=1>",
  "<body onload=window.ran=1>",
  "<marquee onstart=window.ran=1>x</marquee>",
  "<form action=javascript:window.ran=1><button>x</button></form>",
  "<a href=javascript:window.ran=1>x</a>",
  "<a href='java&#10;script:window.ran=1'>x</a>",
  "<base href=https://example.org/>",
  "<meta http-equiv=refresh content='0;url=https://example.org/'>",
  "<link rel=stylesheet href=https://example.org/x.css>",
  "<style>@import 'https://example.org/x.css';</style>",
  "<div style='background:url(https://example.org/x.png)'>x</div>",
  "<template><script>window.ran=1</script></template>",
  "<noscript><p title='</noscript><img src=x onerror=window.ran=1>'></noscript>",
  "<textarea></textarea><img src=x onerror=window.ran=1>",
  "<!--><img src=x onerror=window.ran=1>-->",
  "<![CDATA[<img src=x onerror=window.ran=1>]]>",
  "[x](javascript:window.ran=1)",
  "[x](data:text/html,<script>window.ran=1</script>)",
  "[x](JaVaScRiPt:window.ran=1)",
  "![x](https://example.org/x.png)",
  "![x](javascript:window.ran=1)",
  "<javascript:window.ran=1>",
  "<https://example.org/>",
  "https://example.org/bare",
  "[x]: javascript:window.ran=1",
  "\\u003cscript>window.ran=1\\u003c/script>",
  "&lt;script&gt;window.ran=1&lt;/script&gt;",
  "$\\href{javascript:window.ran=1}{x}$",
  "$\\url{javascript:window.ran=1}$",
  "$\\includegraphics{https://example.org/x.png}$",
  "$\\htmlClass{x}{y}\\htmlData{a=b}{y}$",
  "$\\htmlStyle{background:url(https://example.org/x.png)}{y}$",
  "$\\text{<img src=x onerror=window.ran=1>}$",
  "{{ constructor.constructor | mmHg 1 }}",
  "{{ __proto__.polluted | mmHg 1 }}",
  "[x]{claim: constructor rises from previous}",
  "[[<img src=x onerror=window.ran=1>]]",
];

/** Links, pictures, formulas, names: refused as faults, which would keep the rest from being shown. */
const REFUSED = /^!?[{[$]/;

test("no script-injection vector in a lesson's words, titles or formulas runs, loads or makes markup", async ({
  page,
}) => {
  await page.goto("?mode=author&view=text");
  const text = page.locator("textarea");
  await expect(text).toBeVisible({ timeout: 60_000 });
  const strange = watchRequests(page);
  const thrown: string[] = [];
  page.on("pageerror", (error) => thrown.push(error.message));
  const preview = page.locator(".author-preview");
  const lessonOf = (words: readonly string[], title: string) =>
    `---\nid: hostile\nnumber: 90\ntitle: ${JSON.stringify(title)}\nreader: testers\naim: show nothing\nremember: ${JSON.stringify(title)}\nminutes: 1\n---\n\n## ${title} {#only}\n\n### plain\n${words.join("\n\n")}\n\n### technical\n${words.join("\n\n")}\n`;
  let shown = 0;
  // One at a time, since one that is refused as a fault would hide the others.
  for (const [index, vector] of VECTORS.entries()) {
    await paste(text, lessonOf([`Vector ${index}.`, vector], `Title ${index}`));
    await expect(page.locator(".author-faults")).toHaveAttribute("aria-busy", "false");
    if ((await preview.textContent())?.includes(`Vector ${index}.`)) shown++;
  }
  await paste(text, lessonOf(["Words."], "<img src=x onerror=window.ran=1>"));
  for (const telling of ["plain", "technical"]) {
    await page.evaluate((kept) => localStorage.setItem("lungward.telling", JSON.stringify(kept)), telling);
    await paste(
      text,
      lessonOf(
        VECTORS.filter((vector) => !REFUSED.test(vector)),
        "All of them",
      ),
    );
    await page.reload();
    await expect(preview.locator("h2")).toHaveText("All of them", { timeout: 60_000 });
    const made = await preview.evaluate((element) => ({
      elements: element.querySelectorAll(
        "script, img, image, iframe, object, embed, video, audio, form, link, meta, base, template, details, marquee, a[href^='javascript' i], a[href^='http' i], a[href^='data' i]",
      ).length,
      handlers: [...element.querySelectorAll("*")].filter((each) =>
        each.getAttributeNames().some((name) => name.startsWith("on")),
      ).length,
    }));
    expect(made).toEqual({ elements: 0, handlers: 0 });
  }
  // Most vectors are text to a reader: they must have reached the preview to have been tried.
  expect(shown).toBeGreaterThan(VECTORS.length / 2);
  expect(await page.evaluate(() => (window as unknown as { ran?: number }).ran)).toBeUndefined();
  expect(await page.evaluate(() => "polluted" in {})).toBe(false);
  expect(thrown).toEqual([]);
  expect(strange).toEqual([]);
});
