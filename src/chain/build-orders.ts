/** The flow solvers that a pane asks its worker for: one under way at a time, and then the newest that was asked for meanwhile. */
import type { ToField } from "./worker-messages.ts";

type BuildOrder = Extract<ToField, { kind: "build" }>;
export type Build = Omit<BuildOrder, "kind" | "shapeId">;

export interface BuildOrders {
  /** the newest that was asked for */
  readonly wanted: BuildOrder | undefined;
  readonly underWay: boolean;
  /** what was sent last is of the pathway that is wanted now */
  readonly fits: boolean;
  want(what: Build): void;
  /** The order to be sent now, if any. */
  next(): BuildOrder | undefined;
  /** The one that was under way has been answered or is lost. */
  done(): void;
}

export function buildOrders(): BuildOrders {
  let wanted: BuildOrder | undefined;
  let sent: BuildOrder | undefined;
  let underWay = false;
  let count = 0;
  return {
    get wanted() {
      return wanted;
    },
    get underWay() {
      return underWay;
    },
    get fits() {
      return sent?.geometry.name === wanted?.geometry.name;
    },
    want(what) {
      wanted = { kind: "build", shapeId: ++count, ...what };
    },
    next() {
      if (!wanted || underWay) return undefined;
      underWay = true;
      sent = wanted;
      return sent;
    },
    done() {
      underWay = false;
    },
  };
}
