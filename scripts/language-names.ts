/** The names of the kit's languages, found when it is built: a browser takes as long over the first of each as over a whole drawing. */
import { readdirSync } from "node:fs";
import { ownName } from "../src/i18n/own-name.ts";

/** By tag. */
export const languageNames = (): Readonly<Record<string, string>> =>
  Object.fromEntries(
    readdirSync(new URL("../src/i18n", import.meta.url), { withFileTypes: true })
      .filter((each) => each.isDirectory())
      .map(({ name }) => [name, ownName(name)]),
  );
