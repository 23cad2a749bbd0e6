import { readFileSync } from "node:fs";
import type { Plugin } from "vite";
import { looks, readSite, wholePage } from "./docs/site.ts";

const ENTRY = "src/docs/search.ts";

const sections = (site: ReturnType<typeof readSite>): string =>
  JSON.stringify(site.pages.flatMap(({ sections }) => sections));

/** Builds `docs/` into the kit: one page per text, one list of sections for the search. The development server makes pages on request. */
export const docsSite = (): Plugin => ({
  name: "docs-site",
  buildStart() {
    if (this.environment.mode === "build") this.emitFile({ type: "chunk", id: ENTRY, name: "docs" });
  },
  generateBundle: {
    order: "pre",
    handler(_options, bundle) {
      const site = readSite();
      const emit = (fileName: string, source: string | Uint8Array) =>
        this.emitFile({ type: "asset", fileName, source });
      const entry = Object.values(bundle).find((each) => each.type === "chunk" && each.name === "docs");
      if (entry?.type !== "chunk") throw new Error(`${ENTRY} is not in the bundle`);
      const styles = [...(entry.viteMetadata?.importedCss ?? [])].map(
        (file) => `<link rel="stylesheet" href="../${file}" />`,
      );
      const head = `<link rel="stylesheet" href="looks.css" />${styles.join("")}<script type="module" src="../${entry.fileName}"></script>`;
      for (const page of site.pages) {
        emit(`docs/${page.name}`, wholePage(site, page, head));
        for (const picture of page.pictures) emit(picture, readFileSync(picture));
      }
      emit("docs/sections.json", sections(site));
      emit("docs/looks.css", looks());
    },
  },
  configureServer({ middlewares }) {
    middlewares.use((request, answer, next) => {
      const [, name] = /^\/docs\/([\w.-]*)(?:\?|$)/.exec(request.originalUrl ?? "") ?? [];
      if (name === undefined) return next();
      const site = readSite();
      const head = `<link rel="stylesheet" href="looks.css" /><script type="module" src="/${ENTRY}"></script>`;
      const page = site.pages.find((each) => each.name === (name || "index.html"));
      const reply = (type: string, text: string) => answer.setHeader("Content-Type", type).end(text);
      if (page) reply("text/html", wholePage(site, page, head));
      else if (name === "sections.json") reply("application/json", sections(site));
      else if (name === "looks.css") reply("text/css", looks());
      else next();
    });
  },
});
