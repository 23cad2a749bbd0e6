/** What a kiosk's visit shows behind its screens. */
import { signal } from "@preact/signals";
import { expect, it } from "vitest";
import type { Chain } from "../../../src/chain/contract.ts";
import { kioskVisit } from "../../../src/modes/kiosk/kiosk-visit.ts";
import type { AddressSync } from "../../../src/modes/shared/address/address-sync.ts";
import { createSession } from "../../../src/modes/shared/session.ts";
import { setBeside, setStage } from "../../../src/state/edit.ts";
import { START } from "../../../src/state/scene-state.ts";

it("topics stand beside the body alone, the invitation's or, after a lesson, the first; the start has its line again", () => {
  const chain = { scene: signal(START), circulations: signal([null]), solving: signal(false) };
  const session = createSession(chain as unknown as Chain);
  const visit = kioskVisit({ session, address: { go() {} } as unknown as AddressSync });
  const { scene } = session;
  session.show(setStage("lateral-tunnel")(START));
  visit.openTopics();
  expect([scene.value.request.stage, scene.value.view.gradeLine]).toEqual(["lateral-tunnel", false]);
  visit.openLesson("a-lesson");
  session.show(setBeside([{ stage: "glenn" }])(START));
  visit.openTopics();
  expect(scene.value.beside).toEqual([]);
  expect(scene.value.view).toMatchObject({ gradeLine: false, labels: false });
  visit.leave();
  expect(scene.value).toEqual(START);
});
