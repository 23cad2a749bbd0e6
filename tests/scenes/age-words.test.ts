import { afterAll, expect, it } from "vitest";
import { setLanguage, t } from "../../src/i18n/index.ts";
import { ageWords } from "../../src/scenes/drawing/age-words.ts";

afterAll(() => setLanguage("en"));

it.each([
  ["en", "6 months", "1 year", "5 years"],
  ["de", "6 Monate", "1 Jahr", "5 Jahre"],
  ["fr", "6 mois", "1 an", "5 ans"],
  ["es", "6 meses", "1 año", "5 años"],
])("in %s a body of half a year is no body of one", async (language, ...words) => {
  await setLanguage(language);
  expect([0.5, 1, 5].map((years) => ageWords(t, years))).toEqual(words);
});
