/** The bench: everything adjustable, for someone who wants to explore. */

import { useComputed, useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { STAGES } from "../../sim/parameters/request.ts";
import { releaseDye, setStage, setView } from "../../state/edit.ts";
import { showsField } from "../../state/scene-state.ts";
import { announce } from "../../ui/announce.tsx";
import { ChangeNote } from "../../ui/change-note.tsx";
import { Choice } from "../../ui/choice.tsx";
import { figuresOf } from "../../ui/figures.ts";
import { KeyList } from "../../ui/key-list.tsx";
import { Readouts } from "../../ui/readout.tsx";
import { Toolbar } from "../../ui/toolbar.tsx";
import { Transport } from "../../ui/transport.tsx";
import { AT_HOME, writePlace } from "../shared/address/place.ts";
import { Help } from "../shared/bar/help.tsx";
import { Notes } from "../shared/bar/notes.tsx";
import { BeatStrip } from "../shared/handles/beat-strip.tsx";
import { isMoving, togglePlay } from "../shared/handles/play.ts";
import type { Context } from "../shared/mode.ts";
import { cueSeen, lettersOn } from "../shared/preferences.ts";
import { StageView } from "../shared/stage/stage-view.tsx";
import { useKeys } from "../shared/use-keys.ts";
import { earlierFigures } from "../shared/words/earlier-figures.ts";
import { heldSentence } from "../shared/words/held.ts";
import { sceneReading } from "../shared/words/scene-reading.ts";
import "./bench.css";
import { Adjust } from "./adjust.tsx";
import { benchKeys } from "./bench-keys.ts";
import { Compare } from "./compare.tsx";
import { FirstCue } from "./first-cue.tsx";
import { Look } from "./look.tsx";
import { Numbers } from "./numbers.tsx";
import { OnPaper } from "./on-paper.tsx";
import { PANELS, type PanelName } from "./panels.ts";
import { SceneBar } from "./scene-bar.tsx";
import { TakeAway } from "./take-away.tsx";

export function Bench({ context }: { readonly context: Context }) {
  const { session, address, place } = context;
  const { chain } = session;
  // Within another page only the scene, its numbers and its pause are shown.
  const embedded = place.value.more.embed === "1";
  const panel = useSignal<PanelName | null>(null);
  const probing = useSignal(false);
  const beating = useSignal(false);
  const field = showsField(session.scene.value);
  const dialog = useSignal<"help" | "keys" | null>(null);
  const figures = useComputed(() => figuresOf(chain.circulations.value[0] ?? null));
  const earlier = useComputed(() => earlierFigures(session));
  const toggle = (name: PanelName) => {
    panel.value = panel.value === name ? null : name;
  };
  const close = () => {
    panel.value = null;
  };
  const probe = () => {
    probing.value = !probing.value;
  };
  const beat = () => {
    beating.value = !beating.value;
  };
  const closeDialog = () => {
    dialog.value = null;
  };
  // Whoever comes without a state of their own finds handles to drag, and the first time is told so.
  const greeting = useMemo(() => !place.peek().state && !embedded, []);
  useEffect(() => {
    if (greeting) session.show(setView({ handles: true })(chain.scene.peek()));
  }, []);
  const read = () => announce(sceneReading(context, { spoken: true }).join(" "));
  const openKeys = () => {
    dialog.value = "keys";
  };
  const keys = benchKeys({ context, toggle, close, read, probe, beat, openKeys });
  useKeys(keys, () => dialog.value !== null);
  useEffect(() => address.followScene(session.scene), [address, session]);
  const { request } = session.scene.value;
  const panels = {
    adjust: () => <Adjust session={session} onClose={close} />,
    look: () => <Look context={context} onClose={close} />,
    compare: () => <Compare session={session} onClose={close} />,
    numbers: () => <Numbers context={context} onRead={read} onClose={close} />,
    take: () => <TakeAway context={context} onClose={close} />,
  };
  const home = { ...AT_HOME, language: place.value.language };
  return (
    <StageView context={context} floor={13} probing={probing.value && field}>
      <div class={embedded ? "shell embedded" : "shell"}>
        <header class="top">
          <h1 class="unseen">{t("bench.title")}</h1>
          <a
            class="wordmark"
            href={writePlace(home)}
            target={embedded ? "_blank" : undefined}
            rel="noopener"
            aria-label={t("bench.home")}
          >
            {t("name")}
          </a>
          <Choice
            label={t("control.stage")}
            quietLabel
            value={request.stage}
            words={STAGES}
            nameOf={(stage) => t(`stage.${stage}`)}
            onChoose={(stage) => {
              session.edit("stage", setStage(stage));
              session.settle();
            }}
          />
          <Toolbar
            label={t("bench.bar")}
            items={[
              ...PANELS.map((name) => ({
                name,
                label: t(`bench.${name}`),
                expanded: panel.value === name,
                onPress: () => toggle(name),
              })),
              {
                name: "help",
                label: t("bench.help"),
                onPress: () => {
                  dialog.value = "help";
                },
              },
            ]}
          />
        </header>
        {panel.value ? panels[panel.value]() : !embedded && <SceneBar context={context} />}
        <div class="clear" data-clear />
        {/* It scrolls where the window is low, so that keys must reach it. */}
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region */}
        <section class="side" tabIndex={0} aria-label={t("bench.figures")}>
          <Readouts figures={figures.value} earlier={earlier.value} />
          {earlier.value && <ChangeNote onHide={session.forget} />}
          <p class="held">{heldSentence(request)}</p>
        </section>
        {beating.value && <BeatStrip context={context} />}
        <footer class="foot">
          <Transport
            moving={isMoving(context)}
            onTogglePause={() => togglePlay(context)}
            onDye={field ? () => session.edit("dye", releaseDye) : undefined}
            probe={field && !embedded ? { on: probing.value, onToggle: probe } : undefined}
            beat={embedded ? undefined : { on: beating.value, onToggle: beat }}
          />
          <p class="caution-short">{t("caution.short")}</p>
        </footer>
        <Notes session={session} />
        {!embedded && <OnPaper context={context} />}
        {greeting && !cueSeen.value && <FirstCue context={context} />}
      </div>
      {dialog.value === "help" && (
        <Help
          paragraphs={["help.pause", "help.adjust", "help.explain", "help.sources"]}
          onKeys={openKeys}
          onClose={closeDialog}
        />
      )}
      {dialog.value === "keys" && <KeyList table={keys} lettersOn={lettersOn} onClose={closeDialog} />}
    </StageView>
  );
}
