/** What passes between stage and speaker's window about the hall, on a line of its own: read strictly. */
import * as v from "valibot";

const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const text = (longest: number) => v.pipe(v.string(), v.maxLength(longest));

const hallReport = v.strictObject({
  kind: v.literal("hall"),
  /** Phones by the audience's server; null where only hands are raised. */
  audience: v.nullable(
    v.strictObject({
      open: v.boolean(),
      inviting: v.boolean(),
      code: text(20),
      address: text(300),
      phones: count,
      lost: count,
    }),
  ),
  /** Whether there is anything to save. */
  answered: v.boolean(),
});

const toSpeaker = v.variant("kind", [
  hallReport,
  v.strictObject({ kind: v.literal("table"), csv: text(2e6) }),
]);
const toStage = v.variant("kind", [
  v.strictObject({ kind: v.picklist(["hello", "save", "end"]) }),
  v.strictObject({ kind: v.literal("invite"), on: v.boolean() }),
]);

export type HallReport = v.InferOutput<typeof hallReport>;
export type HallToSpeaker = v.InferOutput<typeof toSpeaker>;
export type HallToStage = v.InferOutput<typeof toStage>;

const read =
  <Message>(schema: v.GenericSchema<unknown, Message>) =>
  (found: unknown): Message | null => {
    const result = v.safeParse(schema, found);
    return result.success ? result.output : null;
  };
export const readHallToSpeaker = read<HallToSpeaker>(toSpeaker);
export const readHallToStage = read<HallToStage>(toStage);

/** The id of the hall's line of a room: as secret as the room's. */
export const hallLineOf = (room: string): string => [...room].reverse().join("");
