/** What every page of studying alone is given. */
import type { Library } from "../../lesson/library/library.ts";
import type { Context } from "../shared/mode.ts";
import type { KeptProgress } from "./kept-progress.ts";

export interface StudyProps {
  readonly context: Context;
  readonly library: Library;
  readonly kept: KeptProgress;
}
