export { type ExchangeCourse, solveExchange } from "./course.ts";
export {
  capillaryPressure,
  REGIONS,
  steadyExchange,
  type Tissue,
} from "./filtration.ts";
export { lymphRatio } from "./lymph.ts";
export { tissueCompliance } from "./tissue.ts";
