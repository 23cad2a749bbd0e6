import { readFileSync } from "node:fs";
import { defineConfig } from "vite";
import { viteSingleFile } from "vite-plugin-singlefile";

const { version } = JSON.parse(readFileSync(new URL("./package.json", import.meta.url), "utf8"));

/** `vite build` makes a folder that works under any path; `--mode single` makes one file that opens from a stick. */
export default defineConfig(({ mode }) => ({
  base: "./",
  define: {
    __LUNGWARD_VERSION__: JSON.stringify(version),
    __SINGLE_FILE__: JSON.stringify(mode === "single"),
  },
  worker: { format: "iife" },
  plugins: mode === "single" ? [viteSingleFile()] : [],
  build: {
    target: "es2022",
    outDir: mode === "single" ? "dist/single" : "dist/folder",
    chunkSizeWarningLimit: 1500,
  },
  server: { port: 5300, strictPort: false, open: false },
  preview: { port: 5301, host: "127.0.0.1" },
}));
