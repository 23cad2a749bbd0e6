/** The line to one pane's field worker: it keeps the latest field, gives arrays back, and replaces a worker that died or fell silent. */
import type { BoundaryConditions, FieldShape, FlowField } from "../sim/flow-field/flow-field.ts";
import type { FieldMeans } from "../sim/flow-field/means.ts";
import type { Port } from "./port.ts";
import type { FromField, ToField } from "./worker-messages.ts";

/** s: a working field is heard from at least this often; a flow solver under construction has longer. */
const PATIENCE = 1.4;
const BUILD_PATIENCE = 6;
/** Losses in a row, with no field between them, after which the pane goes on without a field. */
const MAX_LOSSES = 3;

type Build = Omit<Extract<ToField, { kind: "build" }>, "kind" | "shapeId">;

export interface FieldLink {
  /** Of the flow solver that runs now; null until the first is built. */
  readonly shape: FieldShape | null;
  readonly shapeId: number;
  /** The latest moment that belongs to `shape`; its arrays stay readable until the field after next arrives. */
  readonly field: FlowField | null;
  /** The moment before it, of the same shape. */
  readonly previous: FlowField | null;
  /** The latest means that belong to `shape`. */
  readonly means: FieldMeans | null;
  /** blood seconds per wall-clock second; undefined until measured */
  readonly capable: number | undefined;
  /** A lost worker has been replaced and has not sent a field yet. */
  readonly restarting: boolean;
  /** No field can be had here: the handbook's numbers stand alone. */
  readonly lost: boolean;
  /** Why the last geometry could not be built. */
  readonly refused: string | undefined;
  build(what: Build): void;
  boundary(boundary: BoundaryConditions): void;
  run(rate: number): void;
  watch(now: number): void;
  release(): void;
}

export function fieldLink(start: () => Port): FieldLink {
  let port: Port | null = null;
  let lossesInRow = 0;
  let lost = false;
  let refused: string | undefined;

  let wanted: Extract<ToField, { kind: "build" }> | undefined;
  let boundary: BoundaryConditions | undefined;
  let rate = 0;
  let building = false;
  let buildingName = "";
  let buildSent = 0;

  let shape: FieldShape | null = null;
  let shapeId = -1;
  let field: FlowField | null = null;
  let previous: FlowField | null = null;
  let means: FieldMeans | null = null;
  let capable: number | undefined;
  let heard: number | undefined;
  let lastWatch: number | undefined;

  const send = (message: ToField, transfer: Transferable[] = []) => port?.post(message, transfer);

  const giveBack = (old: FlowField | null) => {
    if (!old || old.u.length === 0) return;
    const arrays = [old.u, old.v, old.pressure];
    send(
      { kind: "return", arrays },
      arrays.map((array) => array.buffer as ArrayBuffer),
    );
  };

  const hear = (message: FromField) => {
    heard = undefined;
    switch (message.kind) {
      case "built":
        building = false;
        refused = undefined;
        if (buildingName === wanted?.geometry.name) {
          shape = message.shape;
          shapeId = message.shapeId;
          previous = null;
          field = null;
          means = null;
        }
        // What was asked for meanwhile is newer.
        if (wanted && wanted.shapeId !== message.shapeId) sendBuild();
        break;
      case "refused":
        building = false;
        refused = message.reason;
        if (wanted && wanted.shapeId !== message.shapeId) sendBuild();
        break;
      case "field":
        lossesInRow = 0;
        capable = message.capable;
        if (message.field.shapeId !== shapeId) break;
        giveBack(previous);
        previous = field;
        field = message.field;
        break;
      case "means":
        if (message.means.shapeId === shapeId) means = message.means;
        break;
    }
  };

  const sendBuild = () => {
    if (!wanted || building) return;
    building = true;
    buildingName = wanted.geometry.name;
    heard = undefined;
    send(wanted);
    if (boundary) send({ kind: "boundary", boundary });
    send({ kind: "run", rate });
  };

  const begin = () => {
    const fresh = start();
    port = fresh;
    fresh.onMessage = (message) => fresh === port && hear(message as FromField);
    fresh.onFailure = () => fresh === port && replace();
    building = false;
    sendBuild();
  };

  const replace = () => {
    port?.close();
    port = null;
    previous = null;
    capable = undefined;
    heard = undefined;
    if (++lossesInRow >= MAX_LOSSES) {
      lost = true;
      shape = null;
      field = null;
      means = null;
      return;
    }
    begin();
  };

  begin();
  return {
    get shape() {
      return shape;
    },
    get shapeId() {
      return shapeId;
    },
    get field() {
      return field;
    },
    get previous() {
      return previous;
    },
    get means() {
      return means;
    },
    get capable() {
      return capable;
    },
    get restarting() {
      return !lost && lossesInRow > 0;
    },
    get lost() {
      return lost;
    },
    get refused() {
      return refused;
    },
    build(what) {
      // Another pathway's flow says nothing of this one; the same pathway's goes on while its walls move.
      if (wanted?.geometry.name !== what.geometry.name) {
        shape = null;
        shapeId = -1;
        field = null;
        previous = null;
        means = null;
      }
      wanted = { kind: "build", shapeId: ++buildSent, ...what };
      sendBuild();
    },
    boundary(next) {
      boundary = next;
      if (!building || wanted) send({ kind: "boundary", boundary });
    },
    run(next) {
      if (next === rate) return;
      rate = next;
      send({ kind: "run", rate });
    },
    watch(now) {
      const slept = lastWatch !== undefined && now - lastWatch > PATIENCE;
      lastWatch = now;
      if (!port || !wanted) return;
      if (slept || heard === undefined) heard = now;
      else if (now - heard > (building ? BUILD_PATIENCE : PATIENCE)) replace();
    },
    release() {
      port?.close();
      port = null;
    },
  };
}
