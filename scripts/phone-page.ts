import { fileURLToPath } from "node:url";
import { build, type Plugin } from "vite";
import { viteSingleFile } from "vite-plugin-singlefile";

/** Builds the page that phones of a hall open, as one small file, and puts it beside the kit's own pages. */
export const phonePage = (): Plugin => ({
  name: "phone-page",
  apply: "build",
  async generateBundle() {
    const made = await build({
      root: fileURLToPath(new URL("../src/phone", import.meta.url)),
      configFile: false,
      logLevel: "warn",
      plugins: [viteSingleFile({ removeViteModuleLoader: true })],
      build: { target: "es2020", write: false, rolldownOptions: { input: "phone.html" } },
    });
    const files = [made].flat().flatMap((each) => ("output" in each ? each.output : []));
    const page = files.find((file) => file.type === "asset" && file.fileName === "phone.html");
    if (page?.type !== "asset")
      throw new Error(`no phone.html among ${files.map((each) => each.fileName).join(", ")}`);
    this.emitFile({ type: "asset", fileName: "phone.html", source: page.source });
  },
});
