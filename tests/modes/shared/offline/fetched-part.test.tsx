// @vitest-environment happy-dom
import { render } from "preact";
import { act } from "preact/test-utils";
import { afterEach, expect, test, vi } from "vitest";
import { EraseButton } from "../../../../src/modes/home/erase/erase-button.tsx";
import { PackageDoor } from "../../../../src/modes/study/package/package-door.tsx";
import type { StudyProps } from "../../../../src/modes/study/study-props.ts";

const { network } = vi.hoisted(() => ({ network: { down: true } }));
const unlessDown = (): void => {
  if (network.down) throw new TypeError("Failed to fetch dynamically imported module");
};
vi.mock("../../../../src/modes/study/package/package-page.tsx", () => ({
  get PackagePage() {
    unlessDown();
    return () => "the page";
  },
}));
vi.mock("../../../../src/modes/home/erase/erase-dialog.tsx", () => ({
  get EraseDialog() {
    unlessDown();
    return () => "the dialog";
  },
}));

const later = () => act(() => new Promise<void>((done) => setTimeout(done, 20)));
afterEach(() => render(null, document.body));

test.each([
  [true, "This part could not be fetched."],
  [false, "the page"],
])("the page of course packages, where the network is down: %s", async (down, shown) => {
  network.down = down;
  await act(() => render(<PackageDoor {...({} as StudyProps)} />, document.body));
  await later();
  expect(document.body.textContent).toContain(shown);
});

test.each([
  [true, "This part could not be fetched."],
  [false, "the dialog"],
])("the list of what to erase, where the network is down: %s", async (down, shown) => {
  network.down = down;
  await act(() => render(<EraseButton />, document.body));
  document.querySelector("button")!.click();
  await later();
  expect(document.body.textContent).toContain(shown);
});
