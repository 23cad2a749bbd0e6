import { expect, test } from "vitest";
import de from "../../src/i18n/de/interface.json" with { type: "json" };
import en from "../../src/i18n/en/interface.json" with { type: "json" };
import es from "../../src/i18n/es/interface.json" with { type: "json" };
import fr from "../../src/i18n/fr/interface.json" with { type: "json" };

// The lungs' plates give the loss law's shares; the particles under the probe are a plane's, and differ.
test.each([
  ["en", en, "in the plane"],
  ["de", de, "in der Ebene"],
  ["es", es, "en el plano"],
  ["fr", fr, "dans le plan"],
])("%s: what the probe reads from the picture is said to be the plane's", (_, words, plane) => {
  expect(words["probe.speed"]).toContain(plane);
  expect(words["probe.from"]).toContain(plane);
});
