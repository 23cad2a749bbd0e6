/** `npm run audience`: serves the built kit, opens a room that a hall answers in by phone, and prints where. */
import { existsSync, mkdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { openFile } from "../audience/journal.ts";
import { type AudienceArguments, ownHost, readArguments, USAGE } from "../audience/options.ts";
import type { Rooms } from "../audience/reception.ts";
import { redisRooms } from "../audience/redis-rooms.ts";
import { newCode, newKey } from "../audience/room-keys.ts";
import { oneRoom } from "../audience/rooms.ts";
import { openAudience } from "../audience/server.ts";
import { tellOnce } from "../audience/server-faults.ts";
import { messageOf } from "../sim/checked/message-of.ts";

const print = (text: string) => process.stdout.write(`${text}\n`);
const warn = tellOnce((message) => process.stderr.write(`${message}\n`));
const fail = (error: unknown) => {
  warn(messageOf(error));
  process.exit(1);
};

interface Opened {
  readonly code: string;
  readonly key: string;
  readonly rooms: Rooms;
  readonly close: () => Promise<void>;
}

const ended = () => print("The talk has ended: its answers are erased. Start again for another room.");

async function openRooms({ redis, data }: AudienceArguments): Promise<Opened> {
  if (redis !== null) {
    const rooms = await redisRooms(redis, (message) => warn(`Redis: ${message}`));
    const [code, key] = [newCode(), newKey()];
    await rooms.open(code, key);
    return { code, key, rooms, close: rooms.close };
  }
  mkdirSync(dirname(data), { recursive: true });
  const file = openFile(data, Date.now(), warn);
  return { ...file, rooms: await oneRoom(file, ended), close: file.journal.close };
}

async function start(given: AudienceArguments) {
  const { folder, port, host, trustProxy } = given;
  if (!existsSync(join(folder, "phone.html")))
    throw new Error(`no built kit in ${folder}: run npm run build first`);
  const { code, key, rooms, close } = await openRooms(given);
  const home = (at: number) => given.address ?? `http://${ownHost()}:${at}`;
  const origins = given.address ? [given.address] : [];
  const audience = await openAudience({
    ...{ rooms, folder, port, host, trustProxy, origins, onFault: warn },
    address: (at) => `${home(at)}/phone`,
  });
  const stage = given.address ?? `http://localhost:${audience.port}`;
  print(`Stage, for the speaker alone: ${stage}/stage#${code}.${key}`);
  print(`Phones: ${audience.address}   Code: ${code}`);
  const stop = () =>
    void audience
      .close()
      .then(close)
      .then(() => process.exit(0));
  process.on("SIGINT", stop);
  process.on("SIGTERM", stop);
  process.on("unhandledRejection", fail);
}

try {
  const given = readArguments(process.argv.slice(2));
  if (given.help) print(USAGE);
  else start(given).catch(fail);
} catch (error) {
  fail(error);
}
