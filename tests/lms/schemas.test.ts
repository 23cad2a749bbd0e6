// @vitest-environment happy-dom
/** SCORM's manifests against the schemas that its publishers wrote; and that these see a slip. */
import { expect, test } from "vitest";
import { schemaFaults } from "./course-systems/scorm-schemas.ts";
import { packaged } from "./course-systems/three-lessons.ts";

const SLIPS = {
  scorm12: [
    [/<title>.*?<\/title>/s, "<name>One</name>", /title/],
    ['adlcp:scormtype="sco"', 'adlcp:scormType="sco"', /scormType/],
  ],
  scorm2004: [
    [/<title>.*?<\/title>/s, "<name>One</name>", /title/],
    ["imsss:controlMode", "imsss:mode", /controlMode/],
  ],
} as const;

test.each(["scorm12", "scorm2004"] as const)(
  "the manifest by %s keeps the published schemas",
  async (standard) => {
    const manifest = async (apart: boolean) => (await packaged(standard, apart))["imsmanifest.xml"]!;
    const text = await manifest(true);
    expect(await schemaFaults(text, standard)).toEqual([]);
    expect(await schemaFaults(await manifest(false), standard)).toEqual([]);
    for (const [from, to, told] of SLIPS[standard])
      expect((await schemaFaults(text.replace(from, to), standard)).join(" ")).toMatch(told);
  },
);
