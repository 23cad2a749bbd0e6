/** JSON Schema 2020-12 of requests, from the same tables that check them. */
import type { NumberParameter, Parameter } from "../parameters/parameter.ts";
import { PARAMETERS } from "../parameters/parameters.ts";
import { BODY_RANGES, STAGES, VOLUME_RULES } from "../parameters/request.ts";
import type { Kind, Schema } from "./kind.ts";

/** Schema of an object that allows no other keys. */
export const object = (
  properties: Readonly<Record<string, Schema>>,
  required: readonly string[],
  description?: string,
): Schema => ({
  type: "object",
  ...(description ? { description } : {}),
  properties,
  required,
  additionalProperties: false,
});

const numberSchema = ({ unit, min, max, meaning, default: usual }: NumberParameter): Schema => ({
  type: "number",
  minimum: min,
  maximum: max,
  ...(typeof usual === "number" ? { default: usual } : {}),
  description: `${unit}: ${meaning}${typeof usual === "number" ? "" : "; default by stage and body"}`,
});

const parameterSchema = (parameter: Parameter): Schema =>
  parameter.kind === "number"
    ? numberSchema(parameter)
    : { enum: parameter.words, default: parameter.default, description: parameter.meaning };

/** Schema of kind "circulation"; each number's description begins with its unit. */
export const circulationSchema = (): Schema =>
  object(
    {
      kind: { const: "circulation" },
      stage: { enum: STAGES, description: "which circulation" },
      body: object(
        Object.fromEntries(
          Object.entries(BODY_RANGES).map(([name, { min, max, unit, meaning, ...usual }]) => [
            name,
            {
              type: "number",
              minimum: min,
              maximum: max,
              ...("usual" in usual ? { default: usual.usual } : {}),
              description: `${unit}: ${meaning}`,
            },
          ]),
        ),
        Object.entries(BODY_RANGES).flatMap(([name, range]) => ("usual" in range ? [] : [name])),
        "whose circulation",
      ),
      volumeRule: {
        enum: VOLUME_RULES,
        default: "hold-atrial-pressure",
        description: "whether blood volume stays, or is given until something is held",
      },
      set: object(
        Object.fromEntries(PARAMETERS.map((parameter) => [parameter.name, parameterSchema(parameter)])),
        [],
        "parameters by name; those left out take their default for stage and body",
      ),
    },
    ["kind", "stage", "body"],
    "one circulation",
  );

/** All kinds together. */
export const requestSchema = (kinds: readonly Kind[]): Schema => ({
  $schema: "https://json-schema.org/draft/2020-12/schema",
  title: "Request to compute",
  oneOf: kinds.map(({ kind }) => ({ $ref: `#/$defs/${kind}` })),
  $defs: Object.fromEntries(kinds.map(({ kind, schema }) => [kind, schema])),
});
