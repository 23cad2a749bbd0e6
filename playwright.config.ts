import { defineConfig } from "@playwright/test";

const port = Number(process.env.LUNGWARD_PORT ?? 5302);

/** The built page in Debian's Chromium as on a computer without a graphics chip; no network beyond this machine. */
export default defineConfig({
  testDir: "tests",
  testMatch: "**/*.page.ts",
  outputDir: "test-results",
  snapshotPathTemplate: "{testDir}/{testFileDir}/kept/{arg}{ext}",
  workers: 2,
  // Software rendering on a busy machine can be late; a test that passes only on a second try is named by `npm test`.
  retries: 2,
  timeout: 60_000,
  reporter: [["line"], ["json", { outputFile: ".cache/pages.json" }]],
  use: {
    // A window of its own costs each test as much as opening the page does. Between tests storage, cookies, routes and scripts
    // are cleared; a file that judges what a browser keeps or weighs asks for a fresh one.
    reuseContext: true,
    // Else every test would fetch the whole kit for use without a network; a test of that allows it.
    serviceWorkers: "block",
    // A picture that stands still leaves the processor to the tests; those that judge movement ask for it.
    reducedMotion: "reduce",
    baseURL: `http://127.0.0.1:${port}/`,
    launchOptions: {
      executablePath: process.env.LUNGWARD_CHROMIUM ?? "/usr/bin/chromium",
      args: [
        "--no-sandbox",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
      ],
    },
  },
  webServer: {
    command: `npx vite preview --outDir dist/folder --port ${port} --strictPort --host 127.0.0.1`,
    url: `http://127.0.0.1:${port}/`,
    reuseExistingServer: !process.env.CI,
  },
});
