/** Which cases the plane is judged by: those of the loss law's fit, every second of them held out of the closure's calibration. */
import { isFitted, readSet, type SetCase } from "../three-d/fit-set.ts";

export const fittedCases = (): SetCase[] => readSet().filter(isFitted);

/** By a case's place among {@link fittedCases}. */
export const isHeldOut = (place: number): boolean => place % 2 === 1;
