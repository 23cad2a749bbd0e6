/** The part of WebGPU that is used; sim is compiled without the DOM library that would declare it. */

/** Memory on the GPU. */
export interface GpuBuffer {
  mapAsync(mode: number): Promise<void>;
  getMappedRange(): ArrayBuffer;
  unmap(): void;
  destroy(): void;
}

/** Made by a device and only handed back to it. */
export type Made = unknown;

interface GpuPass {
  setPipeline(pipeline: Made): void;
  setBindGroup(index: number, group: Made): void;
  dispatchWorkgroups(count: number): void;
  end(): void;
}

interface GpuEncoder {
  beginComputePass(): GpuPass;
  copyBufferToBuffer(from: GpuBuffer, start: number, to: GpuBuffer, at: number, bytes: number): void;
  finish(): Made;
}

/** A program on the GPU. */
export interface GpuPipeline {
  getBindGroupLayout(index: number): Made;
}

/** A GPU ready to compute. */
export interface GpuDevice {
  readonly lost: Promise<{ readonly message: string }>;
  readonly queue: {
    writeBuffer(to: GpuBuffer, at: number, data: ArrayBufferView): void;
    submit(work: Iterable<Made>): void;
  };
  createBuffer(what: { size: number; usage: number }): GpuBuffer;
  createShaderModule(what: { code: string }): Made;
  createComputePipelineAsync(what: {
    layout: unknown;
    compute: { module: Made; entryPoint?: string };
  }): Promise<GpuPipeline>;
  createBindGroup(what: { layout: Made; entries: Iterable<{ binding: number; resource: unknown }> }): Made;
  createCommandEncoder(): GpuEncoder;
  addEventListener(
    kind: "uncapturederror",
    heard: (event: { readonly error: { readonly message: string } }) => void,
  ): void;
}

/** What buffers are for, by the numbers of the standard. */
export const USE = { read: 1, from: 4, to: 8, uniform: 64, storage: 128 } as const;
