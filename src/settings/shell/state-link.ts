/** The link that opens the bench with the present state. */
import { writeAddress } from "../../state/address.ts";
import { language } from "../../words/index.ts";
import type { Context } from "../setting.ts";
import { AT_HOME, writePlace } from "../where.ts";

export const stateLink = ({ session }: Pick<Context, "session">): string => {
  const state = writeAddress(session.scene.value);
  const query = writePlace({ ...AT_HOME, setting: "bench", language: language(), state });
  return new URL(query, location.href).href;
};
