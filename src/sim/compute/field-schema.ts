/** JSON Schema of kind "field". */
import { FIELD_RANGES } from "./field-request.ts";
import type { Schema } from "./kind.ts";
import { object } from "./schema.ts";
import { FAR } from "./shapes.ts";

const point: Schema = {
  type: "array",
  items: { type: "number", minimum: -FAR, maximum: FAR },
  minItems: 2,
  maxItems: 2,
  description: "mm: [x, y], y up",
};
const length = (description: string): Schema => ({
  type: "number",
  exclusiveMinimum: 0,
  maximum: FAR,
  description: `mm: ${description}`,
});
const ranged = (name: keyof typeof FIELD_RANGES, meaning: string): Schema => {
  const { min, max, usual, unit } = FIELD_RANGES[name];
  return { type: "number", minimum: min, maximum: max, default: usual, description: `${unit}: ${meaning}` };
};

const shape: Schema = {
  oneOf: [
    object(
      {
        tube: object(
          {
            points: { type: "array", items: point, minItems: 2 },
            width: {
              oneOf: [
                length("width"),
                { type: "array", items: length("width at each point, linear in between") },
              ],
            },
          },
          ["points", "width"],
        ),
      },
      ["tube"],
      "all within half the width of the line through the points: round joints and ends",
    ),
    object({ disc: object({ centre: point, radius: length("radius") }, ["centre", "radius"]) }, ["disc"]),
    object(
      {
        ellipse: object(
          {
            centre: point,
            radii: { ...point, description: "mm: half axes" },
            angle: { type: "number", default: 0, description: "degrees, anticlockwise" },
          },
          ["centre", "radii"],
        ),
      },
      ["ellipse"],
    ),
    object({ polygon: object({ points: { type: "array", items: point, minItems: 3 } }, ["points"]) }, [
      "polygon",
    ]),
  ],
};

/** JSON Schema; each number's description begins with its unit. */
export const fieldSchema = (): Schema =>
  object(
    {
      kind: { const: "field" },
      fluid: object(
        {
          density: ranged("density", "density"),
          viscosity: ranged("viscosity", "dynamic viscosity"),
        },
        [],
      ),
      open: { type: "array", items: shape, minItems: 1, description: "where the blood is: union of these" },
      solid: { type: "array", items: shape, description: "less these" },
      openings: {
        type: "array",
        minItems: 1,
        items: object(
          {
            name: { type: "string" },
            centre: point,
            normal: { ...point, description: "direction out of the blood" },
            width: length("width of the cut"),
            velocity: {
              type: "number",
              description:
                "m/s: mean, into the blood positive; the developed profile across the opening (parabola; with round depth its cosh)",
            },
            pressure: { type: "number", description: "mmHg: mean static pressure" },
          },
          ["name", "centre", "normal", "width"],
          "velocity or pressure",
        ),
      },
      depth: {
        enum: ["uniform", "round"],
        default: "uniform",
        description: "plain plane, or local depth pi D/4",
      },
      cellsAcross: ranged("cellsAcross", "resolution"),
      maxSeconds: ranged(
        "maxSeconds",
        "on the finest grid at most (and 60 s of wall clock, or three times this if more); the answer says whether it was steady by then",
      ),
      steadyTolerance: ranged(
        "steadyTolerance",
        "largest relative change of flows, pressures, energy and dissipation while blood passes its own width",
      ),
    },
    ["kind", "open", "openings"],
    "flow in a plane; flows in the answer count into the blood positive",
  );
