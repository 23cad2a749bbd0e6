/** Fields on a GPU; fetched only where the browser has found one. */

import { setGpuState } from "./field-kernel.ts";
import GpuFieldWorker from "./gpu-field-worker.ts?worker&inline";
import type { FromField } from "./worker-messages.ts";

/** Starts workers that compute on the GPU; undefined for one that is only imitated by the processor. */
export function gpuFields(adapter: GPUAdapter): (() => Worker | undefined) | undefined {
  if (adapter.info.isFallbackAdapter) {
    setGpuState("software");
    return undefined;
  }
  let failed = false;
  return () => {
    if (failed) return undefined;
    const worker = new GpuFieldWorker();
    worker.addEventListener("message", ({ data }: MessageEvent<FromField>) => {
      if (data.kind !== "gpu") return;
      failed ||= data.status !== "computes";
      setGpuState(data.status);
    });
    return worker;
  };
}
