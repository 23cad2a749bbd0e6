/** Ports whose worker starts with what is said first, and one that gives way to a better worker. */
import { expect, test } from "vitest";
import { fromName } from "../../src/chain/first-words.ts";
import { givingWay, type Named, namedPort, type Port } from "../../src/chain/port.ts";

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

function named() {
  const begun: (readonly unknown[])[] = [];
  const posted: unknown[] = [];
  const worker = {
    onmessage: (_: unknown) => {},
    postMessage: (message: unknown) => posted.push(message),
    terminate: () => posted.push("ended"),
  };
  const make: Named = (name) => {
    begun.push(fromName(name));
    return worker as unknown as Worker;
  };
  return { make, begun, posted, say: (data: unknown) => worker.onmessage({ data }) };
}

const passed = () => new Promise((done) => setTimeout(done));

/** A promise, and what resolves it. */
function later<Value>(): readonly [Promise<Value>, (value: Value) => void] {
  let resolve = (_: Value) => {};
  return [
    new Promise<Value>((done) => {
      resolve = done;
    }),
    (value) => resolve(value),
  ];
}

test("a worker starts with what was said before there was its code, and hears the rest", async () => {
  const { make, begun, posted, say } = named();
  const [code, come] = later<Named>();
  const port = namedPort(code);
  const heard: unknown[] = [];
  port.onMessage = (message) => heard.push(message);
  port.post("build");
  port.post({ boundary: Float32Array.of(1, 2) });
  expect(begun).toEqual([]);
  come(make);
  await passed();
  port.post("run");
  await passed();
  expect(begun).toEqual([["build", { boundary: Float32Array.of(1, 2) }]]);
  expect(posted).toEqual(["run"]);
  say("built");
  expect(heard).toEqual(["built"]);
});

test("with its code at hand it starts at the first word, and never without one", () => {
  const { make, begun } = named();
  namedPort(make).close();
  const port = namedPort(make);
  expect(begun).toEqual([]);
  port.post("solve");
  expect(begun).toEqual([["solve"]]);
});

test("a worker that cannot be had is told", async () => {
  const refused = namedPort(Promise.reject(new Error("no code")));
  const none = namedPort(() => undefined);
  const told: string[] = [];
  for (const port of [refused, none]) port.onFailure = (reason) => told.push(reason);
  none.post("solve");
  await passed();
  expect(told).toHaveLength(2);
});

test("the better worker starts with all that was said, but for what was given away, and alone is heard from then on", async () => {
  const { port: first, posted } = line();
  const { make, begun, posted: after, say } = named();
  const [better, found] = later<Named>();
  const port = givingWay(first, better);
  const heard: unknown[] = [];
  port.onMessage = (message) => heard.push(message);
  port.post("build");
  port.post("arrays", [new ArrayBuffer(8)]);
  first.onMessage("built");
  found(make);
  await passed();
  port.post("run");
  await passed();
  expect(posted).toEqual(["build", "arrays", "closed"]);
  expect([begun, after]).toEqual([[["build"]], ["run"]]);
  first.onMessage("late");
  first.onFailure("late");
  say("built better");
  expect(heard).toEqual(["built", "built better"]);
});

test("without a better one the first goes on; once closed none is started", async () => {
  const { port: first, posted } = line();
  const alone = givingWay(first, Promise.resolve(null));
  await passed();
  alone.post("run");
  expect(posted).toEqual(["run"]);
  const { make, begun } = named();
  givingWay(line().port, Promise.resolve(make)).close();
  await passed();
  expect(begun).toEqual([]);
});
