/** A file that cannot be written ends no talk. */
import { appendFileSync, mkdirSync, renameSync, rmdirSync } from "node:fs";
import { expect, test } from "vitest";
import { type Journal, openFile } from "../../src/audience/journal.ts";
import type { RoomEntry } from "../../src/audience/room.ts";
import { tellOnce } from "../../src/audience/server-faults.ts";
import { newFile, token } from "./lines.ts";

async function heardOf(journal: Journal): Promise<readonly RoomEntry[]> {
  const heard: RoomEntry[] = [];
  await journal.follow(
    (entry) => heard.push(entry),
    () => {},
  );
  return heard;
}

test("a talk goes on without its file, says so once, and keeps what is said once the file is back", async () => {
  const told: string[] = [];
  const file = newFile();
  const open = () =>
    openFile(
      file,
      Date.now(),
      tellOnce((message) => told.push(message)),
    );
  const { code, journal } = open();
  const heard = await heardOf(journal);
  const join = async (n: number) => {
    journal.add({ kind: "join", token: token(n) });
    await expect.poll(() => heard.length).toBe(n);
  };
  await join(1);
  renameSync(file, `${file}.away`);
  mkdirSync(file);
  await join(2);
  await join(3);
  expect(told).toEqual([expect.stringContaining(`${file}: EISDIR`)]);
  rmdirSync(file);
  renameSync(`${file}.away`, file);
  // As a disk leaves it that is full in the middle of a line.
  appendFileSync(file, '\n{"kind":"jo');
  await join(4);
  await journal.close();
  const again = open();
  expect(again.code).toBe(code);
  expect(await heardOf(again.journal)).toEqual([heard[0], heard[3]]);
  await again.journal.close();
});
