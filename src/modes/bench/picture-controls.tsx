/** How a scene's picture is drawn: colours of the blood, colour map, layers; and which scene. */
import { t } from "../../i18n/index.ts";
import { setView } from "../../state/edit.ts";
import { enterScene } from "../../state/enter-scene.ts";
import { COLOURINGS, OVERLAYS, SCENES, showsField } from "../../state/scene-state.ts";
import { Choice, Switch } from "../../ui/choice.tsx";
import type { Session } from "../shared/session.ts";

const LAYERS = ["labels", "handles", "streamlines", "gradeLine"] as const;
/** Layers that only a computed plane has. */
const OF_FIELD: readonly string[] = ["handles", "streamlines"];

export function PictureControls({ session }: { readonly session: Session }) {
  const { view, scene } = session.scene.value;
  const field = scene !== "pathway" || showsField(session.scene.value);
  const see = (change: Partial<typeof view>) => {
    session.edit(Object.keys(change).join(" "), setView(change));
    session.settle();
  };
  return (
    <>
      {field && (
        <>
          <Choice
            label={t("look.colouring")}
            value={view.colouring}
            words={COLOURINGS}
            nameOf={(name) => t(`colouring.${name}`)}
            onChoose={(colouring) => see({ colouring })}
          />
          <Choice
            label={t("look.overlay")}
            value={view.overlay}
            words={OVERLAYS}
            nameOf={(name) => t(`overlay.${name}`)}
            onChoose={(overlay) => see({ overlay })}
          />
        </>
      )}
      <div>
        {LAYERS.filter((layer) => field || !OF_FIELD.includes(layer)).map((layer) => (
          <Switch
            key={layer}
            label={t(`look.${layer}`)}
            on={view[layer]}
            onChange={(on) => see({ [layer]: on })}
          />
        ))}
      </div>
    </>
  );
}

export function SceneChoice({ session }: { readonly session: Session }) {
  return (
    <Choice
      label={t("look.scene")}
      value={session.scene.value.scene}
      words={SCENES}
      nameOf={(name) => t(`scene.${name}`)}
      onChoose={(name) => {
        session.edit("scene", enterScene(name));
        session.settle();
      }}
    />
  );
}
