/** All scenes as small pictures to choose from; native radios, so arrows move along them. */
import { useEffect, useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { enterScene } from "../../state/enter-scene.ts";
import { SCENES } from "../../state/scene-state.ts";
import type { Context } from "../shared/mode.ts";

/** The scenes one below the other, for each pathway and theme; `tests/scenes/scene-strips.page.ts` takes them. */
const STRIPS = import.meta.glob<string>("./scene-strips/*.webp", {
  eager: true,
  query: "?url",
  import: "default",
});

export function SceneBar({ context }: { readonly context: Context }) {
  const { session, stage, theme } = context;
  const chosen = useRef<HTMLLabelElement>(null);
  const { scene: shown, request } = session.scene.value;
  // The picture itself comes first.
  const strip =
    stage.way.value !== "starting" && STRIPS[`./scene-strips/${request.stage}-${theme.value}.webp`];
  // On a phone the bar scrolls: the chosen scene must not lie outside it.
  useEffect(() => chosen.current?.scrollIntoView({ block: "nearest", inline: "nearest" }), [shown]);
  return (
    <section class="scene-bar" aria-label={t("look.scene")}>
      <fieldset>
        <legend class="unseen">{t("look.scene")}</legend>
        {SCENES.map((scene, row) => (
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
              {strip && (
                <img src={strip} alt="" style={{ translate: `0 ${(-100 * (row + 0.5)) / SCENES.length}%` }} />
              )}
            </span>
            <span class="scene-name">{t(`scene.${scene}`)}</span>
          </label>
        ))}
      </fieldset>
    </section>
  );
}
