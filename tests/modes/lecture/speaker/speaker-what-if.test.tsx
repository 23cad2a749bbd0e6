// @vitest-environment happy-dom
import { signal } from "@preact/signals";
import { render } from "preact";
import { act } from "preact/test-utils";
import { afterEach, expect, it } from "vitest";
import type { Chain } from "../../../../src/chain/contract.ts";
import { SpeakerWhatIf } from "../../../../src/modes/lecture/speaker/speaker-what-if.tsx";
import {
  benchStop,
  type OwnStop,
  pictureStop,
  wordsStop,
} from "../../../../src/modes/lecture/talk/own-stops.ts";
import type { ScriptRun } from "../../../../src/modes/lecture/talk/script-run.ts";
import { createSession } from "../../../../src/modes/shared/session.ts";
import { solve } from "../../../../src/sim/circulation/solve.ts";
import { writeAddress } from "../../../../src/state/address.ts";
import { START } from "../../../../src/state/scene-state.ts";

const host = document.createElement("div");
document.body.append(host);
afterEach(() => render(null, host));

/** How many numbers stand in the what-if's part at a stop, the model being at another stop's scene. */
function numbersAt(stop: OwnStop): number {
  const chain = {
    scene: signal(START),
    circulations: signal([solve(START.request)]),
    solving: signal(false),
  };
  const session = createSession(chain as unknown as Chain);
  const script = { stop: signal(stop) } as unknown as ScriptRun;
  const nothing = () => {};
  act(() =>
    render(
      <SpeakerWhatIf {...{ session, script }} whatIf={null} onSend={nothing} onScript={nothing} />,
      host,
    ),
  );
  return host.querySelectorAll("[data-figure], input").length;
}

it("a stop without a scene shows no number and no control of another stop's scene", () => {
  expect(numbersAt(benchStop(writeAddress(START), "", null))).toBeGreaterThan(4);
  expect(numbersAt(pictureStop("a1.png", "Own page"))).toBe(0);
  expect(numbersAt(wordsStop("title", "Invented title"))).toBe(0);
  expect(host.textContent).toContain("no scene");
});
