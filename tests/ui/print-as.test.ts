// @vitest-environment happy-dom
import { expect, test, vi } from "vitest";
import { printAs } from "../../src/ui/take-away/print-as.ts";

test("the print has a name that says lesson, language and day, and the page its own again behind it", () => {
  document.title = "The page";
  const names: string[] = [];
  vi.stubGlobal("print", () => names.push(document.title));
  const done = vi.fn();
  printAs("Was ein Glas Wasser ändert", "de", done);
  expect(names).toEqual([expect.stringMatching(/^lungward-was-ein-glas-wasser-andert-de-\d{4}-\d\d-\d\d$/)]);
  expect(done).not.toHaveBeenCalled();
  dispatchEvent(new Event("afterprint"));
  expect(done).toHaveBeenCalledOnce();
  expect(document.title).toBe("The page");
  vi.unstubAllGlobals();
});
