/** Whether this computer can run the vector kernel. */

/** The part of WebAssembly that is used; sim is compiled without the DOM library that would declare it. */
const host = (globalThis as { WebAssembly?: { validate(bytes: Uint8Array): boolean } }).WebAssembly;

/** A function that makes one v128 constant: valid only where vector instructions are known. */
const VECTOR_PROBE = Uint8Array.of(
  ...[0, 97, 115, 109, 1, 0, 0, 0, 1, 4, 1, 96, 0, 0, 3, 2, 1, 0, 10, 23, 1, 21, 0, 253, 12],
  ...new Array<number>(16).fill(0),
  ...[26, 11],
);

/** True where the vector kernel can run. */
export const hasVectors = (): boolean => host?.validate(VECTOR_PROBE) ?? false;
