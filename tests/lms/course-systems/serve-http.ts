/** A session over HTTP, for a page or library that does its own requests. */
import { createServer, type IncomingMessage } from "node:http";
import type { AddressInfo } from "node:net";
import { text } from "node:stream/consumers";

/** Whoever reaches the server from a page of another host is allowed to. */
const OPEN_TO_ALL = {
  "access-control-allow-origin": "*",
  "access-control-allow-headers": "*, authorization, content-type, x-experience-api-version",
  "access-control-allow-methods": "GET, POST, PUT, DELETE",
};

/** @returns where it answers, and how to end it */
export async function serveHttp(answer: (request: Request) => Promise<Response>) {
  const server = createServer(async (incoming, outgoing) => {
    if (incoming.method === "OPTIONS") return void outgoing.writeHead(204, OPEN_TO_ALL).end();
    const found = await answer(await requestOf(incoming));
    outgoing.writeHead(found.status, { ...Object.fromEntries(found.headers), ...OPEN_TO_ALL });
    outgoing.end(await found.text());
  });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  const { port } = server.address() as AddressInfo;
  const close = () => new Promise((done) => server.close(done));
  return { home: `http://127.0.0.1:${port}`, close };
}

async function requestOf(incoming: IncomingMessage): Promise<Request> {
  const { method = "GET", url = "/", headers } = incoming;
  const body = await text(incoming);
  return new Request(new URL(url, "http://127.0.0.1"), {
    method,
    headers: Object.entries(headers).flatMap(([name, value]) => (value ? [[name, String(value)]] : [])) as [
      string,
      string,
    ][],
    ...(method === "GET" ? {} : { body }),
  });
}
