// @vitest-environment happy-dom
/** What describes a package, against the rules of its standard; and that each rule is one that can be broken. */
import { describe, expect, test } from "vitest";
import { readStructure } from "./course-systems/cmi5-structure.ts";
import { readManifest } from "./course-systems/scorm-manifest.ts";
import { packaged } from "./course-systems/three-lessons.ts";

type Slip = readonly [from: string | RegExp, to: string, allowed: RegExp];

const OF_BOTH: readonly Slip[] = [
  [/<schemaversion>.*</, "<schemaversion>1.1<", /allowed: (1\.2|2004)/],
  [/ {2}<metadata>.*<\/metadata>\n/s, "", /metadata/],
  ['default="course"', 'default="other"', /a default/],
  ['identifierref="kit"', 'identifierref="none"', /a dependency/],
  [/identifierref="page-[^"]*"/, 'identifierref="none"', /an item that opens/],
  [/identifier="item-[^"]*"/, 'identifier="kit"', /unique/],
  [/identifier="item-[^"]*"/, 'identifier="1 item"', /a name/],
  ['href="assets/index-1.js"', 'href="assets/gone.js"', /a file of the package/],
  [/<title>.*?<\/title>/, "", /the title first/],
  [/<title>.*?<\/title>/, `<title>${"x".repeat(201)}</title>`, /200 characters/],
  ['type="webcontent"', 'type="page"', /webcontent/],
];

const SLIPS = {
  scorm12: [
    ...OF_BOTH,
    ["adlcp:scormtype", "adlcp:scormType", /scormtype/],
    ["imscp_rootv1p1p2", "imscp_v1p1", /the root/],
  ],
  scorm2004: [
    ...OF_BOTH,
    ["adlcp:scormType", "adlcp:scormtype", /scormType/],
    [/ *<imsss:sequencing>.*<\/imsss:sequencing>\n/s, "", /after the items/],
  ],
} satisfies Record<string, readonly Slip[]>;

describe.each(["scorm12", "scorm2004"] as const)("the manifest by %s", (standard) => {
  test("keeps the rules, and points at no schema file that the package does not hold", async () => {
    const files = await packaged(standard, true);
    const text = files["imsmanifest.xml"]!;
    expect(readManifest(text, standard, Object.keys(files)).length).toBe(3);
    expect(text).not.toContain("schemaLocation");
  });

  test.each(SLIPS[standard])("with %s as %s it is refused", async (from, to, allowed) => {
    const files = await packaged(standard, true);
    const slipped = files["imsmanifest.xml"]!.replace(from, to);
    expect(slipped).not.toBe(files["imsmanifest.xml"]);
    expect(() => readManifest(slipped, standard, Object.keys(files))).toThrow(allowed);
  });
});

test.each<Slip>([
  ['moveOn="CompletedOrPassed"', 'moveOn="Done"', /moveOn/],
  ['masteryScore="0.6"', 'masteryScore="60"', /masteryScore/],
  [/<url>.*?<\/url>/, "<url>/lesson-1.html</url>", /a relative url/],
  [/<url>.*?<\/url>/, "", /title,description,url|title, description, url/],
  [/<description>.*?<\/description>/, "", /title, description/],
  [/lang="[^"]*"/, 'lang="English words"', /a language/],
  [/<au id="[^"]*"/, '<au id="one two"', /an IRI/],
  ["v1/CourseStructure.xsd", "v2/CourseStructure.xsd", /root/],
])("the course structure by cmi5 with %s as %s is refused", async (from, to, allowed) => {
  const text = (await packaged("cmi5", true))["cmi5.xml"]!;
  expect(readStructure(text).units.length).toBe(3);
  const slipped = text.replace(from, to);
  expect(slipped).not.toBe(text);
  expect(() => readStructure(slipped)).toThrow(allowed);
});
