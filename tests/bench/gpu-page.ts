/** What a browser runs on its GPU; the lines come as they are measured. */
import { openGpu } from "../../src/sim/flow-solver/gpu/gpu.ts";
import { gpuRates } from "./gpu-rates.ts";

async function measured(say: (line: string) => void): Promise<void> {
  const adapter = await navigator.gpu.requestAdapter({ powerPreference: "high-performance" });
  if (!adapter) throw new Error("the browser finds no GPU");
  const { vendor, architecture, description } = adapter.info;
  say(`${vendor} ${architecture} ${description}`);
  const gpu = await openGpu(await adapter.requestDevice(), 60_000);
  for await (const line of gpuRates(gpu)) say(line);
}

Object.assign(globalThis, { measured });
