// @vitest-environment happy-dom
import { render } from "preact";
import { expect, test } from "vitest";
import { t } from "../../src/i18n/index.ts";
import type { Stage } from "../../src/sim/parameters/request.ts";
import { EnergyTable } from "../../src/ui/energy-table.tsx";
import { ADULT, answer } from "../sim/circulation/requests.ts";

function rows(stage: Stage): readonly string[] {
  const host = document.createElement("div");
  render(<EnergyTable circulation={answer(stage, ADULT)} />, host);
  return [...host.querySelectorAll("tbody th")].map((row) => row.textContent ?? "");
}

test("beside a right heart the energy table says which heart's chambers and valves it means", () => {
  const [two, one] = [rows("two-ventricle"), rows("extracardiac")];
  for (const part of ["Ventricle", "Atrium", "AtrioventricularValve", "SemilunarValve"]) {
    const alone = t(`energy.${part.charAt(0).toLowerCase()}${part.slice(1)}`);
    expect(two).toContain(t(`energy.left${part}`));
    expect(two).toContain(t(`energy.right${part}`));
    expect(two).not.toContain(alone);
    expect(one).toContain(alone);
  }
});
