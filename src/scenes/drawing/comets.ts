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

/** 2^16 over a whole number of 255ths, rounded: a division for each pixel would take longer than all the rest. */
const PARTS = Uint32Array.from({ length: 256 }, (_, whole) => Math.round(65536 / Math.max(1, whole)));

/** Lays `colour` over what is there, `alpha` of 255: adds up as one coat of paint on another does. In whole numbers. */
function lay(colours: Uint32Array, k: number, colour: number, alpha: number): void {
  const under = colours[k]!;
  if (alpha >= 254) colours[k] = colour | 0xff000000;
  else if (under === 0) colours[k] = (alpha << 24) | colour;
  else {
    const whole = alpha + (((under >>> 24) * (255 - alpha) * 257 + 32896) >>> 16);
    // of 256
    const share = (alpha * PARTS[whole]! + 128) >>> 8;
    const rest = 256 - share;
    const ends = (Math.imul(under & 0xff00ff, rest) + Math.imul(colour & 0xff00ff, share) + 0x800080) >>> 8;
    const green = (Math.imul(under & 0xff00, rest) + Math.imul(colour & 0xff00, share) + 0x8000) >>> 8;
    colours[k] = (whole << 24) | (ends & 0xff00ff) | (green & 0xff00);
  }
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
  const full = 255 * alpha;
  const top = Math.max(0, Math.floor(y - reach)) | 0;
  const bottom = Math.min(height - 1, Math.floor(y + reach)) | 0;
  const left = Math.max(0, Math.floor(x - reach)) | 0;
  const right = Math.min(width - 1, Math.floor(x + reach)) | 0;
  for (let j = top; j <= bottom; j++) {
    const py = j + 0.5 - y;
    for (let i = left; i <= right; i++) {
      const px = i + 0.5 - x;
      let cover: number;
      if (shape === DIAMOND)
        cover = 0.5 + (half - Math.abs(px * dx + py * dy) - Math.abs(py * dx - px * dy)) * Math.SQRT1_2;
      else {
        const radius = Math.sqrt(px * px + py * py);
        cover = reach - radius;
        if (shape === RING) cover = Math.min(cover, radius - half / 2 + 0.5);
      }
      if (cover > 0.02)
        lay(colours, j * width + i, colour, (cover < 1 ? full * cover + 0.5 : full + 0.5) | 0);
    }
  }
}

/** Of 255: less is not seen. */
const FAINT = 5;

/** One stretch of a tail. */
export function paintTail(
  { width, height, colours }: Pixels,
  front: Joint,
  back: Joint,
  { colour, alpha }: Paint,
): void {
  // Walked along the axis on which it reaches farther, one slice of pixels after the other.
  const flat = Math.abs(back.x - front.x) >= Math.abs(back.y - front.y);
  const from = flat ? front.x : front.y;
  const start = flat ? front.y : front.x;
  const run = (flat ? back.x : back.y) - from;
  if (Math.abs(run) < 0.2) return;
  const slope = ((flat ? back.y : back.x) - start) / run;
  // px of a slice that a px across the tail takes
  const slant = Math.sqrt(1 + slope * slope);
  const across = 1 / slant;
  const most = flat ? width : height;
  const wide = flat ? height : width;
  const step = flat ? 1 : width;
  const stride = flat ? width : 1;
  const first = Math.max(0, Math.ceil(Math.min(from, from + run) - 0.5)) | 0;
  const last = Math.min(most - 1, Math.floor(Math.max(from, from + run) - 0.5)) | 0;
  for (let i = first; i <= last; i++) {
    const off = i + 0.5 - from;
    const along = off / run;
    const strong = front.strong + (back.strong - front.strong) * along;
    const opacity = 255 * alpha * strong * strong;
    if (opacity < FAINT) continue;
    const reach = front.wide + (back.wide - front.wide) * along + 0.5;
    const middle = start + slope * off;
    const near = Math.max(0, Math.floor(middle - reach * slant)) | 0;
    const far = Math.min(wide - 1, Math.floor(middle + reach * slant)) | 0;
    for (let j = near; j <= far; j++) {
      const cover = reach - Math.abs(j + 0.5 - middle) * across;
      const laid = cover < 1 ? opacity * cover : opacity;
      if (laid >= FAINT) lay(colours, i * step + j * stride, colour, (laid + 0.5) | 0);
    }
  }
}
