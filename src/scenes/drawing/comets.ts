/** Comets painted by the processor: a head whose shape shows the origin and a tail that thins out, into plain pixels. */

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

/** Colour (0x00BBGGRR) and opacity of one comet. Records of this file can be reused for each comet: nothing is kept. */
export interface Paint {
  colour: number;
  alpha: number;
}

export interface Head {
  /** px, its centre */
  x: number;
  y: number;
  /** unit vector of its motion: a diamond points along it */
  dx: number;
  dy: number;
  /** px, half its width */
  half: number;
  /** DISC, RING or DIAMOND */
  shape: number;
}

/** px, where a tail begins, bends or ends */
export interface Joint {
  x: number;
  y: number;
  /** px, half its width there */
  wide: number;
  /** 0..1: opacity there is the square */
  strong: number;
}

export function paintHead({ width, height, colours }: Pixels, head: Head, { colour, alpha }: Paint): void {
  const { x, y, dx, dy, half, shape } = head;
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

/** One stretch of a tail. */
export function paintTail(
  { width, height, colours }: Pixels,
  front: Joint,
  back: Joint,
  { colour, alpha }: Paint,
): void {
  const { x: x0, y: y0 } = front;
  const { x: x1, y: y1 } = back;
  // Walked along the axis on which it reaches farther, one slice of pixels after the other.
  const flat = Math.abs(x1 - x0) >= Math.abs(y1 - y0);
  const [from, to, start, end] = flat ? [x0, x1, y0, y1] : [y0, y1, x0, x1];
  const run = to - from;
  if (Math.abs(run) < 0.2) return;
  const slope = (end - start) / run;
  // px of a slice that a px across the tail takes
  const slant = Math.sqrt(1 + slope * slope);
  const [most, wide] = flat ? [width, height] : [height, width];
  const [step, stride] = flat ? [1, width] : [width, 1];
  const first = Math.max(0, Math.ceil(Math.min(from, to) - 0.5));
  const last = Math.min(most - 1, Math.floor(Math.max(from, to) - 0.5));
  for (let i = first; i <= last; i++) {
    const off = i + 0.5 - from;
    const along = off / run;
    const strong = front.strong + (back.strong - front.strong) * along;
    const opacity = alpha * strong * strong;
    const reach = front.wide + (back.wide - front.wide) * along + 0.5;
    const middle = start + slope * off;
    const near = Math.max(0, Math.floor(middle - reach * slant));
    const far = Math.min(wide - 1, Math.floor(middle + reach * slant));
    for (let j = near; j <= far; j++) {
      const cover = reach - Math.abs(j + 0.5 - middle) / slant;
      const laid = cover < 1 ? opacity * cover : opacity;
      if (laid > 0.02) lay(colours, i * step + j * stride, colour, laid);
    }
  }
}
