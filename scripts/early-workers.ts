/** Starts the workers of the first view before the page's own code has come; in a kit of one file they are inlined instead. */
import type { Plugin } from "vite";

/** Global of the page that holds them -> the module of each. */
const WORKERS = { circulation: "circulation-worker", field: "field-worker" } as const;

export function earlyWorkers(single: boolean): Plugin {
  return {
    name: "early-workers",
    apply: "build",
    enforce: "pre",
    resolveId(id, importer) {
      return single && id.endsWith("?worker") ? this.resolve(`${id}&inline`, importer) : null;
    },
    transformIndexHtml: {
      order: "post",
      handler(_html, { bundle = {}, path }) {
        if (single || path !== "/index.html") return [];
        const started = Object.entries(WORKERS).map(([name, module]) => {
          const file = Object.keys(bundle).find((each) => each.startsWith(`assets/${module}-`));
          if (!file) throw new Error(`${module} is no file of its own: scripts/early-workers.ts names it`);
          return `${name}:new Worker("./${file}")`;
        });
        return [{ tag: "script", children: `lungwardWorkers={${started.join()}}`, injectTo: "head-prepend" }];
      },
    },
  };
}
