/** Fields on a graphics chip; fetched only where the browser has found one. */
import ChipFieldWorker from "./chip-field-worker.ts?worker&inline";
import { chipTold } from "./field-kernel.ts";
import type { FromField } from "./worker-messages.ts";

/** Starts workers that compute on the chip; undefined for one that is only imitated by the processor. */
export function chipFields(adapter: GPUAdapter): (() => Worker | undefined) | undefined {
  if (adapter.info.isFallbackAdapter) {
    chipTold("imitated");
    return undefined;
  }
  let failed = false;
  return () => {
    if (failed) return undefined;
    const worker = new ChipFieldWorker();
    worker.addEventListener("message", ({ data }: MessageEvent<FromField>) => {
      if (data.kind !== "chip") return;
      failed ||= data.fate !== "computes";
      chipTold(data.fate);
    });
    return worker;
  };
}
