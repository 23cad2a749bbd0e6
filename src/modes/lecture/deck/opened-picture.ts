/** A picture of one's own as a file for slides needs it. */

export interface Opened {
  readonly blob: Blob;
  readonly image: HTMLImageElement;
}

/** px: as wide as a full screen */
const MAX_WIDTH = 1920;

/** null where it cannot be read */
export async function opened(blob: Blob): Promise<Opened | null> {
  const url = URL.createObjectURL(blob);
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    return { blob, image };
  } catch {
    return null;
  } finally {
    URL.revokeObjectURL(url);
  }
}

/** A data address that every program for slides shows: WebP and SVG are not among them; a photograph stays as small as it is. */
export async function asAddress({ blob, image }: Opened): Promise<string> {
  if (blob.type !== "image/jpeg" || image.naturalWidth > MAX_WIDTH)
    return drawn(image).toDataURL("image/png");
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(blob);
  });
}

/** A file that every program shows beside its words: an SVG drawn, any other as it is. */
export async function asFile({ blob, image }: Opened): Promise<Blob> {
  if (blob.type !== "image/svg+xml") return blob;
  return new Promise((resolve, reject) =>
    drawn(image).toBlob((png) => (png ? resolve(png) : reject(new Error("no picture"))), "image/png"),
  );
}

function drawn(image: HTMLImageElement): HTMLCanvasElement {
  const scale = Math.min(1, MAX_WIDTH / image.naturalWidth);
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(image.naturalWidth * scale));
  canvas.height = Math.max(1, Math.round(image.naturalHeight * scale));
  canvas.getContext("2d")?.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas;
}
