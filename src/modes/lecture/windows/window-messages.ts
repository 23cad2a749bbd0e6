/** What passes between the stage's window and the speaker's: read strictly, since any page may send anything. */
import * as v from "valibot";
import { LONGEST_READ } from "../../../state/address.ts";
import { typeOfPicture } from "../files/picture-kinds.ts";
import { hallCount, hallEvent } from "../hall/hall.ts";
import { markEvent } from "../pen/pen.ts";
import { LONGEST_SIDE, MAX_BYTES } from "../picture/picture-limits.ts";
import { LONGEST_LIST, MAX_STOPS, MINUTES } from "../talk/playlist.ts";
import type { Talk, TalkEvent } from "../talk/talk.ts";

const stop = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(MAX_STOPS));
const state = v.pipe(v.string(), v.maxLength(LONGEST_READ));

const talkEvent = v.variant("kind", [
  v.strictObject({ kind: v.picklist(["next", "back", "first", "last", "hold", "script"]) }),
  v.strictObject({ kind: v.literal("go"), at: stop }),
  v.strictObject({ kind: v.literal("blank"), to: v.picklist(["black", "white"]) }),
  v.strictObject({ kind: v.literal("aside"), state }),
]) satisfies v.GenericSchema<unknown, TalkEvent>;

export const talkSchema = v.strictObject({
  at: stop,
  count: stop,
  blank: v.picklist(["none", "black", "white"]),
  heldAt: v.nullable(stop),
  aside: v.nullable(state),
}) satisfies v.GenericSchema<unknown, Talk>;

const side = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(LONGEST_SIDE));

/** The stage's picture as a JPEG. */
const picture = v.strictObject({
  kind: v.literal("picture"),
  bytes: v.pipe(
    v.instance(ArrayBuffer),
    v.check(
      (bytes) => bytes.byteLength <= MAX_BYTES && typeOfPicture(new Uint8Array(bytes)) === "image/jpeg",
    ),
  ),
  width: side,
  height: side,
  /** Its window lies under another one: browsers then draw nothing anew. */
  covered: v.boolean(),
});

const talkReport = v.strictObject({
  kind: v.literal("talk"),
  talk: talkSchema,
  /** The playlist as in a link, and its time. */
  list: v.pipe(v.string(), v.maxLength(LONGEST_LIST)),
  minutes: v.pipe(v.number(), v.minValue(MINUTES.min), v.maxValue(MINUTES.max)),
  /** ms since 1970 at which the talk began; null = not yet */
  began: v.nullable(v.pipe(v.number(), v.minValue(0), v.maxValue(8.64e15))),
  paused: v.boolean(),
  /** The room as a reader: answers stand at the same places in both windows. */
  reader: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(0xffff_ffff)),
  /** What the hall answers to the question in view; null = none is asked. */
  hall: v.nullable(hallCount),
});

const toSpeaker = v.variant("kind", [talkReport, picture]);

const toRoom = v.variant("kind", [
  /** `look`: the speaker's window wants to see the stage */
  v.strictObject({ kind: v.picklist(["hello", "look"]) }),
  v.strictObject({ kind: v.literal("event"), event: talkEvent }),
  v.strictObject({ kind: v.literal("hall"), event: hallEvent }),
  v.strictObject({ kind: v.literal("mark"), event: markEvent }),
  v.strictObject({ kind: v.literal("pause") }),
]);

export type TalkReport = v.InferOutput<typeof talkReport>;
export type StagePictureMessage = v.InferOutput<typeof picture>;
export type ToSpeaker = v.InferOutput<typeof toSpeaker>;
export type ToRoom = v.InferOutput<typeof toRoom>;

/** null for what is none of ours, or is of a version to come. */
export const readToSpeaker = (found: unknown): ToSpeaker | null => read(toSpeaker, found);
export const readToRoom = (found: unknown): ToRoom | null => read(toRoom, found);

function read<Message>(schema: v.GenericSchema<unknown, Message>, found: unknown): Message | null {
  const result = v.safeParse(schema, found);
  return result.success ? result.output : null;
}
