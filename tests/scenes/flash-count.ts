/**
 * Counts flashes in a run of pictures after WCAG 2.2, 2.3.1. A change counts when relative luminance goes 0.1 or more the other
 * way and the darker of the two is under 0.8, or when redness (320 times red over green and blue) goes 20 or more to or from a
 * saturated red; two changes make a pulse.
 */

/** The block of 2.3.1, as a share of the picture's sides: 341 x 256 px of 1024 x 768 */
const BLOCK = [1 / 3, 1 / 3] as const;
/** Pulses within a second that are allowed anywhere. */
const MAX = 3;

interface Flashes {
  /** px2 of the worst block's points that pulsed more often than allowed */
  readonly light: number;
  readonly red: number;
  /** most pulses that any one point made */
  readonly most: number;
  /** px2 of the worst block's points that went the same way between two pictures: what 2.3.1 calls concurrent */
  readonly atOnce: number;
}

export interface FlashCount {
  /** The next picture, RGBA. */
  add(data: Uint8Array): void;
  /** All pulses so far are taken as one second's. */
  result(): Flashes;
}

const LINEAR = Float32Array.from({ length: 256 }, (_, i) => {
  const part = i / 255;
  return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
});

/** One quantity of every point: where it last turned, which way it goes, how often it turned. */
function turns(points: number, least: number, ceiling: number) {
  const extreme = new Float32Array(points);
  const way = new Int8Array(points).fill(1);
  const count = new Uint8Array(points);
  return {
    count,
    /** The way that it turns: 1 up, -1 down, 0 not at all. */
    see(k: number, value: number, first: boolean): number {
      if (first) {
        extreme[k] = value;
        return 0;
      }
      const back = (extreme[k]! - value) * way[k]!;
      if (back <= 0) extreme[k] = value;
      else if (back >= least && Math.min(value, extreme[k]!) < ceiling) {
        count[k]!++;
        way[k] = -way[k]!;
        extreme[k] = value;
        return way[k]!;
      }
      return 0;
    },
  };
}

export function flashCount(width: number, height: number): FlashCount {
  const points = width * height;
  const light = turns(points, 0.1, 0.8);
  const red = turns(points, 20, Number.POSITIVE_INFINITY);
  const ways = [light, red].map(() => new Int8Array(points));
  let atOnce = 0;
  let first = true;
  // The first rise is not seen as a turn: it is counted here.
  const pulses = (changes: number): number => (changes + 1) >> 1;
  const [wide, high] = [Math.round(width * BLOCK[0]), Math.round(height * BLOCK[1])];
  const worst = (counts: (k: number) => boolean): number => {
    let most = 0;
    for (let top = 0; top + high <= height; top += high >> 2) {
      for (let left = 0; left + wide <= width; left += wide >> 2) {
        let area = 0;
        for (let y = top; y < top + high; y++)
          for (let x = left; x < left + wide; x++) if (counts(y * width + x)) area++;
        most = Math.max(most, area);
      }
    }
    return most;
  };
  return {
    add(data) {
      for (let k = 0; k < points; k++) {
        const r = LINEAR[data[4 * k]!]!;
        const g = LINEAR[data[4 * k + 1]!]!;
        const b = LINEAR[data[4 * k + 2]!]!;
        ways[0]![k] = light.see(k, 0.2126 * r + 0.7152 * g + 0.0722 * b, first);
        ways[1]![k] = red.see(k, r >= 0.8 * (r + g + b) ? Math.max(0, r - g - b) * 320 : 0, first);
      }
      for (const turned of ways)
        for (const way of [1, -1]) {
          // A block cannot hold more than the whole picture has.
          const all = turned.reduce((sum, each) => (each === way ? sum + 1 : sum), 0);
          if (all <= atOnce) continue;
          atOnce = Math.max(
            atOnce,
            worst((k) => turned[k] === way),
          );
        }
      first = false;
    },
    result() {
      let most = 0;
      for (const { count } of [light, red]) for (const n of count) most = Math.max(most, pulses(n));
      const tooOften = ({ count }: { readonly count: Uint8Array }) => worst((k) => pulses(count[k]!) > MAX);
      return { light: tooOften(light), red: tooOften(red), most, atOnce };
    },
  };
}
