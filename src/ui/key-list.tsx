/** The list of keys, opened by `?`: made from the very table that acts. */
import type { Signal } from "@preact/signals";
import { hasMessage, t } from "../i18n/index.ts";
import { Switch } from "./choice.tsx";
import { Dialog } from "./dialog.tsx";
import type { Key } from "./keys.ts";

export interface KeyListProps {
  readonly table: readonly Key[];
  readonly lettersOn: Signal<boolean>;
  readonly onClose: () => void;
}

export function KeyList({ table, lettersOn, onClose }: KeyListProps) {
  return (
    <Dialog title={t("keys.title")} onClose={onClose}>
      <table class="key-list">
        <thead>
          <tr>
            <th scope="col">{t("keys.key")}</th>
            <th scope="col">{t("keys.does")}</th>
          </tr>
        </thead>
        <tbody>
          {table.map((key) => (
            <tr key={key.does + key.keys[0]}>
              <td>{key.keys.map((name) => keyCap(name, key))}</td>
              <td>{t(key.does)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Switch
        label={t("keys.letters")}
        on={lettersOn.value}
        onChange={(on) => {
          lettersOn.value = on;
        }}
      />
      <button type="button" onClick={() => print()}>
        {t("keys.print")}
      </button>
    </Dialog>
  );
}

function keyCap(name: string, { control, shift }: Key) {
  const message = `keys.name.${name}`;
  const cap = hasMessage(message) ? t(message) : name.toUpperCase();
  const held = [control && t("keys.name.Control"), shift && t("keys.name.Shift")].filter(Boolean);
  return (
    <kbd key={name}>
      <bdi>{[...held, cap].join("+")}</bdi>
    </kbd>
  );
}
