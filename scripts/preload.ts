/** Names in the built page what its first view fetches after the first piece: the browser then asks for all of it at once. */
import type { Plugin } from "vite";

/** Modules that begin a piece of the first view. */
const PIECES = ["src/modes/home/index.tsx", "src/scenes/stage.ts", "src/chain/processor-field.ts"];
/** Type of the first words. */
const FACE = /written-(400|700)-.*\.woff2$/;

export function preload(): Plugin {
  return {
    name: "preload",
    apply: "build",
    transformIndexHtml: {
      order: "post",
      handler(html, { bundle = {}, path }) {
        if (path !== "/index.html") return html;
        const chunks = Object.values(bundle).filter((file) => file.type === "chunk");
        const named = new Map(chunks.map((chunk) => [chunk.fileName, chunk]));
        const kit = chunks.find(({ moduleIds }) => moduleIds.some((id) => id.endsWith("src/main.ts")));
        const other = chunks.find(
          ({ isEntry, name, imports }) => isEntry && name !== "index" && imports.includes(`${kit?.fileName}`),
        );
        if (other)
          throw new Error(`${other.fileName} shares a module with the kit's page, and would begin the kit`);
        const wanted = new Set<string>();
        const want = (name: string) => {
          if (wanted.has(name)) return;
          wanted.add(name);
          named.get(name)?.imports.forEach(want);
        };
        for (const piece of PIECES) {
          const chunk = chunks.find(({ moduleIds }) => moduleIds.some((id) => id.endsWith(piece)));
          if (!chunk) throw new Error(`${piece} is no piece of its own: scripts/preload.ts names it`);
          want(chunk.fileName);
        }
        const faces = Object.keys(bundle).filter((name) => FACE.test(name));
        if (faces.length === 0) throw new Error("no face of the first words: scripts/preload.ts names them");
        const missing = (name: string) => !html.includes(name);
        const link = (attrs: Record<string, string | boolean>) =>
          ({ tag: "link", attrs, injectTo: "head" }) as const;
        return [
          ...[...wanted]
            .filter(missing)
            .map((name) => link({ rel: "modulepreload", crossorigin: true, href: `./${name}` })),
          ...faces.map((name) => link({ rel: "preload", as: "font", crossorigin: true, href: `./${name}` })),
        ];
      },
    },
  };
}
