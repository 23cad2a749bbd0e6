import { expect, test } from "vitest";
import { answerCache } from "../../src/chain/answer-cache.ts";
import { circulationLink } from "../../src/chain/circulation-link.ts";
import { workerPool } from "../../src/chain/worker-pool.ts";
import { START } from "../../src/state/scene-state.ts";
import { solverPorts } from "./fakes.ts";

const { request } = START;

/** A worker that dies at every request, however often it is restarted. */
function deadly() {
  const solver = solverPorts();
  solver.hold();
  return {
    ports: solver.ports,
    start: () => {
      const port = solver.start();
      const post = port.post;
      port.post = (message) => {
        post(message);
        if ((message as { kind: string }).kind === "solve")
          queueMicrotask(() => port.onFailure("out of memory"));
      };
      return port;
    },
  };
}

test("a question whose solver keeps dying is answered with the reason, and not kept", async () => {
  const solver = deadly();
  const book = answerCache(circulationLink(solver.start));
  await expect(book.answer(request)).rejects.toThrow("out of memory");
  expect(solver.ports).toHaveLength(4);
  await expect(book.answer(request)).rejects.toThrow("out of memory");
});

test("a solver's refusal is passed on with its reason, and an equal question is then asked again", async () => {
  const solver = solverPorts();
  solver.hold();
  const book = answerCache(circulationLink(solver.start));
  const refused = book.answer(request);
  solver.ports[0]!.say({ kind: "failed", id: solver.asked()[0]!.id, reason: "no such lungs" });
  await expect(refused).rejects.toThrow("no such lungs");
  const again = book.answer(request);
  expect(solver.asked()).toHaveLength(2);
  solver.release();
  // The first question's late answer is nobody's.
  expect((await again).run.converged).toBe(true);
});

test("a question that has left the book before its answer came is still answered", async () => {
  const solver = solverPorts();
  solver.hold();
  const book = answerCache(circulationLink(solver.start));
  const ages = Array.from({ length: 26 }, (_, i) => ({
    ...request,
    body: { ...request.body, ageYears: 5 + 0.1 * i },
  }));
  const all = ages.map((each) => book.answer(each));
  const [second] = [book.answer(ages[1]!)];
  solver.ports[0]!.onFailure("killed");
  const refuse = () => {
    const [last] = solver.asked().slice(-1);
    solver.ports.at(-1)!.say({ kind: "failed", id: last!.id, reason: "refused" });
  };
  for (let n = 0; n < 27; n++) refuse();
  const ends = await Promise.allSettled([...all, second]);
  expect(ends.map(({ status }) => status)).toEqual(Array(27).fill("rejected"));
});

test("what a released worker pool was still asked is answered with a reason", async () => {
  const solver = solverPorts();
  solver.hold();
  const pool = workerPool(solver.start, 1);
  const asked = pool.answer(request);
  pool.release();
  await expect(asked).rejects.toThrow("released");
});
