import { mergeConfig } from "vitest/config";
import house from "../vitest.config.ts";

/** `npm run mutation` runs only the tests that stand nearest to what it changes: the numerics' own. */
const near = mergeConfig(house, {});
near.test.include = ["hydraulics/*", "oxygen/*", "exchange/*", "body/*"].map(
  (name) => `tests/sim/${name}.test.ts`,
);
export default near;
