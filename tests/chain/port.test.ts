/** A port that serves at once and gives way to a better worker. */
import { expect, test } from "vitest";
import { givingWay, type Port } from "../../src/chain/port.ts";

function line() {
  const posted: unknown[] = [];
  const port: Port = {
    post: (message) => posted.push(message),
    onMessage() {},
    onFailure() {},
    close: () => posted.push("closed"),
  };
  return { port, posted };
}

function better() {
  const posted: unknown[] = [];
  let ended = false;
  const worker = {
    onmessage: (_: unknown) => {},
    postMessage: (message: unknown) => posted.push(message),
    terminate() {
      ended = true;
    },
  };
  return {
    worker: worker as unknown as Worker,
    posted,
    say: (data: unknown) => worker.onmessage({ data }),
    ended: () => ended,
  };
}

const passed = () => new Promise((done) => setTimeout(done));

test("the better worker hears all that was said, but for what was given away, and alone is heard from then on", async () => {
  const { port: first, posted } = line();
  const { worker, posted: later, say } = better();
  let found = (_: Worker | undefined) => {};
  const port = givingWay(first, new Promise((resolve) => (found = resolve)));
  const heard: unknown[] = [];
  port.onMessage = (message) => heard.push(message);
  port.post("build");
  port.post("arrays", [new ArrayBuffer(8)]);
  first.onMessage("built");
  found(worker);
  await passed();
  port.post("run");
  await passed();
  expect(posted).toEqual(["build", "arrays", "closed"]);
  expect(later).toEqual(["build", "run"]);
  first.onMessage("late");
  first.onFailure("late");
  say("built better");
  expect(heard).toEqual(["built", "built better"]);
});

test("without a better one the first goes on; one that comes too late is ended", async () => {
  const { port: first, posted } = line();
  const alone = givingWay(first, Promise.resolve(undefined));
  await passed();
  alone.post("run");
  expect(posted).toEqual(["run"]);
  const { worker, ended } = better();
  const closed = givingWay(line().port, Promise.resolve(worker));
  closed.close();
  await passed();
  expect(ended()).toBe(true);
});
