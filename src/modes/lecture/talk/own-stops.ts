/** What a talk is made of: steps of lessons, states of the bench, and the speaker's own slides. Plain data, as a talk's file holds it. */
import * as v from "valibot";
import { LONGEST_READ } from "../../../state/address.ts";
import { type OwnPerson, personSchema } from "./own-person.ts";
import { MAX_STOPS, MINUTES } from "./playlist.ts";

/** characters */
export const MAX_NOTES = 5000;
export const MAX_TITLE = 120;
export const MAX_WORDS = 1000;
/** min of one stop */
export const STOP_MINUTES = { min: 0.5, max: 60 } as const;
/** Name of a picture in the talk: letters and digits, a full stop, the ending. */
export const PICTURE_NAME = /^[a-z0-9]{1,40}\.(png|jpg|svg|webp)$/;

/** Works from a file too, which has no `randomUUID`. */
export const newPictureName = (ending: string): string =>
  `${Array.from(crypto.getRandomValues(new Uint8Array(8)), (byte) => byte.toString(16).padStart(2, "0")).join("")}.${ending}`;

const words = (longest: number) => v.optional(v.pipe(v.string(), v.maxLength(longest)), "");
const picture = v.pipe(v.string(), v.regex(PICTURE_NAME));

/** What the speaker adds to any stop. */
const own = {
  notes: words(MAX_NOTES),
  /** null = as long as the step itself asks for, else a minute */
  minutes: v.optional(
    v.nullable(v.pipe(v.number(), v.minValue(STOP_MINUTES.min), v.maxValue(STOP_MINUTES.max))),
    null,
  ),
};

/** Where the kit draws the scene. */
const person = { person: v.optional(v.nullable(personSchema), null) };

export const stopSchema = v.variant("kind", [
  v.object({
    kind: v.literal("step"),
    lesson: v.pipe(v.string(), v.minLength(1), v.maxLength(80)),
    step: v.pipe(v.string(), v.minLength(1), v.maxLength(80)),
    ...own,
    ...person,
  }),
  v.object({
    kind: v.literal("bench"),
    title: words(MAX_TITLE),
    /** The short text of its state. */
    state: v.pipe(v.string(), v.minLength(1), v.maxLength(LONGEST_READ)),
    /** Its small picture; null where none could be drawn. */
    picture: v.nullable(picture),
    ...own,
    ...person,
  }),
  v.object({ kind: v.literal("picture"), title: words(MAX_TITLE), picture, ...own }),
  v.object({ kind: v.literal("title"), title: words(MAX_TITLE), words: words(MAX_WORDS), ...own }),
  v.object({ kind: v.literal("end"), title: words(MAX_TITLE), words: words(MAX_WORDS), ...own }),
]);

export type Stop = v.InferOutput<typeof stopSchema>;
type StopKind = Stop["kind"];
export type StopOf<Kind extends StopKind> = Extract<Stop, { kind: Kind }>;
export type OwnStop = Exclude<Stop, { kind: "step" }>;

/** Pictures by their name in the talk. */
export type Pictures = ReadonlyMap<string, Blob>;

export interface TalkPlan {
  readonly title: string;
  /** Time for the whole talk. */
  readonly minutes: number;
  /** at most MAX_STOPS */
  readonly stops: readonly Stop[];
}

export const planSchema = v.object({
  title: words(MAX_TITLE),
  minutes: v.pipe(v.number(), v.minValue(MINUTES.min), v.maxValue(MINUTES.max)),
  stops: v.pipe(v.array(stopSchema), v.maxLength(MAX_STOPS)),
});

const NOTHING_OWN = { notes: "", minutes: null } as const;

export const stepStop = (lesson: string, step: string): StopOf<"step"> => ({
  kind: "step",
  lesson,
  step,
  ...NOTHING_OWN,
  person: null,
});
export const benchStop = (state: string, title: string, picture: string | null): StopOf<"bench"> => ({
  kind: "bench",
  title,
  state,
  picture,
  ...NOTHING_OWN,
  person: null,
});
export const pictureStop = (picture: string, title: string): StopOf<"picture"> => ({
  kind: "picture",
  title: title.slice(0, MAX_TITLE),
  picture,
  ...NOTHING_OWN,
});
export const wordsStop = (kind: "title" | "end", title: string): StopOf<"title"> | StopOf<"end"> => ({
  kind,
  title,
  words: "",
  ...NOTHING_OWN,
});

/** Further stops go before an end that closes the talk. */
export const withMore = (stops: readonly Stop[], more: readonly Stop[]): readonly Stop[] =>
  stops.at(-1)?.kind === "end" ? stops.toSpliced(-1, 0, ...more) : [...stops, ...more];

/** Name of the picture that a stop shows; null = it has none of its own. */
export const pictureOf = (stop: Stop): string | null => ("picture" in stop ? stop.picture : null);

/** The stop's own person; null where it has none. */
export const personAt = (stop: Stop): OwnPerson | null => ("person" in stop ? stop.person : null);

/** How many stops hold something that a link cannot. */
export const ownIn = (stops: readonly Stop[]): number => stops.filter((stop) => !fitsInLink([stop])).length;

/** Whether a link can hold all that the talk holds. */
export const fitsInLink = (stops: readonly Stop[]): boolean =>
  stops.every(
    (stop) => stop.kind === "step" && stop.notes === "" && stop.minutes === null && stop.person === null,
  );
