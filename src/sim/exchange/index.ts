export { type ExchangeCourse, type ExchangeOptions, solveExchange } from "./course.ts";
export {
  capillaryPressure,
  type Exchange,
  REGIONS,
  type Region,
  steadyExchange,
  type Tissue,
} from "./filtration.ts";
export { lymphRatio } from "./lymph.ts";
export { tissueCompliance } from "./tissue.ts";
