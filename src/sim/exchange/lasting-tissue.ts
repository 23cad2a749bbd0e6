/** A region's tissue as a circulation leaves it where nothing else has happened: what its request sets, against its veins. */
import { usualWeight } from "../body/bsa.ts";
import { numberSetting } from "../parameters/parameters.ts";
import type { Region, Tissue } from "./filtration.ts";
import { ductPressure, type Veins, venousPressure } from "./region-veins.ts";

/** Pressures in mmHg, weight in kg. */
export function lastingTissue(region: Region, veins: Veins): Tissue {
  const { request } = veins;
  const setting = (name: string) => numberSetting(request, name);
  return {
    venousPressure: venousPressure(region, veins),
    plasmaOncoticPressure: setting("plasmaOncoticPressure"),
    reflection: setting("proteinReflection"),
    leakage: setting("capillaryLeakage"),
    lymphMaximum: setting("lymphMaximum"),
    lymphOutflow: ductPressure(veins),
    weight: usualWeight(request.body.bsa),
  };
}
