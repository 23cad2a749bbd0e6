/** The stage as the speaker's window sees it, live. */
import type { ReadonlySignal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import type { StagePictureMessage } from "../windows/window-messages.ts";

export interface StagePictureProps {
  /** The last one that came; null while there is none. */
  readonly picture: ReadonlySignal<StagePictureMessage | null>;
  /** What lies over it. */
  readonly children?: ComponentChildren;
}

export function StagePicture({ picture, children }: StagePictureProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { width = 16, height = 9, covered = false } = picture.value ?? {};
  useEffect(
    () =>
      picture.subscribe((now) => {
        if (now && canvas.current) void draw(canvas.current, now);
      }),
    [picture],
  );
  return (
    <figure class="stage-picture">
      <div class="stage-picture-frame" style={{ "--shape": width / height }}>
        <canvas ref={canvas} role="img" aria-label={t("lecture.picture")} />
        {children}
      </div>
      {covered && <figcaption>{t("lecture.picture.covered")}</figcaption>}
    </figure>
  );
}

async function draw(canvas: HTMLCanvasElement, { bytes, width, height }: StagePictureMessage): Promise<void> {
  try {
    const drawn = await createImageBitmap(new Blob([bytes], { type: "image/jpeg" }));
    if (canvas.width !== width || canvas.height !== height) Object.assign(canvas, { width, height });
    canvas.getContext("2d")?.drawImage(drawn, 0, 0, width, height);
    drawn.close();
  } catch {
    // No picture after all: the one before stands.
  }
}
