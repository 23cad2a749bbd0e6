/** How the scene is shown: which scene, colours, maps, names, handles, theme, language. */

import { t } from "../../i18n/index.ts";
import { type Edit, setView } from "../../state/edit.ts";
import { enterScene } from "../../state/enter-scene.ts";
import { COLOURINGS, OVERLAYS, SCENES, showsField } from "../../state/scene-state.ts";
import { Choice, Switch } from "../../ui/choice.tsx";
import { Panel } from "../../ui/panel.tsx";
import { LanguageChoice } from "../shared/language-choice.tsx";
import { type Context, THEMES } from "../shared/mode.ts";
import { largerWords, lettersOn } from "../shared/preferences.ts";

const LAYERS = ["labels", "handles", "streamlines", "gradeLine"] as const;
/** Layers that only a computed plane has. */
const OF_FIELD: readonly string[] = ["handles", "streamlines"];

export function Look({ context, onClose }: { readonly context: Context; readonly onClose: () => void }) {
  const { session, theme, reducedMotion, address } = context;
  const { view, scene } = session.scene.value;
  const field = scene !== "pathway" || showsField(session.scene.value);
  const see = (subject: string, change: Edit) => {
    session.edit(subject, change);
    session.settle();
  };
  return (
    <Panel title={t("bench.look")} onClose={onClose}>
      <div class="phone-only">
        <Choice
          label={t("look.scene")}
          value={scene}
          words={SCENES}
          nameOf={(name) => t(`scene.${name}`)}
          onChoose={(name) => see("scene", enterScene(name))}
        />
      </div>
      {field && (
        <>
          <Choice
            label={t("look.colouring")}
            value={view.colouring}
            words={COLOURINGS}
            nameOf={(name) => t(`colouring.${name}`)}
            onChoose={(colouring) => see("colouring", setView({ colouring }))}
          />
          <Choice
            label={t("look.overlay")}
            value={view.overlay}
            words={OVERLAYS}
            nameOf={(name) => t(`overlay.${name}`)}
            onChoose={(overlay) => see("overlay", setView({ overlay }))}
          />
        </>
      )}
      <div>
        {LAYERS.filter((layer) => field || !OF_FIELD.includes(layer)).map((layer) => (
          <Switch
            key={layer}
            label={t(`look.${layer}`)}
            on={view[layer]}
            onChange={(on) => see(layer, setView({ [layer]: on }))}
          />
        ))}
        <Switch
          label={t("look.still")}
          on={reducedMotion.value}
          onChange={(on) => {
            reducedMotion.value = on;
          }}
        />
      </div>
      <div>
        <Switch
          label={t("look.larger")}
          on={largerWords.value}
          onChange={(on) => {
            largerWords.value = on;
          }}
        />
        <Switch
          label={t("keys.letters")}
          on={lettersOn.value}
          onChange={(on) => {
            lettersOn.value = on;
          }}
        />
      </div>
      <Choice
        label={t("look.theme")}
        value={theme.value}
        words={THEMES}
        nameOf={(name) => t(`look.theme.${name}`)}
        onChoose={(name) => {
          theme.value = name;
        }}
      />
      <LanguageChoice address={address} />
    </Panel>
  );
}
