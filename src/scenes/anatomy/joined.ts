/** What is drawn at some stages only; it is fetched before the first of these is shown. */
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { Theme } from "../theme/theme.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import type { Bounds, Ink, Outlines } from "./painted-sheet.ts";
import type { Course, CourseOf } from "./side-course.ts";

export type Saturations = Circulation["saturations"];

export interface Seen {
  readonly outlines: Outlines;
  readonly saturations: Saturations;
  readonly theme: Theme;
}

interface Joined {
  /** before its blood: the wall of an atrium that is the pathway itself, or the walls of a lateral tunnel */
  sewn(ink: Ink, bounds: Bounds, anatomy: Anatomy, seen: Seen): void;
  /** and behind its blood */
  lining(ink: Ink, bounds: Bounds, anatomy: Anatomy, seen: Seen): void;
  /** veins that pass behind it and shine through, which move apart from its lining */
  through(ink: Ink, bounds: Bounds, anatomy: Anatomy, seen: Seen): void;
  /** clears most of what the aorta covers of an atrium whose blood is to be seen, but for its edges */
  clears(ink: Ink, anatomy: Anatomy): void;
  /** what shows in an atrium that both great veins once entered */
  within(ink: Ink, anatomy: Anatomy, saturations: Saturations, theme: Theme): void;
  /** the inferior vena cava's end in its floor */
  floor(ink: Ink, anatomy: Anatomy): void;
  /** ways of blood through an atrium that was made one, as far as the valve; null where it was not */
  mixing(anatomy: Anatomy, course: CourseOf): readonly Course[] | null;
}

let known: Joined | null = null;

/** Null until it has been fetched. */
export const joined = (): Joined | null => known;

export function setJoined(painters: Joined): void {
  known = painters;
}
