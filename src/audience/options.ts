/** What `npm run audience -- ...` may be told. */
import { networkInterfaces } from "node:os";
import { parseArgs } from "node:util";

export interface AudienceArguments {
  readonly port: number;
  readonly host: string;
  readonly folder: string;
  readonly data: string;
  readonly redis: string | null;
  readonly trustProxy: boolean;
  /** Of the whole kit as others reach it, without a slash at its end; null = this machine's own. */
  readonly address: string | null;
  readonly help: boolean;
}

export const USAGE = `npm run audience -- [options]
  --port N          port to listen at (4300)
  --host ADDRESS    address to listen at (0.0.0.0: every network of this machine)
  --address URL     where phones reach this server, such as https://talk.example.org
  --trust-proxy     take the caller's address from X-Forwarded-For: only behind a proxy of your own
  --data FILE       where answers are kept until the talk ends (.cache/audience.jsonl)
  --redis URL       rooms and counts through Redis, for several processes, instead of a file;
                    the variable LUNGWARD_REDIS does the same, and no list of processes shows its password
  --folder FOLDER   the built kit (dist/folder)
`;

const REDIS = "LUNGWARD_REDIS";
const isRedis = (address: string): boolean => /^rediss?:\/\//.test(address) && URL.canParse(address);

/** @throws Error that names the option, what was found and what is allowed */
export function readArguments(
  given: readonly string[],
  environment: Readonly<Record<string, string | undefined>> = process.env,
): AudienceArguments {
  const { values } = parseArgs({
    args: [...given],
    options: {
      port: { type: "string", default: "4300" },
      host: { type: "string", default: "0.0.0.0" },
      folder: { type: "string", default: "dist/folder" },
      data: { type: "string", default: ".cache/audience.jsonl" },
      redis: { type: "string" },
      "trust-proxy": { type: "boolean", default: false },
      address: { type: "string" },
      help: { type: "boolean", default: false },
    },
  });
  const port = Number(values.port);
  if (!Number.isInteger(port) || port < 0 || port > 65_535)
    throw new Error(`--port: found ${values.port}, allowed: 0 (any that is free) to 65535`);
  const redis = values.redis ?? (environment[REDIS] || null);
  if (redis !== null && !isRedis(redis)) {
    const option = values.redis === undefined ? REDIS : "--redis";
    throw new Error(
      `${option}: found another kind of address (not shown: it may hold a password), allowed: one such as redis://127.0.0.1:6379`,
    );
  }
  if (values.address !== undefined && !/^https?:\/\/[^/?#]+\/?$/.test(values.address))
    throw new Error(
      `--address: found ${values.address}, allowed: a host without a path, such as https://talk.example.org`,
    );
  return {
    port,
    host: values.host,
    folder: values.folder,
    data: values.data,
    redis,
    trustProxy: values["trust-proxy"],
    address: values.address?.replace(/\/$/, "") ?? null,
    help: values.help,
  };
}

/** This machine as other devices of its network name it. */
export function ownHost(): string {
  const found = Object.values(networkInterfaces())
    .flatMap((each) => each ?? [])
    .find(({ family, internal }) => family === "IPv4" && !internal);
  return found?.address ?? "127.0.0.1";
}
