/** What a row of the parameter table says. */
import type { Body, Stage } from "./request.ts";

export type ParameterGroup =
  | "vessels"
  | "heart"
  | "breathing"
  | "activity"
  | "pathway"
  | "fenestration"
  | "oxygen"
  | "fluid";

interface Described {
  readonly name: string;
  readonly group: ParameterGroup;
  /** One clause in plain technical English; the page shows translated words from `src/i18n`. */
  readonly meaning: string;
  readonly source: string;
  /** Stages in which it acts; all of them when left out. */
  readonly stages?: readonly Stage[];
}

export interface NumberParameter extends Described {
  readonly kind: "number";
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  /** In the stated unit; may depend on stage and body (growth). */
  readonly default: number | ((stage: Stage, body: Body) => number);
}

export interface WordParameter extends Described {
  readonly kind: "word";
  readonly words: readonly string[];
  readonly default: string;
}

export type Parameter = NumberParameter | WordParameter;
