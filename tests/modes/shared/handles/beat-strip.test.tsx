// @vitest-environment happy-dom
import { signal } from "@preact/signals";
import { render } from "preact";
import { act } from "preact/test-utils";
import { afterEach, expect, it } from "vitest";
import { BeatStrip } from "../../../../src/modes/shared/handles/beat-strip.tsx";
import type { Context } from "../../../../src/modes/shared/mode.ts";
import { START } from "../../../../src/state/scene-state.ts";

const host = document.createElement("div");
document.body.append(host);
afterEach(() => render(null, host));

/** The speed that the strip shows as chosen. */
function chosenAt(playSpeed: number): string | undefined {
  const scene = signal({ ...START, view: { ...START.view, playSpeed } });
  const context = { session: { scene, chain: { circulations: signal([]) } } } as unknown as Context;
  act(() => render(<BeatStrip context={context} />, host));
  return host.querySelector<HTMLInputElement>("input:checked")?.value;
}

it("shows the speed that is set, and none where that is not among its own", () => {
  expect(chosenAt(0.2)).toBe("0.2");
  expect(chosenAt(0.3)).toBeUndefined();
});
