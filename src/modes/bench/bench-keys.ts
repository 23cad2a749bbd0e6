/** The bench's keys. */

import { releaseDye, setView } from "../../state/edit.ts";
import { showsField } from "../../state/scene-state.ts";
import type { Key } from "../../ui/keys.ts";
import { togglePlay } from "../shared/handles/play.ts";
import type { Context } from "../shared/mode.ts";
import type { PanelName } from "./panels.ts";

export interface BenchActs {
  readonly context: Context;
  readonly toggle: (panel: PanelName) => void;
  readonly close: () => void;
  readonly read: () => void;
  readonly probe: () => void;
  readonly beat: () => void;
  readonly openKeys: () => void;
}

export function benchKeys({
  context,
  toggle,
  close,
  read,
  probe,
  beat,
  openKeys,
}: BenchActs): readonly Key[] {
  const { session, theme } = context;
  const act = (keys: readonly string[], name: string, run: () => void, held: Partial<Key> = {}): Key => ({
    keys,
    does: `keyDoes.${name}`,
    run,
    ...held,
  });
  return [
    act([" ", "k"], "pause", () => togglePlay(context)),
    act(["d"], "dye", () => {
      if (showsField(session.scene.peek())) session.edit("dye", releaseDye);
    }),
    act(["p"], "probe", probe),
    act(["b"], "beat", beat),
    act(["z"], "undo", session.undo, { control: true, shift: false }),
    act(["z"], "redo", session.redo, { control: true, shift: true }),
    act(["y"], "redo", session.redo, { control: true }),
    act(["a"], "adjust", () => toggle("adjust")),
    act(["v"], "look", () => toggle("look")),
    act(["c"], "compare", () => toggle("compare")),
    act(["n"], "numbers", () => toggle("numbers")),
    act(["r"], "read", read),
    act(["t"], "theme", () => {
      theme.value = theme.value === "dark" ? "light" : "dark";
    }),
    act(["l"], "labels", () =>
      session.edit("labels", (state) => setView({ labels: !state.view.labels })(state)),
    ),
    act(["Escape"], "close", () => {
      close();
      session.forget();
    }),
    act(["?"], "keys", openKeys),
  ];
}
