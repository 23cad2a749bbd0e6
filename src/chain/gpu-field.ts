/** Fields on a GPU; fetched only where the browser has found one. */

import { setGpuState } from "./field-kernel.ts";
import GpuFieldWorker from "./gpu-field-worker.ts?worker&inline";
import type { Named } from "./port.ts";
import type { FromField } from "./worker-messages.ts";

/** Starts workers that compute on the GPU; undefined for one that is only imitated by the processor. */
export function gpuFields(adapter: GPUAdapter): Named | undefined {
  if (adapter.info.isFallbackAdapter) {
    setGpuState("software");
    return undefined;
  }
  let failed = false;
  return (name) => {
    if (failed) return undefined;
    const worker = new GpuFieldWorker({ name });
    worker.addEventListener("message", ({ data }: MessageEvent<FromField>) => {
      if (data.kind !== "gpu") return;
      failed ||= data.status !== "computes";
      setGpuState(data.status);
    });
    return worker;
  };
}
