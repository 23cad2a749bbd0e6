/** The stage's picture for the speaker's window: small, a few times a second, and only while that window looks. */
import { bytesOfBase64 } from "../../../lesson/progress/base64.ts";
import type { StageLoop } from "../../shared/stage/stage-loop.ts";
import type { ToSpeaker } from "../windows/window-messages.ts";
import { paintPage } from "./paint-page.ts";
import { EVERY, LOOKS_FOR, MAX_BYTES, QUALITY, sizeOfPicture } from "./picture-limits.ts";

export interface PictureSender {
  /** The speaker's window looks: pictures follow for a while. */
  look(): void;
  release(): void;
}

type Picture = Extract<ToSpeaker, { kind: "picture" }>;

export function pictureSender(
  stage: Pick<StageLoop, "afterFrame" | "canvas">,
  post: (picture: Picture) => void,
): PictureSender {
  const scene = document.createElement("canvas");
  const page = document.createElement("canvas");
  let until = 0;
  let copied = 0;
  const stopCopying = stage.afterFrame((drawn) => {
    const now = performance.now();
    const canvas = stage.canvas();
    if (!drawn || !canvas || now > until || now < copied + EVERY) return;
    copied = now;
    copyTo(scene, canvas);
  });
  const take = () => {
    [page.width, page.height] = sizeOfPicture(innerWidth, innerHeight);
    const context = page.getContext("2d", READ);
    if (!context) return;
    context.scale(page.width / innerWidth, page.height / innerHeight);
    paintPage({ context, scene, isScene: (canvas) => canvas === stage.canvas() }, document.body);
    const bytes = jpegOf(page);
    const { width, height } = page;
    if (bytes.byteLength <= MAX_BYTES)
      post({ kind: "picture", bytes, width, height, covered: document.hidden });
  };
  const timer = setInterval(() => {
    if (performance.now() > until) return;
    try {
      take();
    } catch {
      // A page that lets nothing be read back has no picture; the words and the clicker go on.
      until = 0;
    }
  }, EVERY);
  return {
    look() {
      until = performance.now() + LOOKS_FOR;
    },
    release() {
      stopCopying();
      clearInterval(timer);
    },
  };
}

function copyTo(scene: HTMLCanvasElement, drawn: HTMLCanvasElement): void {
  [scene.width, scene.height] = sizeOfPicture(drawn.width, drawn.height);
  scene.getContext("2d", READ)?.drawImage(drawn, 0, 0, scene.width, scene.height);
}

/** At once: a browser that is asked for a blob encodes when it has nothing else to do. */
function jpegOf(canvas: HTMLCanvasElement): ArrayBuffer {
  const [, text = ""] = canvas.toDataURL("image/jpeg", QUALITY).split(",");
  return bytesOfBase64(text).buffer;
}

/** Kept in the processor's memory: it is read back each time. */
const READ: CanvasRenderingContext2DSettings = { willReadFrequently: true };
