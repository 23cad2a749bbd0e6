/** What the browser runs: the trial's rates, cell updates a second. */
import { plainRate, vectorRate } from "./flow-solver-trial.ts";

const now = () => performance.now();

export const vector = (): number => vectorRate(now);
export const plain = (): number => plainRate(now);
