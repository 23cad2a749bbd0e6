import { readFileSync } from "node:fs";
import { defineConfig } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import { viteSingleFile } from "vite-plugin-singlefile";
import { compileHint } from "./scripts/compile-hint.ts";
import { contentSecurity } from "./scripts/content-security.ts";
import { docsSite } from "./scripts/docs-site.ts";
import { fileList } from "./scripts/file-list.ts";
import { languageNames } from "./scripts/language-names.ts";
import { languageWords } from "./scripts/language-words.ts";
import { leftOut } from "./scripts/left-out.ts";
import { uncalled } from "./scripts/left-out-members.ts";
import { lessons } from "./scripts/lesson-data.ts";
import { notices } from "./scripts/notices.ts";
import { openingPoint } from "./scripts/opening-point.ts";
import { phonePage } from "./scripts/phone-page.ts";
import { preload } from "./scripts/preload.ts";
import { typeFaces } from "./scripts/type-faces.ts";

const { version } = JSON.parse(readFileSync(new URL("./package.json", import.meta.url), "utf8"));

/** Works under any path and, after one visit, with the network cable out; an update waits until the reader takes it. */
const offline = () =>
  VitePWA({
    registerType: "prompt",
    injectRegister: false,
    workbox: {
      // From the first visit on, what a window has yet to load comes from its own version, whatever the server has by then.
      clientsClaim: true,
      globPatterns: ["**/*.{html,js,css,wasm,woff2,svg,png,webp,json,txt}"],
      // A ward's own lessons change without a new version of the kit: the network first, the last copy without one.
      // The phone page is of use only while its server runs.
      globIgnores: ["own/**", "phone.html"],
      navigateFallbackDenylist: [/\/(phone|stage)(\.html)?$/],
      runtimeCaching: [
        { urlPattern: /\/own\/[^/]+$/, handler: "NetworkFirst", options: { cacheName: "own-lessons" } },
      ],
      maximumFileSizeToCacheInBytes: 8_000_000,
    },
    manifest: {
      name: "Lungward",
      short_name: "Lungward",
      description: "How blood reaches the lungs without a pump: computed flow and pressure, for learning.",
      display: "standalone",
      start_url: "./",
      scope: "./",
      background_color: "#0b1020",
      theme_color: "#0b1020",
      icons: [{ src: "icon.svg", sizes: "any", type: "image/svg+xml", purpose: "any" }],
    },
  });

/** The messages of a language other than English in one file, which is fetched when that language is asked for. */
const LANGUAGE_CHUNKS = {
  test: /src\/i18n\/(?!en\b)[\w-]+(\/[\w-]+\.json)?$/,
  name: (id: string) => `words-${id.split("/i18n/").at(-1)?.split("/")[0]}`,
};

/** What every page needs in one file: together it packs better than in two dozen, and one answer brings all. No other entry may take from it: it begins the kit. */
const FIRST_CHUNK = {
  test: /src\/(main\.ts|modes\/home\/index\.tsx|sim\/parameters\/aliases\.ts)$/,
  name: "first",
  priority: 1,
};

/** What the pathway's picture needs by whichever way it is drawn, and by the processor, in one file too. */
const STAGE_CHUNK = { test: /src\/scenes\/(stage|drawing\/canvas-renderer)\.ts$/, name: "stage" };

/** What draws by a chip alone, kept out of that file. */
const WEBGL_CHUNK = {
  test: /pixi\.js\/lib\/(unsafe-eval\/|scene\/(mesh|graphics\/gl)\/|rendering\/(high-shader\/|batcher\/gl\/Gl|renderers\/(gl\/(?!const|.*getTestContext)|shared\/shader\/(Shader|utils\/uniform))))/,
  name: "webgl",
  includeDependenciesRecursively: false,
  priority: 2,
};

/** What writes a picture as SVG, once a button asks for it, kept out of it too. */
const SVG_CHUNK = {
  test: /(src\/scenes\/drawing\/svg\.ts|pixi\.js\/lib\/scene\/graphics\/shared\/svg\/(build|SVGExporter|graphicsContextToSvg).*)$/,
  name: "svg",
  includeDependenciesRecursively: false,
  priority: 2,
};

/** `vite build` makes a folder; `vite build --mode single` makes one file that opens from a stick. */
export default defineConfig(({ mode }) => {
  const single = mode === "single";
  return {
    base: "./",
    define: {
      __LUNGWARD_VERSION__: JSON.stringify(version),
      __SINGLE_FILE__: JSON.stringify(single),
      __LANGUAGE_NAMES__: JSON.stringify(languageNames()),
      __OPENING__: JSON.stringify(openingPoint()),
    },
    worker: {
      format: "iife",
      // A package of the older kind looks for `require` to know that it is bundled; the bundler provides it but not to `typeof`.
      rolldownOptions: { transform: { define: { "typeof require": '"function"' } } },
    },
    plugins: [
      ...(single
        ? [viteSingleFile()]
        : [docsSite(), phonePage(), offline(), preload(), compileHint([FIRST_CHUNK.name, STAGE_CHUNK.name])]),
      lessons(),
      languageWords(),
      typeFaces(),
      leftOut(),
      uncalled(!single),
      notices(),
      contentSecurity(),
      ...(single ? [] : [fileList(version)]),
    ],
    build: {
      target: "es2022",
      outDir: single ? "dist/single" : "dist/folder",
      copyPublicDir: !single,
      chunkSizeWarningLimit: 1500,
      ...(single
        ? {}
        : {
            rolldownOptions: {
              output: {
                codeSplitting: {
                  groups: [LANGUAGE_CHUNKS, ...[FIRST_CHUNK, STAGE_CHUNK, WEBGL_CHUNK, SVG_CHUNK]],
                },
              },
            },
          }),
    },
    server: { port: 5300, strictPort: false, open: false },
    preview: { port: 5301, host: "127.0.0.1" },
  };
});
