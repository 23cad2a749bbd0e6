/** One room over two processes: each hears what is said in the other. */
import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { execPath } from "node:process";
import { afterAll, beforeAll, expect, test } from "vitest";
import { ASK, answer, phoneOf, smallKit, stageOf } from "./lines.ts";

const hasRedis = spawnSync("redis-server", ["--version"]).status === 0;
if (!hasRedis) console.warn("redis-server is not installed: the test of two processes is skipped");

const started: ChildProcess[] = [];
/** Resolves with what the pattern finds in the process's output. */
const start = (command: string, args: readonly string[], ready: RegExp) =>
  new Promise<RegExpExecArray>((done, fail) => {
    const child = spawn(command, args, { stdio: ["ignore", "pipe", "pipe"] });
    started.push(child);
    let text = "";
    const read = (data: Buffer) => {
      text += data;
      const found = ready.exec(text);
      if (found) done(found);
    };
    child.stdout.on("data", read);
    child.stderr.on("data", read);
    child.on("exit", () => fail(new Error(text)));
  });

let redis = "";
beforeAll(async () => {
  if (!hasRedis) return;
  const port = 20_000 + Math.floor(Math.random() * 20_000);
  await start(
    "redis-server",
    ["--port", String(port), "--bind", "127.0.0.1", "--save", ""],
    /Ready to accept/,
  );
  redis = `redis://127.0.0.1:${port}`;
});
afterAll(() => {
  for (const child of started.reverse()) child.kill("SIGKILL");
});

async function open(): Promise<{ port: number; code: string; key: string }> {
  const kit = smallKit();
  const args = [
    "--import",
    "tsx",
    "src/cli/audience.ts",
    "--port",
    "0",
    "--host",
    "127.0.0.1",
    "--redis",
    redis,
    "--folder",
    kit,
  ];
  const [, port, code, key] = await start(execPath, args, /localhost:(\d+)\/stage#(\w+)\.(\w+)\n.*Code/);
  return { port: Number(port), code: code!, key: key! };
}

test.skipIf(!hasRedis)(
  "phones of two processes are counted together, locked together, and found again by a third",
  async () => {
    const [first, second] = await Promise.all([open(), open()]);
    const { code, key } = first;
    const there = { ...second, code, key };
    const stage = await stageOf(first);
    await expect.poll(() => stage.last("held")).toBeDefined();
    stage.say(ASK);
    const [a, b] = [await phoneOf(first, 1), await phoneOf(there, 2)];
    await expect.poll(() => a.last("ask")?.question).toBeTruthy();
    await expect.poll(() => b.last("ask")?.question).toBeTruthy();
    a.say(answer("more"));
    b.say(answer("less"));
    await expect.poll(() => stage.last("counts")?.tally).toEqual({ more: 1, less: 1 });
    await expect.poll(() => stage.last("hall"), { timeout: 10_000 }).toMatchObject({ phones: 2 });
    // The stage moves to the other process, and the first one still hears it.
    stage.socket.close();
    const moved = await stageOf(there);
    await expect.poll(() => moved.last("counts")?.tally).toEqual({ more: 1, less: 1 });
    moved.say({ ...ASK, locked: true });
    await expect.poll(() => a.last("ask")?.locked).toBe(true);
    const third = { ...(await open()), code, key };
    const again = await phoneOf(third, 1);
    await expect.poll(() => again.last("own")).toMatchObject({ own: "more" });
    const wrong = await stageOf({ ...third, key: second.key });
    expect(await wrong.closed).toBe(4003);
    moved.say({ kind: "end" });
    expect(await Promise.all([a.closed, b.closed, again.closed])).toEqual([4010, 4010, 4010]);
    const late = await phoneOf(third, 3);
    expect(await late.closed).toBe(4004);
  },
);
