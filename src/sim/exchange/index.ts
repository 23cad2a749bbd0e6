export { filtrationAlong } from "./along-capillary.ts";
export { type ExchangeCourse, solveExchange } from "./course.ts";
export {
  capillaryPressure,
  lymphCarried,
  REGIONS,
  steadyExchange,
  type Tissue,
} from "./filtration.ts";
export { lymphRatio, USUAL_OUTFLOW } from "./lymph.ts";
export { albuminOf } from "./protein.ts";
export { ductPressure } from "./region-veins.ts";
export { tissueCompliance } from "./tissue.ts";
