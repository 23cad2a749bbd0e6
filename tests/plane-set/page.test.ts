import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readLines, STORED } from "../../scripts/plane-set/store.ts";
import { tableOf } from "../../scripts/plane-set/table.ts";

test("the field's page has the table of the stored lines", () => {
  expect(readFileSync("docs/model-field.md", "utf8")).toContain(tableOf(readLines(STORED)));
});
