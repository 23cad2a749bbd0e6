/** The audience's server: the kit's pages, a socket for phones and one for the stage, each bounded in size and rate. */
import { createServer, type IncomingMessage } from "node:http";
import type { AddressInfo } from "node:net";
import { type WebSocket, WebSocketServer } from "ws";
import { callerAddress } from "./caller-address.ts";
import { callerOf, sendTo } from "./caller-socket.ts";
import { ENDED } from "./ended.ts";
import { LONGEST } from "./line-messages.ts";
import { limit } from "./rate-limit.ts";
import { type Rooms, receive, type Side } from "./reception.ts";
import { serveSite } from "./site.ts";

export interface AudienceOptions {
  readonly rooms: Rooms;
  /** The built kit. */
  readonly folder: string;
  /** 0 = any that is free */
  readonly port: number;
  readonly host: string;
  /** Where phones find their page; told to the stage. */
  readonly address: (port: number) => string;
  /** Whether a reverse proxy in front names the caller's address. */
  readonly trustProxy: boolean;
  /** Further pages that may connect, such as "https://example.org", besides those of the host that is asked. */
  readonly origins: readonly string[];
  /** Hears what keeps a file of the kit from being served. */
  readonly onFault: (message: string) => void;
}

export interface Audience {
  readonly port: number;
  readonly address: string;
  close(): Promise<void>;
}

/** Wrong codes and keys of one address; a hall behind one address mistypes now and then. */
const WRONG = { many: 60, seconds: 600 };
/** New phones of one address: a hall behind one address comes in within a minute. */
const JOINS = { many: 2500, seconds: 600 };
const RATE = { phone: { many: 20, seconds: 10 }, stage: { many: 120, seconds: 10 } } as const;
const MAX_CONNECTIONS = 6000;
/** ms between signs of life, in both directions */
const HERE = 15_000;
/** ms in which a caller must say who it is */
const STRANGER = 10_000;

export async function openAudience(options: AudienceOptions): Promise<Audience> {
  const server = createServer(serveSite(options.folder, options.onFault));
  await new Promise<void>((done, fail) => {
    server.once("error", fail);
    server.listen(options.port, options.host, done);
  });
  const { port } = server.address() as AddressInfo;
  const address = options.address(port);
  const reception = receive({
    rooms: options.rooms,
    wrong: limit(WRONG.many, WRONG.seconds, Date.now),
    joins: limit(JOINS.many, JOINS.seconds, Date.now),
    address,
  });
  const sockets = {
    phone: new WebSocketServer({ noServer: true, maxPayload: 4 * LONGEST.phone, perMessageDeflate: false }),
    stage: new WebSocketServer({ noServer: true, maxPayload: 4 * LONGEST.stage, perMessageDeflate: false }),
  };
  const alive = new Set<WebSocket>();
  const admit = (opened: WebSocket, request: IncomingMessage, side: Side) => {
    const caller = callerOf(opened, callerAddress(request, options.trustProxy));
    const rate = limit(RATE[side].many, RATE[side].seconds, Date.now);
    alive.add(opened);
    const stranger = setTimeout(() => {
      if (!reception.isIn(caller)) opened.close(ENDED.refused);
    }, STRANGER);
    // One after another: a caller is let in before its next message is read.
    let heard = Promise.resolve();
    opened.on("message", (data, binary) => {
      if (binary || !rate.take("")) return opened.close(ENDED.refused);
      const text = data.toString();
      heard = heard
        .then(() => (opened.readyState === opened.OPEN ? reception.hear(caller, side, text) : undefined))
        .catch(() => opened.close(ENDED.fault));
    });
    opened.on("pong", () => alive.add(opened));
    opened.on("close", () => {
      clearTimeout(stranger);
      alive.delete(opened);
      void heard.then(() => reception.leave(caller));
    });
    // A fault of the line closes it, which is heard above.
    opened.on("error", () => {});
  };
  server.on("upgrade", (request, socket, head) => {
    const side = sideOf(request.url);
    const room = sockets.phone.clients.size + sockets.stage.clients.size < MAX_CONNECTIONS;
    if (!side || !room || !isAllowed(request, options.origins)) socket.destroy();
    else sockets[side].handleUpgrade(request, socket, head, (opened) => admit(opened, request, side));
  });
  const clients = () => [...sockets.phone.clients, ...sockets.stage.clients];
  const beat = setInterval(() => {
    for (const each of clients()) {
      if (!alive.delete(each)) each.terminate();
      else {
        each.ping();
        sendTo(each, '{"kind":"here"}');
      }
    }
  }, HERE);
  return {
    port,
    address,
    async close() {
      clearInterval(beat);
      for (const each of clients()) each.terminate();
      server.closeAllConnections();
      await new Promise((done) => server.close(done));
    },
  };
}

const sideOf = (url: string | undefined): Side | null =>
  url === "/hall/phone" ? "phone" : url === "/hall/stage" ? "stage" : null;

/** A browser always names its page; another page's script must not speak for a phone. */
function isAllowed({ headers: { origin, host } }: IncomingMessage, others: readonly string[]): boolean {
  if (origin === undefined) return false;
  return origin === `http://${host}` || origin === `https://${host}` || others.includes(origin);
}
