/** The speaker's own slides, full screen: a title, a picture, an end. */
import { useEffect, useMemo } from "preact/hooks";
import type { OwnStop, Pictures } from "../talk/own-stops.ts";

export function OwnSlide({ stop, pictures }: { readonly stop: OwnStop; readonly pictures: Pictures }) {
  if (stop.kind === "title" || stop.kind === "end")
    return (
      <section class="own-slide" data-slide={stop.kind}>
        <div class="own-words">
          <p class="own-title">{stop.title}</p>
          {stop.words && <p class="own-further">{stop.words}</p>}
        </div>
      </section>
    );
  return (
    <section class="own-slide" data-slide={stop.kind}>
      <StopPicture blob={pictures.get(stop.picture ?? "")} title={stop.title} />
    </section>
  );
}

export function StopPicture({ blob, title }: { readonly blob: Blob | undefined; readonly title: string }) {
  const url = useMemo(() => (blob ? URL.createObjectURL(blob) : null), [blob]);
  useEffect(() => () => (url ? URL.revokeObjectURL(url) : undefined), [url]);
  return url ? <img src={url} alt={title} draggable={false} /> : null;
}
