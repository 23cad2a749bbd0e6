// @vitest-environment happy-dom
import { render } from "preact";
import { expect, it } from "vitest";
import { RoomFigures } from "../../../../src/modes/lecture/room/room-figures.tsx";
import type { SceneName } from "../../../../src/state/scene-state.ts";

const label = (scene: SceneName, values: readonly number[]) => {
  const host = document.createElement("div");
  const figure = { name: "output", values, bands: [], unit: "L/min", digits: 1 };
  render(<RoomFigures scene={scene} figures={[figure]} earlier={null} />, host);
  return host.querySelector("dt")?.textContent ?? "";
};

it("says in which order the numbers of several states stand: that of the pictures, or of the curves where one state is pictured", () => {
  expect(label("circuit", [4.6, 5.4])).toContain("in the order of the pictures");
  for (const scene of ["exercise", "growth"] as const) {
    expect(label(scene, [9.1, 11.6])).toContain("in the order of the curves");
    expect(label(scene, [9.1])).not.toContain("order");
  }
});
