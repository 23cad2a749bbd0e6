import { mergeConfig } from "vitest/config";
import house from "../vitest.config.ts";

/** `npm run mutation` runs only the tests of the code that it changes: those of the numerics. */
const near = mergeConfig(house, {});
near.test.include = ["hydraulics/*", "oxygen/*", "exchange/*", "body/*"].map(
  (name) => `tests/sim/${name}.test.ts`,
);
export default near;
