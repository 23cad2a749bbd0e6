/** Comets painted by the processor: a head whose shape tells the origin and a tail that thins out, into plain pixels. */

/** A picture of straight (not premultiplied) colours, each packed as 0xAABBGGRR. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  /** [height*width], row 0 on top */
  readonly colours: Uint32Array;
}

/** Heads in the order of the tracers' origins. */
export const DISC = 0;
export const RING = 1;
export const DIAMOND = 2;

/** Lays `colour` over what is there; `alpha` 0..1. Adds up as one coat of paint on another does. */
function lay(colours: Uint32Array, k: number, colour: number, alpha: number): void {
  const under = colours[k]!;
  if (alpha > 0.995) {
    colours[k] = colour | 0xff000000;
    return;
  }
  if (under === 0) {
    colours[k] = ((255 * alpha + 0.5) << 24) | colour;
    return;
  }
  const kept = ((under >>> 24) / 255) * (1 - alpha);
  const whole = alpha + kept;
  const share = alpha / whole;
  const red = (under & 255) + ((colour & 255) - (under & 255)) * share;
  const green = ((under >> 8) & 255) + (((colour >> 8) & 255) - ((under >> 8) & 255)) * share;
  const blue = ((under >> 16) & 255) + (((colour >> 16) & 255) - ((under >> 16) & 255)) * share;
  colours[k] = ((255 * whole + 0.5) << 24) | ((blue + 0.5) << 16) | ((green + 0.5) << 8) | (red + 0.5);
}

/**
 * A head.
 * @param x,y  px, its centre
 * @param dx,dy unit vector of its motion: a diamond points along it
 * @param half px, half its width
 * @param shape DISC, RING or DIAMOND
 * @param colour 0x00BBGGRR
 */
export function paintHead(
  { width, height, colours }: Pixels,
  x: number,
  y: number,
  dx: number,
  dy: number,
  half: number,
  shape: number,
  colour: number,
  alpha: number,
): void {
  const reach = half + 0.5;
  const top = Math.max(0, Math.floor(y - reach));
  const bottom = Math.min(height - 1, Math.floor(y + reach));
  const left = Math.max(0, Math.floor(x - reach));
  const right = Math.min(width - 1, Math.floor(x + reach));
  for (let j = top; j <= bottom; j++) {
    const py = j + 0.5 - y;
    for (let i = left; i <= right; i++) {
      const px = i + 0.5 - x;
      let cover: number;
      if (shape === DIAMOND)
        cover = 0.5 + (half - Math.abs(px * dx + py * dy) - Math.abs(py * dx - px * dy)) * Math.SQRT1_2;
      else {
        const radius = Math.sqrt(px * px + py * py);
        cover = half + 0.5 - radius;
        if (shape === RING) cover = Math.min(cover, radius - half / 2 + 0.5);
      }
      if (cover > 0.02) lay(colours, j * width + i, colour, alpha * Math.min(1, cover));
    }
  }
}

/**
 * One stretch of a tail, from its front to its back.
 * @param wide0,wide1 px, half widths at its ends
 * @param strong0,strong1 0..1: opacity at its ends is the square
 */
export function paintTail(
  { width, height, colours }: Pixels,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  wide0: number,
  wide1: number,
  strong0: number,
  strong1: number,
  colour: number,
  alpha: number,
): void {
  const length = Math.hypot(x1 - x0, y1 - y0);
  if (length < 0.2) return;
  const ux = (x1 - x0) / length;
  const uy = (y1 - y0) / length;
  const reach = Math.max(wide0, wide1) + 0.5;
  const top = Math.max(0, Math.floor(Math.min(y0, y1) - reach));
  const bottom = Math.min(height - 1, Math.floor(Math.max(y0, y1) + reach));
  for (let j = top; j <= bottom; j++) {
    const py = j + 0.5 - y0;
    // Where this row runs through the stretch: within its reach to both sides, and between its ends.
    let low = Math.min(x0, x1) - reach;
    let high = Math.max(x0, x1) + reach;
    if (Math.abs(uy) > 1e-3) {
      const middle = x0 + (py * ux) / uy;
      const half = reach / Math.abs(uy);
      low = Math.max(low, middle - half);
      high = Math.min(high, middle + half);
    }
    const left = Math.max(0, Math.floor(low));
    const right = Math.min(width - 1, Math.floor(high));
    for (let i = left; i <= right; i++) {
      const px = i + 0.5 - x0;
      const along = (px * ux + py * uy) / length;
      if (along < 0 || along > 1) continue;
      const cover = wide0 + (wide1 - wide0) * along + 0.5 - Math.abs(py * ux - px * uy);
      if (cover <= 0) continue;
      const strong = strong0 + (strong1 - strong0) * along;
      const opacity = alpha * strong * strong * Math.min(1, cover);
      if (opacity > 0.02) lay(colours, j * width + i, colour, opacity);
    }
  }
}
