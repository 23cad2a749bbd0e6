/** One way that marks of blood take beyond the pathway's openings. */
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Ventricle } from "./standing.ts";

/** mm of a 5-year-old by which marks of blood in a vessel run into the one that it goes on from, fading */
export const OVERLAP = 3.5;

export interface Course {
  /** mm: its points, and their lengths along it */
  readonly x: Float32Array;
  readonly y: Float32Array;
  readonly run: Float32Array;
  /** mm from the middle at each point that a mark may keep from it */
  readonly room: Float32Array;
  /** mm at each point that blood goes in the same time as one millimetre where it is widest */
  readonly delay: Float32Array;
  /** part of its marks that show: fewer where courses run side by side, none where a part lies before it */
  readonly seen: Float32Array;
  /** the trace that moves it, and the part of it that goes this way */
  readonly flow: string;
  readonly share: number;
  /** the greatest width, mm */
  readonly widest: number;
  /** index into ORIGINS, or the lung or "lower" vein whose mixture it carries; "rich" for blood from the lungs, "arterial" for the heart's */
  readonly carries: 0 | 1 | 2 | "left" | "right" | "lower" | "rich" | "arterial";
  /** what of it the breath moves: it swells about a lung's hilum, or goes down with the diaphragm; or the beat, with a ventricle's section; 0..1 at each point */
  readonly rides?: {
    readonly about: Point | "diaphragm";
    readonly held: Float32Array;
    readonly beats?: Ventricle;
  };
  /** 1..0 at each point: part of its marks' own colour that is left where blood mixes */
  readonly unmixed?: Float32Array;
  /** it brings its part into a chamber with others: their marks are as many as what each brings, and as fast */
  readonly pooled?: true;
  /** more marks here, fewer there: mm2 of lumen that are this course's own */
  readonly area: number;
}

/** A course through a chamber: its trace with the share of it and what it carries, its width in the heart's own lengths, its points. */
export type CourseOf = (
  moved: readonly [flow: string, share: number, carries: Course["carries"]],
  width: number,
  points: readonly Point[],
) => Course;
