/** Rooms that several processes hold together: what is said in one goes through a Redis stream, so all hear it in one order. */
import { randomUUID } from "node:crypto";
import type { HeldRoom } from "./held-room.ts";
import { type Journal, parse } from "./journal.ts";
import type { OpenRoom, Rooms } from "./reception.ts";
import { roomEntry } from "./room.ts";
import { digestOf } from "./room-keys.ts";
import { holdFrom } from "./rooms.ts";

/** s: a room that nobody ended */
const STALE = 24 * 3600;
/** s in which every process hears that a talk has ended */
const HEARD = 60;
/** ms between two counts of the phones of all processes; a process that was not heard of for three is gone */
const PRESENCE = 2000;
/** ms until a broken line is tried again */
const AGAIN = 500;

export interface RedisRooms extends Rooms {
  open(code: string, key: string): Promise<void>;
  close(): Promise<void>;
}

type Client = ReturnType<typeof import("redis")["createClient"]>;

/** @param onFault hears what keeps Redis from being reached, at each attempt; it is tried again meanwhile */
export async function redisRooms(url: string, onFault: (message: string) => void): Promise<RedisRooms> {
  const { createClient } = await import("redis");
  const connect = async (): Promise<Client> => {
    const client: Client = createClient({ url });
    client.on("error", ({ message }: Error) => onFault(message));
    await client.connect();
    return client;
  };
  const client = await connect();
  const rooms = new Map<string, Promise<OpenRoom | null>>();
  const journals = new Set<Journal>();
  const hold = async (code: string): Promise<OpenRoom | null> => {
    const keyDigest = await client.get(keyOf(code));
    if (keyDigest === null) return null;
    const journal = streamJournal(client, await connect(), code);
    journals.add(journal);
    try {
      const room: HeldRoom = await holdFrom(journal, () => {
        journals.delete(journal);
        rooms.delete(code);
      });
      return { room, keyDigest };
    } catch (fault) {
      journals.delete(journal);
      await journal.close();
      throw fault;
    }
  };
  return {
    async open(code, key) {
      await client.set(keyOf(code), digestOf(key), { expiration: { type: "EX", value: STALE } });
    },
    async find(code) {
      const known = rooms.get(code) ?? hold(code);
      rooms.set(code, known);
      let found: OpenRoom | null = null;
      try {
        found = await known;
      } finally {
        if (!found) rooms.delete(code);
      }
      return found;
    },
    async close() {
      for (const journal of journals) await journal.close();
      client.destroy();
    },
  };
}

const keyOf = (code: string) => `lungward:audience:${code}:key`;

function streamJournal(client: Client, reader: Client, code: string): Journal {
  const stream = `lungward:audience:${code}:entries`;
  const presence = `lungward:audience:${code}:phones`;
  const self = randomUUID();
  const others = phonesElsewhere(client, presence, self);
  let open = true;
  const close = async () => {
    if (!open) return;
    open = false;
    others.stop();
    reader.destroy();
  };
  return {
    async follow(hear, recount) {
      const take = (message: Record<string, string>) => {
        const entry = parse(roomEntry, message.entry ?? "");
        if (entry) hear(entry);
      };
      let last = "0";
      for (const { id, message } of (await client.xRange(stream, "-", "+")) ?? []) {
        last = id;
        take(message);
      }
      const read = async () => {
        while (open) {
          const found = await reader.xRead({ key: stream, id: last }, { BLOCK: 0 }).catch(() => null);
          for (const part of found ?? [])
            for (const { id, message } of part?.messages ?? []) {
              last = id;
              take(message);
            }
          if (!found && open) await new Promise((done) => setTimeout(done, AGAIN));
        }
      };
      void read();
      others.follow(recount);
    },
    add(entry) {
      // What cannot be kept is not confirmed, and the phone sends it again once its line was made anew.
      void client
        .xAdd(stream, "*", { entry: JSON.stringify(entry) })
        .then(() => client.expire(stream, STALE, "NX"))
        .catch(() => {});
    },
    elsewhere: (here) => others.count(here),
    close,
    async erase() {
      await close();
      await Promise.all([client.del([keyOf(code), presence]), client.expire(stream, HEARD)]).catch(() => {});
    },
  };
}

/** How many phones hang on the other processes, each of which says so every two seconds. */
function phonesElsewhere(client: Client, key: string, self: string) {
  let own = 0;
  let sum = 0;
  const known = new Map<string, { said: string; missed: number }>();
  const refresh = async (recount: () => void) => {
    // A number that changes each time shows that its process is alive, whatever clocks say.
    await client.hSet(key, self, `${own} ${performance.now()}`);
    await client.expire(key, STALE);
    const all = await client.hGetAll(key);
    let now = 0;
    for (const [name, said] of Object.entries(all)) {
      if (name === self) continue;
      const before = known.get(name);
      const missed = before?.said === said ? before.missed + 1 : 0;
      known.set(name, { said, missed });
      if (missed < 3) now += Number(said.split(" ")[0]);
    }
    if (now !== sum) recount();
    sum = now;
  };
  let timer: ReturnType<typeof setInterval> | undefined;
  return {
    count(here: number) {
      own = here;
      return sum;
    },
    follow(recount: () => void) {
      timer = setInterval(() => void refresh(recount).catch(() => {}), PRESENCE);
    },
    stop: () => clearInterval(timer),
  };
}
