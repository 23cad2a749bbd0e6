/** Puts the bench as it stands at the end of the talk kept on this device, with a small picture of it. */
import { t } from "../../../i18n/index.ts";
import { writeAddress } from "../../../state/address.ts";
import { setView } from "../../../state/edit.ts";
import type { Context } from "../../shared/mode.ts";
import { keepTalk, readKeptTalk } from "../files/talk-store.ts";
import { benchStop, newPictureName, withMore } from "../talk/own-stops.ts";
import { MAX_STOPS, USUAL_MINUTES } from "../talk/playlist.ts";

/** px */
const THUMBNAIL = { width: 480, height: 270 } as const;

/** Rejects where nothing can be kept. */
export async function addBenchToTalk(context: Context): Promise<void> {
  // Handles are for the bench: a hall drags nothing.
  const state = setView({ handles: false })(context.session.scene.peek());
  const picture = await thumbnail(context);
  const kept = await readKeptTalk();
  const plan = kept?.plan ?? { title: "", minutes: USUAL_MINUTES, stops: [] };
  if (plan.stops.length >= MAX_STOPS) throw new Error(t("lecture.stops", { count: MAX_STOPS }));
  const name = picture && newPictureName("png");
  const stop = benchStop(writeAddress(state), t(`stage.${state.request.stage}`), name);
  const pictures = new Map(kept?.pictures);
  if (name && picture) pictures.set(name, picture);
  await keepTalk({ plan: { ...plan, stops: withMore(plan.stops, [stop]) }, pictures });
}

/** null where nothing can be drawn */
async function thumbnail({ stage }: Context): Promise<Blob | null> {
  try {
    const canvas = await stage.snapshot(THUMBNAIL.width, THUMBNAIL.height);
    return await new Promise((resolve) => canvas.toBlob(resolve, "image/png"));
  } catch {
    return null;
  }
}
