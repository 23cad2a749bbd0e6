/** All scenes as small pictures to choose from; native radios, so arrows move along them. */
import { useEffect, useMemo, useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { enterScene } from "../../state/enter-scene.ts";
import { SCENES } from "../../state/scene-state.ts";
import type { Context } from "../shared/mode.ts";
import { scenePictures } from "./scene-pictures.ts";

export function SceneBar({ context }: { readonly context: Context }) {
  const { session } = context;
  const { pictures, release } = useMemo(() => scenePictures(context), [context]);
  useEffect(() => release, [release]);
  const chosen = useRef<HTMLLabelElement>(null);
  const { scene: shown } = session.scene.value;
  // On a phone the bar scrolls: the chosen scene must not lie outside it.
  useEffect(() => chosen.current?.scrollIntoView({ block: "nearest", inline: "nearest" }), [shown]);
  return (
    <section class="scene-bar" aria-label={t("look.scene")}>
      <fieldset>
        <legend class="unseen">{t("look.scene")}</legend>
        {SCENES.map((scene) => (
          <label key={scene} ref={scene === shown ? chosen : null}>
            <input
              type="radio"
              name="scene"
              value={scene}
              checked={scene === shown}
              onChange={() => {
                session.edit("scene", enterScene(scene));
                session.settle();
              }}
            />
            <span class="scene-picture">
              {pictures.value[scene] && <img src={pictures.value[scene]} alt="" />}
            </span>
            <span class="scene-name">{t(`scene.${scene}`)}</span>
          </label>
        ))}
      </fieldset>
    </section>
  );
}
