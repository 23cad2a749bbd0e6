/** The panel library's sliders over the parameter table, made usable by keys alone and by screen readers. */
import { effect } from "@preact/signals";
import type { BindingApi } from "@tweakpane/core";
import { type FolderApi, Pane } from "tweakpane";
import { digitsOfStep, formatNumber, t, unitSymbol } from "../../i18n/index.ts";
import { present } from "../../sim/checked/present.ts";
import type { Parameter } from "../../sim/parameters/parameter.ts";
import { bodyAt, STAGES, type Stage, VOLUME_RULES, type VolumeRule } from "../../sim/parameters/request.ts";
import {
  type Edit,
  setBody,
  setParameter,
  setStage,
  settingOf,
  setView,
  setVolumeRule,
} from "../../state/edit.ts";
import { PLAY_SPEEDS, type SceneState } from "../../state/scene-state.ts";
import { AGES, BODY_NAMES, type BodyName, bodyName, bodyNamed } from "../../ui/parameter-form.tsx";
import { FURTHER_GROUPS, firstParameters, groupParameters } from "../../ui/parameter-groups.ts";
import type { Session } from "../shared/session.ts";
import { nameControl } from "./tweak-names.ts";

/** A row: what it shows of the scene, and how it edits it. */
interface Row {
  readonly name: string;
  readonly label: string;
  readonly read: (state: SceneState) => number | string;
  readonly write: (value: number | string) => Edit;
  readonly range?: {
    readonly min: number;
    readonly max: number;
    readonly step: number;
    readonly unit: string;
  };
  readonly words?: Readonly<Record<string, string>>;
}

const wordsOf = (words: readonly string[], key: (word: string) => string): Record<string, string> =>
  Object.fromEntries(words.map((word) => [t(key(word)), word]));

const parameterRow = (parameter: Parameter): Row => ({
  name: parameter.name,
  label: t(`parameter.${parameter.name}`),
  read: (state) => settingOf(state.request, parameter),
  write: (value) => setParameter(parameter.name, value),
  ...(parameter.kind === "number"
    ? { range: parameter }
    : { words: wordsOf(parameter.words, (word) => `parameter.${parameter.name}.${word}`) }),
});

const stageRow = (): Row => ({
  name: "stage",
  label: t("control.stage"),
  read: (state) => state.request.stage,
  write: (stage) => setStage(stage as Stage),
  words: wordsOf(STAGES, (stage) => `stage.${stage}`),
});

const sharedRows = (): readonly Row[] => [
  {
    name: "volumeRule",
    label: t("control.volumeRule"),
    read: (state) => state.request.volumeRule,
    write: (rule) => setVolumeRule(rule as VolumeRule),
    words: wordsOf(VOLUME_RULES, (rule) => `volumeRule.${rule}`),
  },
  {
    name: "body",
    label: t("control.case"),
    read: (state) => bodyName(state.request.body),
    write: (name) => setBody(bodyNamed(name as BodyName)),
    words: wordsOf(BODY_NAMES, (name) => `case.${name}`),
  },
  {
    name: "age",
    label: t("control.age"),
    read: (state) => state.request.body.ageYears,
    write: (age) => setBody(bodyAt(Number(age))),
    range: AGES,
  },
  {
    name: "playSpeed",
    label: t("control.playSpeed"),
    read: (state) => state.view.playSpeed,
    write: (speed) => setView({ playSpeed: Number(speed) }),
    range: { ...PLAY_SPEEDS, unit: "x" },
  },
];

/** Fills `host`; the returned function takes the panel away. */
export function buildTweaks(host: HTMLElement, session: Session): () => void {
  const pane = new Pane({ container: host });
  const { stage } = session.scene.peek().request;
  const shown: {
    row: Row;
    values: Record<string, number | string>;
    binding: BindingApi;
    update: () => void;
  }[] = [];
  let following = false;

  const add = (folder: FolderApi | Pane, row: Row) => {
    const values = { [row.name]: row.read(session.scene.peek()) };
    const label =
      row.range && unitSymbol(row.range.unit) ? `${row.label} (${unitSymbol(row.range.unit)})` : row.label;
    const { min, max, step } = row.range ?? {};
    const digits = digitsOfStep(step ?? 1);
    const binding = folder.addBinding(
      values,
      row.name,
      row.range
        ? {
            label,
            min: present(min),
            max: present(max),
            step: present(step),
            format: (value: number) => formatNumber(value, digits),
          }
        : { label, options: present(row.words) },
    ) as BindingApi;
    const write = (value: number | string, last: boolean) => {
      session.edit(row.name, row.write(value));
      if (last) session.settle();
    };
    binding.on("change", (event) => {
      if (!following) write(event.value as number | string, event.last);
    });
    const update = nameControl(binding.element, row.label, row.range, {
      read: () => Number(values[row.name]),
      write: (value) => write(value, true),
    });
    shown.push({ row, values, binding, update });
  };

  add(pane, stageRow());
  for (const parameter of firstParameters(stage)) add(pane, parameterRow(parameter));
  for (const row of sharedRows()) add(pane, row);
  for (const group of FURTHER_GROUPS) {
    const parameters = groupParameters(group, stage);
    if (parameters.length === 0) continue;
    const folder = pane.addFolder({ title: t(`group.${group}`), expanded: false });
    for (const parameter of parameters) add(folder, parameterRow(parameter));
    const button = folder.element.querySelector("button");
    const updateFold = () => button?.setAttribute("aria-expanded", String(folder.expanded));
    folder.on("fold", updateFold);
    updateFold();
  }

  const stop = effect(() => {
    const state = session.scene.value;
    following = true;
    for (const { row, values, binding, update } of shown) {
      values[row.name] = row.read(state);
      binding.refresh();
      update();
    }
    following = false;
  });
  return () => {
    stop();
    pane.dispose();
  };
}
