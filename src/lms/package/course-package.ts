/** A course package: the built kit with the course in its pages and the file that describes it. One way for the page and the command. */
import type { COURSE_ELEMENT, Course } from "../../lesson/library/lesson-course.ts";
import { replaced } from "../../sim/checked/replaced.ts";
import { courseStructure } from "./cmi5-structure.ts";
import type { Outline, OutlineItem } from "./package-outline.ts";
import { scorm12Manifest, scorm2004Manifest } from "./scorm-manifests.ts";

export const STANDARDS = ["scorm12", "scorm2004", "cmi5"] as const;
export type Standard = (typeof STANDARDS)[number];

/** The built kit, wherever it lies. */
export interface Kit {
  readonly version: string;
  readonly paths: readonly string[];
  read(path: string): Promise<Uint8Array>;
}

export interface PackagePlan extends Pick<Outline, "id" | "title" | "description" | "language" | "passMark"> {
  readonly standard: Standard;
  /** One: the whole course. More: each is opened and recorded by itself. */
  readonly items: readonly PlannedItem[];
}

interface PlannedItem extends Pick<OutlineItem, "id" | "title" | "description"> {
  readonly course: Course;
}

/** What a package does without: a service worker is of no use in a course system's frame, and a ward's own lessons stand in the course. */
const LEFT_OUT = /^(phone\.html|sw\.js|workbox-.*\.js|manifest\.webmanifest|files\.json|own\/.*)$/;
const PAGE = "index.html";
/** Where the page looks for its course; by its type it cannot be another. */
const ELEMENT: typeof COURSE_ELEMENT = "course";

const MANIFESTS: Readonly<Record<Standard, readonly [name: string, write: (outline: Outline) => string]>> = {
  scorm12: ["imsmanifest.xml", scorm12Manifest],
  scorm2004: ["imsmanifest.xml", scorm2004Manifest],
  cmi5: ["cmi5.xml", courseStructure],
};

export type PackageFile = readonly [path: string, bytes: Uint8Array];

/** How many files `packageFiles` gives. */
export const countFiles = ({ items }: PackagePlan, kit: Kit): number =>
  kitPaths(kit).length + items.length + 1;

const kitPaths = ({ paths }: Kit): readonly string[] =>
  paths.filter((path) => path !== PAGE && !LEFT_OUT.test(path)).sort();

export async function* packageFiles(plan: PackagePlan, kit: Kit): AsyncGenerator<PackageFile> {
  const items = plan.items.map(({ course, ...item }, index) => ({
    ...item,
    course,
    page: plan.items.length === 1 ? PAGE : `lesson-${index + 1}.html`,
    query: queryOf(plan, course),
  }));
  const paths = kitPaths(kit);
  const [name, write] = MANIFESTS[plan.standard];
  const files = [...items.map(({ page }) => page), ...paths];
  const encode = (text: string) => new TextEncoder().encode(text);
  yield [name, encode(write({ ...plan, version: kit.version, items, files }))];
  const html = new TextDecoder().decode(await kit.read(PAGE));
  for (const { page, course } of items) yield [page, encode(pageOf(html, course, plan.standard))];
  for (const path of paths) yield [path, await kit.read(path)];
}

/** A lesson alone opens at once. */
const queryOf = ({ language }: PackagePlan, { lessons }: Course): string =>
  `?mode=study&language=${language}${lessons.length === 1 ? `&lesson=${encodeURIComponent(lessons[0] ?? "")}` : ""}`;

const CHARSET = /<meta charset="?utf-8"? ?\/?>/i;

/** The kit's page with the course in it, as data that nothing runs. */
function pageOf(html: string, course: Course, standard: Standard): string {
  if (!CHARSET.test(html)) throw new Error(`${PAGE}: no character set`);
  const data = JSON.stringify(course).replace(/</g, "\\u003c");
  // A replacement text may hold signs that `replace` reads: a function's result is taken as it is.
  const page = html.replace(
    CHARSET,
    (charset) => `${charset}\n    <script type="application/json" id="${ELEMENT}">${data}</script>`,
  );
  // A cmi5 record store may be on another host: only this page may connect to one.
  return standard === "cmi5" ? replaced(page, "connect-src 'self'", "connect-src 'self' https:", PAGE) : page;
}
