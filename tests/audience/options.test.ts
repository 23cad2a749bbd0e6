/** What the audience's server may be told, and that it never repeats a password. */
import { expect, test } from "vitest";
import { readArguments } from "../../src/audience/options.ts";

test("Redis is named by the option or, where that is not given, by the variable", () => {
  const variable = { LUNGWARD_REDIS: "redis://:secret@10.0.0.1" };
  expect(readArguments([], variable).redis).toBe(variable.LUNGWARD_REDIS);
  expect(readArguments(["--redis", "rediss://10.0.0.2"], variable).redis).toBe("rediss://10.0.0.2");
  expect(readArguments([], { LUNGWARD_REDIS: "" }).redis).toBeNull();
  expect(readArguments([], {}).redis).toBeNull();
});

test.each(["http://:secret@host", "secret@host", "redis://:secret@host:no-port"])(
  "an address of another kind is refused without its password",
  (address) => {
    const faultOf = (read: () => unknown): string => {
      try {
        return String(read());
      } catch (fault) {
        return String(fault);
      }
    };
    const option = faultOf(() => readArguments(["--redis", address], {}));
    const variable = faultOf(() => readArguments([], { LUNGWARD_REDIS: address }));
    expect(option).toMatch(/^Error: --redis: found .*, allowed: one such as redis:/);
    expect(variable).toMatch(/^Error: LUNGWARD_REDIS: found /);
    expect(option + variable).not.toContain("secret");
  },
);
