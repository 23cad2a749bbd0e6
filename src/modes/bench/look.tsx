/** How the scene is shown: which scene, colours, maps, names, handles, theme, language. */

import { t } from "../../i18n/index.ts";
import { Choice, Switch } from "../../ui/choice.tsx";
import { Panel } from "../../ui/panel.tsx";
import { LanguageChoice } from "../shared/bar/language-choice.tsx";
import { type Context, THEMES } from "../shared/mode.ts";
import { largerWords, lettersOn } from "../shared/preferences.ts";
import { PictureControls, SceneChoice } from "./picture-controls.tsx";

export function Look({ context, onClose }: { readonly context: Context; readonly onClose: () => void }) {
  const { session, theme, reducedMotion, address } = context;
  return (
    <Panel title={t("bench.look")} onClose={onClose}>
      <div class="phone-only">
        <SceneChoice session={session} />
      </div>
      <PictureControls session={session} />
      <div>
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
