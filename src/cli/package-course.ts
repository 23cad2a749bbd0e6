/**
 * `npm run package:course [-- folder]`: the built page as course packages in `dist/course`, one for each standard, with every lesson of
 * the kit in English. Other choices are made on the page: Study, *Make a course package*.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import type { Course } from "../lesson/library/lesson-course.ts";
import { type Kit, packageFiles, STANDARDS } from "../lms/package/course-package.ts";
import { zipOf } from "../lms/package/zip.ts";
import { PASS_SHARE } from "../lms/record-adapter.ts";
import { present } from "../sim/checked/present.ts";
import { describeFault } from "../sim/faults.ts";
import { readLessonFiles, SOURCE_LANGUAGE } from "./lesson-files.ts";

const [folder = "dist/folder"] = process.argv.slice(2);
const OUT = "dist/course";

const words = (area: string) =>
  JSON.parse(readFileSync(`src/i18n/en/${area}.json`, "utf8")) as Record<string, string>;

function builtKit(version: string): Kit {
  const paths = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join("/"));
  return { version, paths, read: async (path) => new Uint8Array(readFileSync(join(folder, path))) };
}

function lessonIds(): string[] {
  const { lessons, faults } = readLessonFiles("lessons");
  if (faults.length > 0) throw new Error(faults.map(describeFault).join("\n"));
  return [...present(lessons[SOURCE_LANGUAGE])].sort((a, b) => a.number - b.number).map(({ id }) => id);
}

async function writePackages(): Promise<void> {
  const { name, version } = JSON.parse(readFileSync("package.json", "utf8")) as Record<
    "name" | "version",
    string
  >;
  const title = present(words("home")["home.title"]);
  const description = `${words("home")["home.what"]} ${words("cautions")["caution.short"]}`;
  const course: Course = {
    version: 1,
    lessons: lessonIds(),
    textVersion: "plain",
    passMark: PASS_SHARE,
    completedWhen: "finished",
    own: [],
  };
  const item = { id: "lessons", title, description, course };
  mkdirSync(OUT, { recursive: true });
  for (const standard of STANDARDS) {
    const plan = {
      id: name,
      title,
      description,
      language: "en",
      passMark: PASS_SHARE,
      standard,
      items: [item],
    };
    let files = 0;
    const bytes = Buffer.concat(
      await zipOf(packageFiles(plan, builtKit(version)), (done) => {
        files = done;
      }),
    );
    const out = join(OUT, `${name}-${version}-${standard}.zip`);
    writeFileSync(out, bytes);
    process.stdout.write(`${out}: ${files} files, ${Math.round(bytes.length / 1024)} kB\n`);
  }
}

if (existsSync(join(folder, "index.html"))) await writePackages();
else {
  process.stderr.write(`no built page in ${folder}: run npm run build first\n`);
  process.exitCode = 1;
}
