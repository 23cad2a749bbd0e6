export { filtrationAlong } from "./along-capillary.ts";
export { type ExchangeCourse, solveExchange } from "./course.ts";
export {
  capillaryPressure,
  lymphCarried,
  REGIONS,
  steadyExchange,
  type Tissue,
  VENOUS_USUAL,
} from "./filtration.ts";
export { firstDaysRequest, firstDaysResistance, OPERATION } from "./first-days.ts";
export { lymphRatio } from "./lymph.ts";
export { albuminOf } from "./protein.ts";
export { tissueCompliance } from "./tissue.ts";
