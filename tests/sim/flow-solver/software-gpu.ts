/** Where a GPU that the processor imitates can be had for tests: from the library that comes with Chromium. */
import { existsSync } from "node:fs";
import { join } from "node:path";

const FOLDER = process.env.LUNGWARD_VULKAN ?? "/usr/lib/chromium";

/** Why there is none here; undefined where there is one. */
export const noGpu = (): string | undefined =>
  ["libvulkan.so.1", "libvk_swiftshader.so", "vk_swiftshader_icd.json"].every((name) =>
    existsSync(join(FOLDER, name)),
  )
    ? undefined
    : `no imitated GPU in ${FOLDER} (another folder: LUNGWARD_VULKAN)`;

/** What a process is started with to find it. */
export const gpuEnvironment = (): NodeJS.ProcessEnv => ({
  ...process.env,
  LD_LIBRARY_PATH: FOLDER,
  VK_ICD_FILENAMES: join(FOLDER, "vk_swiftshader_icd.json"),
});
