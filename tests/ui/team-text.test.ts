import { expect, test } from "vitest";
import { openTeamText } from "../../src/ui/take-away/team-text.ts";

const KEY = "lungward.teamText";

function memory(kept: Record<string, string> = {}) {
  const items = new Map(Object.entries(kept));
  const storage = {
    getItem: (key: string) => items.get(key) ?? null,
    setItem: (key: string, value: string) => void items.set(key, value),
    removeItem: (key: string) => void items.delete(key),
  } as unknown as Storage;
  return { items, storage: () => storage };
}

test("the team's text is kept for each language, and found by the next page", () => {
  const { storage } = memory();
  const text = openTeamText(storage);
  text.write("en", "Call the ward.");
  text.write("de", "Rufen Sie die Station an.");
  const next = openTeamText(storage);
  expect(["en", "de", "fr"].map(next.of)).toEqual(["Call the ward.", "Rufen Sie die Station an.", ""]);
});

test("what another tab wrote in another language stays", () => {
  const { storage } = memory();
  const [one, two] = [openTeamText(storage), openTeamText(storage)];
  one.write("en", "Call the ward.");
  two.write("es", "Llama a la planta.");
  expect(openTeamText(storage).of("en")).toBe("Call the ward.");
});

test("an emptied text goes, and the key with the last", () => {
  const { items, storage } = memory();
  const text = openTeamText(storage);
  text.write("en", "Call the ward.");
  text.write("fr", "Appelez le service.");
  text.write("en", "");
  expect(JSON.parse(items.get(KEY)!)).toEqual({ fr: "Appelez le service." });
  text.write("fr", "");
  expect(items.has(KEY)).toBe(false);
});

test("what is no text of ours is passed over, and nothing is longer than its field", () => {
  for (const found of ["{", "null", '"en"', "[1]", '{"en":3}'])
    expect(openTeamText(memory({ [KEY]: found }).storage).of("en"), found).toBe("");
  const long = memory({ [KEY]: JSON.stringify({ en: "a".repeat(900), de: 1 }) });
  expect(openTeamText(long.storage).of("en")).toHaveLength(500);
});

test("where nothing can be kept the text lasts as long as the page", () => {
  const text = openTeamText(() => {
    throw new DOMException("denied", "SecurityError");
  });
  text.write("en", "Call the ward.");
  text.write("de", "Rufen Sie die Station an.");
  expect([text.of("en"), text.of("de")]).toEqual(["Call the ward.", "Rufen Sie die Station an."]);
});
