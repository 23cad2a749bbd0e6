/** A clip of the moving stage, frame by frame onto a sheet that carries its cautions. */
import { entryAt } from "../../sim/checked/present.ts";

/** Containers and codecs in the order of preference. */
const TYPES = ["video/webm;codecs=vp9", "video/webm;codecs=vp8", "video/webm", "video/mp4"];

/** What this browser can record, or undefined. */
export const clipType = (): string | undefined =>
  typeof MediaRecorder === "undefined"
    ? undefined
    : TYPES.find((type) => MediaRecorder.isTypeSupported(type));

export interface ClipOptions {
  readonly canvas: HTMLCanvasElement;
  /** s */
  readonly seconds: number;
  /** Calls at each look at the stage until the returned function is called; `drawn`: there is a new picture. */
  readonly eachFrame: (look: (drawn: boolean) => void) => () => void;
  readonly paint: () => void;
  /** 0..1 */
  readonly onProgress: (share: number) => void;
  readonly cancel: AbortSignal;
}

const FRAMES_A_SECOND = 30;

/** Resolves with the clip, or with null when it was cancelled. Rejects when the browser records nothing. */
export function recordClip(options: ClipOptions): Promise<Blob | null> {
  const { canvas, seconds, eachFrame, paint, onProgress, cancel } = options;
  const type = clipType();
  if (!type) return Promise.reject(new Error("no recorder"));
  return new Promise((resolve, reject) => {
    paint();
    const recorder = new MediaRecorder(canvas.captureStream(FRAMES_A_SECOND), {
      mimeType: type,
      videoBitsPerSecond: 12_000_000,
    });
    const parts: Blob[] = [];
    const started = performance.now();
    const stopPainting = eachFrame((drawn) => {
      if (drawn) paint();
      const share = (performance.now() - started) / (seconds * 1000);
      onProgress(Math.min(1, share));
      if (share >= 1 && recorder.state === "recording") recorder.stop();
    });
    recorder.ondataavailable = ({ data }) => parts.push(data);
    recorder.onerror = () => {
      stopPainting();
      reject(new Error("recording failed"));
    };
    recorder.onstop = () => {
      stopPainting();
      resolve(cancel.aborted ? null : new Blob(parts, { type: entryAt(type.split(";"), 0) }));
    };
    cancel.addEventListener("abort", () => recorder.state === "recording" && recorder.stop(), { once: true });
    recorder.start(500);
  });
}
