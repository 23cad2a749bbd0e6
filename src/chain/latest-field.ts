/** What a pane has received of its field last, all of one flow solver. */
import type { FieldShape, FlowField } from "../sim/flow-field/flow-field.ts";
import type { FieldMeans } from "../sim/flow-field/means.ts";
import type { FromField } from "./worker-messages.ts";

export interface LatestField {
  /** Of the flow solver that runs now; null until the first is built. */
  readonly shape: FieldShape | null;
  readonly shapeId: number;
  /** The latest moment that belongs to `shape`; its arrays stay readable until the field after next arrives. */
  readonly field: FlowField | null;
  /** The moment before it, of the same shape. */
  readonly previous: FlowField | null;
  /** The latest means that belong to `shape`. */
  readonly means: FieldMeans | null;
}

export const NO_FIELD: LatestField = { shape: null, shapeId: -1, field: null, previous: null, means: null };

/** With what a message brings; what belongs to another flow solver is passed over. */
export function received(latest: LatestField, message: FromField): LatestField {
  const { field, shapeId } = latest;
  switch (message.kind) {
    case "built":
      return { ...NO_FIELD, shape: message.shape, shapeId: message.shapeId };
    case "field":
      if (message.field.shapeId !== shapeId) return latest;
      return message.shape
        ? { ...NO_FIELD, shapeId, shape: message.shape, field: message.field }
        : { ...latest, previous: field, field: message.field };
    case "means":
      return message.means.shapeId === shapeId ? { ...latest, means: message.means } : latest;
    default:
      return latest;
  }
}
