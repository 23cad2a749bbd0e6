/**
 * How soon an answer counts when a whole hall answers within seconds: `npx tsx tests/bench/audience.ts` prints a table.
 * Processes of the server as they are started for a talk, phones in a process of their own; two processes need redis-server.
 */
import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { mkdtempSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { WebSocket } from "ws";

interface Room {
  readonly code: string;
  readonly key: string;
  readonly ports: readonly number[];
}

/** s in which all of a hall answer */
const SPREAD = 4;
const PACE = { connect: 40 } as const;
const children: ChildProcess[] = [];

const start = (command: string, args: readonly string[], ready: RegExp) =>
  new Promise<RegExpExecArray>((done, fail) => {
    const child = spawn(command, args, { stdio: ["ignore", "pipe", "inherit"] });
    children.push(child);
    let text = "";
    child.stdout.on("data", (data) => {
      text += data;
      const found = ready.exec(text);
      if (found) done(found);
    });
    child.on("exit", () => fail(new Error(`${command} ended: ${text}`)));
  });

async function openRoom(processes: number): Promise<Room> {
  const folder = mkdtempSync(join(tmpdir(), "audience-"));
  const store = ["--data", join(folder, "room.jsonl")];
  if (processes > 1) {
    const port = 20_000 + Math.floor(Math.random() * 20_000);
    await start(
      "redis-server",
      ["--port", String(port), "--bind", "127.0.0.1", "--save", ""],
      /Ready to accept/,
    );
    store.splice(0, 2, "--redis", `redis://127.0.0.1:${port}`);
  }
  const args = ["--import", "tsx", "src/cli/audience.ts", "--port", "0", "--host", "127.0.0.1", ...store];
  const found = await Promise.all(
    Array.from({ length: processes }, () =>
      start(process.execPath, args, /localhost:(\d+)\/stage#(\w+)\.(\w+)\n.*Code/),
    ),
  );
  const [, , code = "", key = ""] = found[0]!;
  return { code, key, ports: found.map(([, port]) => Number(port)) };
}

const open = async (port: number, side: "phone" | "stage"): Promise<WebSocket> => {
  const origin = `http://127.0.0.1:${port}`;
  const socket = new WebSocket(`ws://127.0.0.1:${port}/hall/${side}`, { origin });
  await new Promise((done, fail) => socket.on("open", done).on("error", fail));
  return socket;
};
const rest = (ms: number) => new Promise((done) => setTimeout(done, ms));
const share = (sorted: readonly number[], at: number) => sorted[Math.floor(at * (sorted.length - 1))]!;

/** ms from a tap until the phone is told that it counts, and until the stage's count has it. */
async function measure(phones: number, processes: number) {
  const { code, key, ports } = await openRoom(processes);
  const stage = await open(ports[0]!, "stage");
  const reached: number[] = [];
  stage.on("message", (data) => {
    const { kind, tally = {} } = JSON.parse(data.toString());
    if (kind !== "counts") return;
    const all = Object.values<number>(tally).reduce((sum, each) => sum + each, 0);
    while (reached.length < all) reached.push(performance.now());
  });
  stage.send(JSON.stringify({ kind: "hold", code, key }));
  const say = { en: "More of it than before", de: "Mehr davon als vorher" };
  const choices = ["more", "same", "less"].map((id) => ({ id, say }));
  const question = { key: "lesson#step", ask: say, choices, unit: null };
  stage.send(JSON.stringify({ kind: "ask", question, locked: false, result: null }));
  const hall: WebSocket[] = [];
  for (let n = 0; n < phones; n += PACE.connect)
    hall.push(
      ...(await Promise.all(
        Array.from({ length: Math.min(PACE.connect, phones - n) }, async (_, k) => {
          const phone = await open(ports[(n + k) % ports.length]!, "phone");
          const asked = new Promise((done) =>
            phone.on("message", (data) => data.toString().includes('"ask"') && done(null)),
          );
          const token = (n + k).toString(16).padStart(32, "0");
          phone.send(JSON.stringify({ kind: "join", code, token, language: n % 2 ? "de" : "en" }));
          await asked;
          return phone;
        }),
      )),
    );
  await rest(1000);
  const sent: number[] = [];
  const told = await Promise.all(
    hall.map(async (phone, n) => {
      await rest((1000 * SPREAD * n) / phones);
      const began = performance.now();
      sent.push(began);
      const own = new Promise((done) =>
        phone.on("message", (data) => data.toString().includes('"own"') && done(null)),
      );
      const answer = choices[n % 3]!.id;
      phone.send(JSON.stringify({ kind: "answer", question: question.key, answer }));
      await own;
      return performance.now() - began;
    }),
  );
  await rest(1000);
  const counted = reached.slice(0, phones).map((at, n) => at - sent[n]!);
  for (const socket of [stage, ...hall]) socket.terminate();
  for (const child of children.splice(0).reverse()) child.kill("SIGKILL");
  return { counted: reached.length, told: told.sort((a, b) => a - b), stage: counted.sort((a, b) => a - b) };
}

const runs = [
  { phones: 500, processes: 1 },
  { phones: 2000, processes: 2 },
];
console.log(
  `${cpus().length} cores, ${cpus()[0]?.model}; all answer within ${SPREAD} s; ms at p50 / p95 / most`,
);
for (const { phones, processes } of runs) {
  const redis = processes > 1;
  if (redis && spawnSync("redis-server", ["--version"]).status !== 0) {
    console.log(`| ${phones} | ${processes} | skipped: redis-server is not installed |`);
    continue;
  }
  const { counted, told, stage } = await measure(phones, processes);
  const row = (all: readonly number[]) => [0.5, 0.95, 1].map((at) => share(all, at).toFixed(0)).join(" / ");
  const store = redis ? "Redis" : "file";
  console.log(`| ${phones} | ${processes}, ${store} | ${counted} | ${row(told)} | ${row(stage)} |`);
}
