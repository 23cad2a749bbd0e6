/** A room without a server: what is said in it counts at the next turn. */
import { type HeldRoom, holdRoom } from "../../src/audience/held-room.ts";
import type { RoomEntry } from "../../src/audience/room.ts";

export interface Held {
  readonly room: HeldRoom;
  /** What was kept of it. */
  readonly kept: readonly RoomEntry[];
}

export async function held(): Promise<Held> {
  let enter: (entry: RoomEntry) => void = () => {};
  const kept: RoomEntry[] = [];
  const none = async () => {};
  const journal = {
    async follow(hear: (entry: RoomEntry) => void) {
      enter = hear;
    },
    add(entry: RoomEntry) {
      kept.push(entry);
      void Promise.resolve().then(() => enter(entry));
    },
    ...{ elsewhere: () => 0, close: none, erase: none },
  };
  return { room: await holdRoom({ journal, soon: () => {}, onEnd: () => {} }), kept };
}

/** A caller that hears nothing unless it is told how. */
export const caller = (send: (text: string) => void = () => {}) => ({ address: "", send, end: () => {} });
