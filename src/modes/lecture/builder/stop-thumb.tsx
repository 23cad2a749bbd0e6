/** A stop of the speaker's own as a small picture. */
import { StopPicture } from "../room/own-slide.tsx";
import { type Pictures, pictureOf, type Stop } from "../talk/own-stops.ts";

export function StopThumb({ stop, pictures }: { readonly stop: Stop; readonly pictures: Pictures }) {
  const name = pictureOf(stop);
  return (
    <span class={`stop-thumb ${stop.kind}`} aria-hidden="true">
      {name && <StopPicture blob={pictures.get(name)} title="" />}
      {(stop.kind === "title" || stop.kind === "end") && stop.title}
    </span>
  );
}
