/** The door of the flow field. */
export type { FieldDrive, FieldReadings, FieldShape, FlowField, OpeningReading } from "./flow-field.ts";
export { buildField, cellFor, type FieldChoice, type FieldFluid, type FieldSession } from "./session.ts";
