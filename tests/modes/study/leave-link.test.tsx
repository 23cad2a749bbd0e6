// @vitest-environment happy-dom
import { render } from "preact";
import { act } from "preact/test-utils";
import { afterEach, expect, test } from "vitest";
import { LeaveLink } from "../../../src/modes/study/leave-link.tsx";

afterEach(() => {
  render(null, document.body);
  document.body.onclick = null;
});

test("the link ends the visit first, then leads to where the course system says", async () => {
  const done: string[] = [];
  let ended = () => {};
  const end = () =>
    new Promise<void>((leave) => {
      ended = leave;
    });
  await act(() => render(<LeaveLink wayBack="https://course.example/back" end={end} />, document.body));
  const link = document.querySelector("a")!;
  document.body.onclick = (event) => {
    done.push(event.defaultPrevented ? "waits" : link.href);
    event.preventDefault();
  };
  link.click();
  expect(done).toEqual(["waits"]);
  ended();
  await new Promise((rest) => setTimeout(rest));
  expect(done).toEqual(["waits", "https://course.example/back"]);
});

test("without a return address there is no link", async () => {
  await act(() => render(<LeaveLink wayBack={null} end={async () => {}} />, document.body));
  expect(document.querySelector("a")).toBeNull();
});
