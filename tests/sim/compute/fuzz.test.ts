/** Hostile and slipped requests: whatever the text, an answer or a refusal with a line a fault; never an exception. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { KINDS } from "../../../src/sim/compute/kinds.ts";
import { compute } from "../../../src/sim/compute/run-request.ts";

/** Names that every plain object answers to, beside names of the contract. */
const KEYS = [
  ..."__proto__ constructor prototype toString valueOf hasOwnProperty isPrototypeOf __defineGetter__".split(
    " ",
  ),
  ..."kind stage body bsa set over values parameter fluid open solid openings tube disc points width".split(
    " ",
  ),
];
const key = fc.oneof({ weight: 5, arbitrary: fc.constantFrom(...KEYS) }, fc.string({ maxLength: 4 }));
const leaf = fc.oneof(
  key,
  fc.constantFrom(...KINDS.map(({ kind }) => kind)),
  fc.double(),
  fc.integer(),
  fc.boolean(),
  fc.constant(null),
);

/** JSON text written by hand, so that `__proto__` is an own key, as JSON.parse makes it. */
const { json } = fc.letrec<{ json: string }>((tie) => ({
  json: fc.oneof(
    { maxDepth: 4, withCrossShrink: true },
    leaf.map((value) => JSON.stringify(value) ?? "null"),
    fc.array(tie("json"), { maxLength: 3 }).map((parts) => `[${parts.join(",")}]`),
    fc
      .array(fc.tuple(key, tie("json")), { maxLength: 4 })
      .map((pairs) => `{${pairs.map(([name, part]) => `${JSON.stringify(name)}:${part}`).join(",")}}`),
  ),
}));

/** Small requests that have an answer. */
const SOUND = [
  '{"kind":"circulation","stage":"extracardiac","body":{"ageYears":5,"bsa":0.72,"haemoglobin":14},"set":{}}',
  '{"kind":"sweep","base":{"kind":"circulation","stage":"extracardiac","body":{"ageYears":5,"bsa":0.72,"haemoglobin":14}},"over":[{"parameter":"body.bsa","values":[0.7]}],"outputs":["pressures.atrium"]}',
  '{"kind":"test-occlusion","stage":"extracardiac","body":{"ageYears":5,"bsa":0.72,"haemoglobin":14},"set":{"fenestrationDiameter":4}}',
  '{"kind":"field","open":[{"tube":{"points":[[0,-9],[0,9]],"width":6}}],"openings":[{"name":"a","centre":[0,-9],"normal":[0,-1],"width":6,"velocity":0.1},{"name":"b","centre":[0,9],"normal":[0,1],"width":6,"pressure":0}],"cellsAcross":4,"maxSeconds":0.01}',
  '{"kind":"benchmark-field","case":"poiseuille","reynolds":10,"cells":8}',
];

/** One name or value of a valid request is replaced by another. */
const slipped = fc
  .tuple(fc.constantFrom(...SOUND), fc.nat(), key, json, fc.boolean())
  .map(([text, at, name, part, both]) => {
    const names = [...text.matchAll(/"\w[\w.-]*"(?=:)/g)];
    const { index, 0: found } = names[at % names.length]!;
    const rest = text.slice(index + found.length + 1);
    return `${text.slice(0, index)}${JSON.stringify(name)}:${both ? `${part},${found}:` : ""}${rest}`;
  });

const answered = async (text: string) => {
  const { output, errors, exit } = await compute(text, "json");
  expect([0, 2, 3]).toContain(exit);
  if (exit === 0) expect(() => JSON.parse(output)).not.toThrow();
  else {
    expect(output).toBe("");
    expect(errors.length).toBeGreaterThan(0);
  }
};

test("any JSON is answered or refused", async () => {
  await fc.assert(fc.asyncProperty(json, answered), { numRuns: 2000 });
});

test("any JSON within each kind is answered or refused", async () => {
  const beneath = fc
    .tuple(fc.constantFrom(...KINDS.map(({ kind }) => kind)), fc.array(fc.tuple(key, json), { maxLength: 6 }))
    .map(
      ([kind, pairs]) =>
        `{"kind":"${kind}"${pairs.map(([name, part]) => `,${JSON.stringify(name)}:${part}`).join("")}}`,
    );
  await fc.assert(fc.asyncProperty(beneath, answered), { numRuns: 3000 });
});

test("a sound request with one slip is answered or refused", async () => {
  await fc.assert(fc.asyncProperty(slipped, answered), { numRuns: 400 });
}, 120_000);

test.each([
  '{"kind":"field","open":[{"constructor":{"points":[]}}],"openings":[]}',
  '{"kind":"field","open":[{"__proto__":{"points":[]}}],"openings":[]}',
  '{"kind":"sweep","base":{},"over":[{"parameter":"body.constructor","values":[1]}],"outputs":["toString"]}',
])("a name that every object has is refused by name: %s", async (text) => {
  const { exit, errors } = await compute(text, "json");
  expect(exit).toBe(2);
  expect(errors.join("\n")).toMatch(/open\[0\]: found|over\[0\]\.parameter: found "body\.constructor"/);
});

test("an opening may be called like a part of every object", async () => {
  const { output, exit } = await compute(SOUND[3]!.replace('"b"', '"__proto__"'), "json");
  expect(exit).toBe(0);
  const { shares } = JSON.parse(output);
  expect(Object.getOwnPropertyDescriptor(shares.a, "__proto__")?.value).toBeGreaterThan(0.9);
});
