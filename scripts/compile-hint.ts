/** Has the browser compile pieces of the first view whole while they are on their way: nearly all of a piece is called at once, and later it would cost the page's own thread. */
import type { Plugin } from "vite";

/** Read by V8 at a file's beginning; a comment to others. */
const HINT = "//# allFunctionsCalledOnLoad\n";

/** @param pieces names of the files, without the mark of their version */
export function compileHint(pieces: readonly string[]): Plugin {
  return {
    name: "compile-hint",
    apply: "build",
    generateBundle: {
      order: "post",
      handler(_, bundle) {
        const found = Object.values(bundle).filter(
          (file) => file.type === "chunk" && pieces.includes(file.name),
        );
        if (found.length !== pieces.length)
          throw new Error(`pieces of the first view: ${pieces.join()} expected`);
        for (const file of found) if (file.type === "chunk") file.code = HINT + file.code;
      },
    },
  };
}
