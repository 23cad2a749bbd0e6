/**
 * `npm run package:course [-- folder out.zip]`: the built page as a course package. One zip serves both standards: SCORM 1.2 by
 * `imsmanifest.xml` (IMS Content Packaging 1.1.2) and cmi5 by `cmi5.xml`; the page finds out at its start which of them launched it.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { type Zippable, zipSync } from "fflate";
import { courseStructure, scormManifest } from "../record/manifests.ts";

const [folder = "dist/folder", out = "dist/lungward-course.zip"] = process.argv.slice(2);

/** A service worker has no place within a course system's frame. */
const LEFT_OUT = /^(sw\.js|workbox-.*\.js|manifest\.webmanifest)$/;
/** Equal input, equal package. */
const STAMP = new Date("2000-01-01T00:00:00Z");

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
    JSON.parse(readFileSync(`src/words/en/${area}.json`, "utf8")) as Record<string, string>;
  const course = {
    id: name,
    version,
    title: words("home")["home.title"]!,
    description: `${words("home")["home.what"]} ${words("cautions")["caution.short"]}`,
    language: "en",
    launch: "index.html?setting=study",
    files,
  };
  const zip: Zippable = {};
  for (const path of files) zip[path] = [readFileSync(join(folder, path)), { mtime: STAMP }];
  zip["imsmanifest.xml"] = [Buffer.from(scormManifest(course)), { mtime: STAMP }];
  zip["cmi5.xml"] = [Buffer.from(courseStructure(course)), { mtime: STAMP }];
  const bytes = zipSync(zip, { level: 9 });
  writeFileSync(out, bytes);
  process.stdout.write(`${out}: ${files.length + 2} files, ${Math.round(bytes.length / 1024)} kB\n`);
}
