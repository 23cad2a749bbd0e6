/** From a request to the plane of its pathway. */
import type { CirculationRequest } from "../../parameters/request.ts";
import type { PathwayGeometry } from "../geometry.ts";
import { atriopulmonary } from "./atriopulmonary.ts";
import { extracardiac, lateralTunnel } from "./cross.ts";
import { glenn } from "./glenn.ts";
import { pathwaySizes } from "./sizes.ts";

/** The plane of the request's pathway, mm. Null with two ventricles: there the veins reach the lungs through a pump, not through a pathway. */
export function pathwayGeometry(request: CirculationRequest): PathwayGeometry | null {
  const sizes = pathwaySizes(request);
  const scale = Math.sqrt(request.body.bsa / 0.72);
  switch (request.stage) {
    case "extracardiac":
      return extracardiac(sizes, scale);
    case "lateral-tunnel":
      return lateralTunnel(sizes, scale);
    case "atriopulmonary":
      return atriopulmonary(sizes, scale);
    case "glenn":
      return glenn(sizes, scale);
    case "two-ventricle":
      return null;
  }
}
