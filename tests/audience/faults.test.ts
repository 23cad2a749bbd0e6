/** What a fault of the store does: nobody is told that there is no such room, and the server goes on. */
import { beforeEach, expect, test, vi } from "vitest";
import type { OpenRoom } from "../../src/audience/reception.ts";
import { redisRooms } from "../../src/audience/redis-rooms.ts";
import { digestOf, newCode, newKey } from "../../src/audience/room-keys.ts";
import { caller, held } from "./held.ts";
import { phoneOf, serveRooms, stageOf, token } from "./lines.ts";

const client = vi.hoisted(() => ({
  ...{ on: vi.fn(), connect: vi.fn(), destroy: vi.fn() },
  ...{ get: vi.fn(), xRange: vi.fn(), xRead: vi.fn(), xAdd: vi.fn(), expire: vi.fn() },
}));
vi.mock("redis", () => ({ createClient: () => client }));
beforeEach(() => {
  vi.resetAllMocks();
  client.xRange.mockResolvedValue([]);
  client.xRead.mockReturnValue(new Promise(() => {}));
  client.xAdd.mockResolvedValue("1-0");
  client.expire.mockResolvedValue(1);
});

const [code, key] = [newCode(), newKey()];

test("a room that could not be looked for ends a line with 1011, and is found at the next call", async () => {
  const open: OpenRoom = { room: (await held()).room, keyDigest: digestOf(key) };
  let broken = true;
  const find = async () => {
    if (broken) throw new Error("the store is away");
    return open;
  };
  const audience = { ...(await serveRooms({ find })), code, key };
  try {
    expect(await (await phoneOf(audience, 1)).closed).toBe(1011);
    expect(await (await stageOf(audience)).closed).toBe(1011);
    broken = false;
    const again = await phoneOf(audience, 1);
    await expect.poll(() => again.last("ask")).toBeDefined();
  } finally {
    await audience.close();
  }
});

test("a fault of Redis is no missing room, whether the key or the entries could not be read", async () => {
  const rooms = await redisRooms("redis://127.0.0.1", () => {});
  client.get.mockRejectedValueOnce(new Error("away")).mockResolvedValue(digestOf(key));
  await expect(rooms.find(code)).rejects.toThrow("away");
  client.xRange.mockRejectedValueOnce(new Error("away too"));
  await expect(rooms.find(code)).rejects.toThrow("away too");
  expect(client.destroy).toHaveBeenCalledTimes(1);
  expect(await rooms.find(code)).toMatchObject({ keyDigest: digestOf(key) });
  client.get.mockResolvedValue(null);
  expect(await rooms.find(newCode())).toBeNull();
  await rooms.close();
});

test("whatever is said first, the stream has an end", async () => {
  client.get.mockResolvedValue(digestOf(key));
  const rooms = await redisRooms("redis://127.0.0.1", () => {});
  const found = await rooms.find(code);
  found?.room.join(caller(), token(1), "en");
  await expect
    .poll(() => client.expire.mock.calls)
    .toEqual([[expect.stringContaining(code), 24 * 3600, "NX"]]);
  await rooms.close();
});
