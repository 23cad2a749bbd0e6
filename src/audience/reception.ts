/** Lets callers in: a phone by its room's code, a stage by code and key. Codes and keys cannot be tried at leisure. */
import { ENDED, type Ending } from "./ended.ts";
import type { Caller, HeldRoom } from "./held-room.ts";
import { fromPhone, fromStage, LONGEST, readMessage } from "./line-messages.ts";
import type { Limit } from "./rate-limit.ts";
import { digestOf, isSameDigest } from "./room-keys.ts";

export interface OpenRoom {
  readonly room: HeldRoom;
  readonly keyDigest: string;
}

export interface Rooms {
  /** null where there is none of this code; rejects where that cannot be known now. */
  find(code: string): Promise<OpenRoom | null>;
}

export type Side = "phone" | "stage";

export interface Reception {
  hear(caller: Caller, from: Side, data: string): Promise<void>;
  leave(caller: Caller): void;
  isIn(caller: Caller): boolean;
}

export interface ReceptionOptions {
  readonly rooms: Rooms;
  /** Wrong codes and keys of an address. */
  readonly wrong: Limit;
  /** Phones new to a room, of an address. */
  readonly joins: Limit;
  /** Where phones find their page. */
  readonly address: string;
}

export function receive({ rooms, wrong, joins, address }: ReceptionOptions): Reception {
  const inside = new Map<Caller, HeldRoom>();
  const refuse = (caller: Caller, code: Ending) => {
    wrong.take(caller.address);
    caller.end(code);
  };
  const hearPhone = async (caller: Caller, data: string) => {
    const message = readMessage(fromPhone, data, LONGEST.phone);
    if (!message) return caller.end(ENDED.refused);
    const room = inside.get(caller);
    if (room) return room.hearPhone(caller, message);
    if (message.kind !== "join") return caller.end(ENDED.refused);
    const found = await rooms.find(message.code);
    const known = found?.room.knows(message.token) ?? false;
    // Once an address has tried too often nobody learns there whether a code is right; a phone that was in has shown that it knew.
    if (!found || !(known || wrong.left(caller.address))) return refuse(caller, ENDED.noRoom);
    if (!known && !joins.take(caller.address)) return caller.end(ENDED.full);
    inside.set(caller, found.room);
    found.room.join(caller, message.token, message.language);
  };
  const hearStage = async (caller: Caller, data: string) => {
    const message = readMessage(fromStage, data, LONGEST.stage);
    if (!message) return caller.end(ENDED.refused);
    const room = inside.get(caller);
    if (room) return room.hearStage(message);
    if (message.kind !== "hold") return caller.end(ENDED.refused);
    const found = wrong.left(caller.address) ? await rooms.find(message.code) : null;
    if (!found) return refuse(caller, ENDED.noRoom);
    if (!isSameDigest(digestOf(message.key), found.keyDigest)) return refuse(caller, ENDED.wrongKey);
    inside.set(caller, found.room);
    found.room.hold(caller, address);
  };
  return {
    hear: (caller, from, data) => (from === "phone" ? hearPhone(caller, data) : hearStage(caller, data)),
    leave(caller) {
      inside.get(caller)?.leave(caller);
      inside.delete(caller);
    },
    isIn: (caller) => inside.has(caller),
  };
}
