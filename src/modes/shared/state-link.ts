/** The link that opens the bench with the present state. */

import { language } from "../../i18n/index.ts";
import { writeAddress } from "../../state/address.ts";
import { linkTo } from "./address-sync.ts";
import type { Context } from "./mode.ts";
import { AT_HOME } from "./place.ts";

export const stateLink = ({ session }: Pick<Context, "session">): string => {
  const state = writeAddress(session.scene.value);
  return linkTo({ ...AT_HOME, mode: "bench", language: language(), state });
};
