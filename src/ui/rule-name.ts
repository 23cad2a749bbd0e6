/** What is held constant, in words. */
import { t } from "../i18n/index.ts";
import type { Stage, VolumeRule } from "../sim/parameters/request.ts";

/** Only a heart with two ventricles has another atrium, with another pressure. */
export const ruleName = (stage: Stage, rule: VolumeRule): string =>
  stage === "two-ventricle" && rule === "hold-atrial-pressure"
    ? t("volumeRule.left-atrium")
    : t(`volumeRule.${rule}`);
