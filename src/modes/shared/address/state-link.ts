/** The links that open the bench with a state. */

import { language } from "../../../i18n/index.ts";
import { writeAddress } from "../../../state/address.ts";
import type { SceneState } from "../../../state/scene-state.ts";
import type { Context } from "../mode.ts";
import { linkTo } from "./address-sync.ts";
import { AT_HOME } from "./place.ts";

export const stateLink = ({ session }: Pick<Context, "session">): string => linkToState(session.scene.value);

export const linkToState = (state: SceneState): string =>
  linkTo({ ...AT_HOME, mode: "bench", language: language(), state: writeAddress(state) });
