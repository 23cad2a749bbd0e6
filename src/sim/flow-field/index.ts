/** What other folders import of the flow field. */

export { buildField, type FieldSession } from "./field-session.ts";
