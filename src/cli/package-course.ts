/**
 * `npm run package:course [-- folder]`: the built page as two course packages in `dist/course`, SCORM 1.2 (IMS Content Packaging
 * 1.1.2) and cmi5. Both contain the same page, which finds out at its start how it was launched.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { type Zippable, zipSync } from "fflate";
import { courseStructure, scormManifest } from "../lms/manifests.ts";
import { present } from "../sim/checked/present.ts";

const [folder = "dist/folder"] = process.argv.slice(2);
const OUT = "dist/course";

/** A service worker is of no use in a course system's frame, nor is the page for phones without its server. */
const LEFT_OUT = /^(phone\.html|sw\.js|workbox-.*\.js|manifest\.webmanifest)$/;
/** A fixed date, so that equal input gives an equal package. */
const STAMP = new Date("2000-01-01T00:00:00Z");

/** A cmi5 record store may be on another host: only this page may connect to one. */
const reachRecordStore = (html: string): string =>
  html.replace("connect-src 'self'", "connect-src 'self' https:");

if (!existsSync(join(folder, "index.html"))) {
  process.stderr.write(`no built page in ${folder}: run npm run build first\n`);
  process.exitCode = 1;
} else {
  const { name, version } = JSON.parse(readFileSync("package.json", "utf8")) as {
    name: string;
    version: string;
  };
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join("/"))
    .filter((path) => !LEFT_OUT.test(path))
    .sort();
  const words = (area: string) =>
    JSON.parse(readFileSync(`src/i18n/en/${area}.json`, "utf8")) as Record<string, string>;
  const course = {
    id: name,
    version,
    title: present(words("home")["home.title"]),
    description: `${words("home")["home.what"]} ${words("cautions")["caution.short"]}`,
    language: "en",
    launch: "index.html?mode=study",
    files,
  };
  const packages = {
    "scorm12.zip": { manifest: { "imsmanifest.xml": scormManifest(course) }, page: (html: string) => html },
    "cmi5.zip": { manifest: { "cmi5.xml": courseStructure(course) }, page: reachRecordStore },
  };
  mkdirSync(OUT, { recursive: true });
  for (const [ending, { manifest, page }] of Object.entries(packages)) {
    const zip: Zippable = {};
    for (const [path, text] of Object.entries(manifest)) zip[path] = [Buffer.from(text), { mtime: STAMP }];
    for (const path of files) {
      const bytes = readFileSync(join(folder, path));
      zip[path] = [path.endsWith(".html") ? Buffer.from(page(bytes.toString())) : bytes, { mtime: STAMP }];
    }
    const bytes = zipSync(zip, { level: 9 });
    const out = join(OUT, `${name}-${version}-${ending}`);
    writeFileSync(out, bytes);
    process.stdout.write(`${out}: ${Object.keys(zip).length} files, ${Math.round(bytes.length / 1024)} kB\n`);
  }
}
