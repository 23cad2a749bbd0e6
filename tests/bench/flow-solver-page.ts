/** What the browser runs: the trial's rates, cell updates a second. */
import { rates } from "./flow-solver-trial.ts";

export const measured = () => rates(() => performance.now());
