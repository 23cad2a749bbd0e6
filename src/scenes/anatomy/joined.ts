/** What is drawn at some stages only; it is fetched before the first of these is shown. */
import type { ChestFrame } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import type { Bounds, Ink, Outlines } from "./painted-sheet.ts";
import type { Course, CourseOf } from "./side-course.ts";
import type { Cloth } from "./tones.ts";

interface Joined {
  /** the wall of an atrium that is the pathway itself */
  chamber(ink: Ink, bounds: Bounds, frame: ChestFrame, outlines: Outlines, theme: Theme): void;
  /** what shows in an atrium that both great veins once entered */
  within(ink: Ink, anatomy: Anatomy, theme: Theme): void;
  /** the inferior vena cava's mouth in its floor, and the stump on its roof */
  floor(ink: Ink, anatomy: Anatomy, theme: Theme): void;
  /** a lateral tunnel's two walls */
  patch(ink: Ink, graft: NonNullable<ChestFrame["graft"]>, size: number, cloth: Cloth, theme: Theme): void;
  /** ways of blood of two kinds through an atrium in which it mixes, as far as the valve */
  mixing(anatomy: Anatomy, course: CourseOf): readonly Course[];
}

let known: Joined | null = null;

/** Null until it has been fetched. */
export const joined = (): Joined | null => known;

export function setJoined(painters: Joined): void {
  known = painters;
}
