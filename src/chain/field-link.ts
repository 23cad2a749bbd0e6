/** The link to one pane's field worker: it keeps the latest field, gives arrays back, and replaces a worker that died or fell silent. */
import type { BoundaryConditions, FlowField } from "../sim/flow-field/flow-field.ts";
import { type Build, buildOrders } from "./build-orders.ts";
import { type LatestField, NO_FIELD, received } from "./latest-field.ts";
import type { Port } from "./port.ts";
import { silence } from "./silence.ts";
import type { FromField, ToField } from "./worker-messages.ts";

/** s: a working field is heard from at least this often; a flow solver under construction has longer. */
const TIMEOUT = 1.4;
const BUILD_TIMEOUT = 6;
/** Looks in a row without a drawing between them, after which nobody sees the flow: the page is hidden. */
const UNSEEN = 4;
/** Losses in a row, with no field between them, after which the pane goes on without a field. */
const MAX_LOSSES = 3;

export interface FieldLink {
  readonly latest: LatestField;
  /** blood seconds per wall-clock second; undefined until measured */
  readonly capable: number | undefined;
  /** count across the narrowest opening; undefined before its first moment */
  readonly cellsAcross: number | undefined;
  /** A lost worker has been replaced and has not sent a field yet. */
  readonly restarting: boolean;
  /** No field can be had here: the handbook's numbers stand alone. */
  readonly lost: boolean;
  /** Why the last geometry could not be built. */
  readonly refused: string | undefined;
  build(what: Build): void;
  boundary(boundary: BoundaryConditions): void;
  /** `seen`: as in the message */
  run(rate: number, seen: number): void;
  watch(now: number): void;
  release(): void;
}

export function fieldLink(start: () => Port): FieldLink {
  const orders = buildOrders();
  const quiet = silence(TIMEOUT);
  const worker = renewable(start, hear, lose);
  let latest = NO_FIELD;
  let capable: number | undefined;
  let cellsAcross: number | undefined;
  let refused: string | undefined;
  let lossesInRow = 0;
  /** its finer grid is still to come */
  let refining = false;
  let boundary: BoundaryConditions | undefined;
  let [rate, seen] = [0, 0];
  let undrawn = 0;

  function sendRun(next: number, nextSeen: number) {
    if (next === rate && nextSeen === seen) return;
    [rate, seen] = [next, nextSeen];
    worker.post({ kind: "run", rate, seen });
  }

  function sendBuild() {
    const order = orders.next();
    if (!order) return;
    quiet.broken();
    worker.post(order);
    if (boundary) worker.post({ kind: "boundary", boundary });
    worker.post({ kind: "run", rate, seen });
  }

  function hear(message: FromField) {
    quiet.broken();
    const before = latest;
    if (message.kind !== "built" || orders.fits) latest = received(latest, message);
    if (message.kind === "built" || message.kind === "refused") {
      refining = message.kind === "built" && message.coarse === true;
      orders.done();
      refused = message.kind === "refused" ? message.reason : undefined;
      // What was asked for meanwhile is newer.
      if (orders.wanted?.shapeId !== message.shapeId) sendBuild();
    } else if (message.kind === "field") {
      lossesInRow = 0;
      if (message.shape) refining = false;
      ({ capable, cellsAcross } = message);
      if (latest !== before) giveBack(worker, before.previous);
    }
  }

  function lose() {
    worker.close();
    orders.done();
    refining = false;
    quiet.broken();
    capable = undefined;
    lossesInRow++;
    latest = lossesInRow < MAX_LOSSES ? { ...latest, previous: null } : NO_FIELD;
    if (lossesInRow < MAX_LOSSES) begin();
  }

  function begin() {
    worker.begin();
    sendBuild();
  }

  begin();
  return {
    get latest() {
      return latest;
    },
    get capable() {
      return capable;
    },
    get cellsAcross() {
      return cellsAcross;
    },
    get restarting() {
      return lossesInRow > 0 && lossesInRow < MAX_LOSSES;
    },
    get lost() {
      return lossesInRow >= MAX_LOSSES;
    },
    get refused() {
      return refused;
    },
    build(what) {
      // Another pathway's flow says nothing of this one; the same pathway's goes on while its walls move.
      if (orders.wanted?.geometry.name !== what.geometry.name) latest = NO_FIELD;
      orders.want(what);
      sendBuild();
    },
    boundary(next) {
      boundary = next;
      worker.post({ kind: "boundary", boundary });
    },
    run(next, nextSeen) {
      undrawn = 0;
      sendRun(next, nextSeen);
    },
    watch(now) {
      if (++undrawn >= UNSEEN) sendRun(rate, 0);
      const late = quiet.tooLong(now, orders.underWay || refining ? BUILD_TIMEOUT : TIMEOUT);
      if (late && worker.open && orders.wanted) lose();
    },
    release: worker.close,
  };
}

interface Renewable {
  readonly open: boolean;
  post(message: ToField, transfer?: Transferable[]): void;
  /** Starts a worker; what an earlier one still says is passed over. */
  begin(): void;
  close(): void;
}

function renewable(start: () => Port, hear: (message: FromField) => void, lose: () => void): Renewable {
  let port: Port | null = null;
  return {
    get open() {
      return port !== null;
    },
    post(message, transfer = []) {
      port?.post(message, transfer);
    },
    begin() {
      const fresh = start();
      port = fresh;
      fresh.onMessage = (message) => fresh === port && hear(message as FromField);
      fresh.onFailure = () => fresh === port && lose();
    },
    close() {
      port?.close();
      port = null;
    },
  };
}

/** Arrays that the page has done with are the worker's to fill again. */
function giveBack(worker: Renewable, old: FlowField | null): void {
  if (!old || old.u.length === 0) return;
  const arrays = [old.u, old.v, old.pressure];
  worker.post(
    { kind: "return", arrays },
    arrays.map((array) => array.buffer as ArrayBuffer),
  );
}
