import { createHash } from "node:crypto";
import type { Plugin } from "vite";

const COMMON = [
  "default-src 'none'",
  "worker-src 'self' blob:",
  "connect-src 'self' data: blob:",
  "img-src 'self' data: blob:",
  "media-src 'self' blob:",
  "style-src 'self' 'unsafe-inline'",
  "font-src 'self' data:",
  // The docs show scenes of the kit itself.
  "frame-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
];

const hashes = (html: string): string[] =>
  [...html.matchAll(/<script(?![^>]*\bsrc=)[^>]*>([\s\S]*?)<\/script>/g)].map(
    ([, text]) => `'sha256-${createHash("sha256").update(text!).digest("base64")}'`,
  );

/**
 * Writes the content security policy into every built page: no eval, no inline script except those named by hash
 * (the single file is one such script), nothing from another host. Runs last, when scripts have been inlined.
 */
export const contentSecurity = (): Plugin => ({
  name: "content-security",
  apply: "build",
  enforce: "post",
  generateBundle: {
    order: "post",
    handler(_options, bundle) {
      for (const file of Object.values(bundle)) {
        if (file.type !== "asset" || !file.fileName.endsWith(".html")) continue;
        const html = String(file.source);
        const policy = [
          ...COMMON,
          `script-src 'self' 'wasm-unsafe-eval' ${hashes(html).join(" ")}`.trim(),
        ].join("; ");
        file.source = html.replace(
          /<head>/,
          `<head>\n    <meta http-equiv="Content-Security-Policy" content="${policy}" />`,
        );
      }
    },
  },
});
