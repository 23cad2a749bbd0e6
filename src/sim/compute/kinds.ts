/** The kinds of request that can be computed. To add one: an entry here. */

import { BENCHMARK_FIELD_KIND } from "./benchmark-field-kind.ts";
import { BLOOD_LOSS_KIND } from "./blood-loss-kind.ts";
import { CIRCULATION_KIND } from "./circulation-kind.ts";
import { EXERTION_TEST_KIND } from "./exertion-test-kind.ts";
import { FIELD_KIND } from "./field-kind.ts";
import { anyKind, type Kind } from "./kind.ts";
import { PATHWAY_KIND } from "./pathway-kind.ts";
import { SWEEP_KIND } from "./sweep-kind.ts";
import { TEST_OCCLUSION_KIND } from "./test-occlusion-kind.ts";

export const KINDS: readonly Kind[] = [
  anyKind(CIRCULATION_KIND),
  anyKind(TEST_OCCLUSION_KIND),
  anyKind(EXERTION_TEST_KIND),
  anyKind(BLOOD_LOSS_KIND),
  anyKind(PATHWAY_KIND),
  anyKind(SWEEP_KIND),
  anyKind(FIELD_KIND),
  anyKind(BENCHMARK_FIELD_KIND),
];

/** The kind of this name; undefined for any other value. */
export const findKind = (name: unknown): Kind | undefined => KINDS.find(({ kind }) => kind === name);
