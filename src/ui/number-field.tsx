/** An exact value typed in: comma and point both read; what is out of range stays in the field and is explained. */
import { useId, useState } from "preact/hooks";
import { formatNumber, formatQuantity, parseNumber, t, unitSymbol } from "../i18n/index.ts";

export interface NumberFieldProps {
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly digits: number;
  readonly unit: string;
  readonly onChange: (value: number) => void;
  readonly onSettle?: () => void;
}

export function NumberField({ label, value, min, max, digits, unit, onChange, onSettle }: NumberFieldProps) {
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const [fault, setFault] = useState("");
  const commit = () => {
    if (draft === null) return;
    const read = parseNumber(draft);
    if (read === undefined || read < min || read > max) {
      setFault(
        t("field.fault", {
          found: draft,
          min: formatNumber(min, digits),
          max: formatQuantity(max, unit, digits),
        }),
      );
      return;
    }
    setFault("");
    setDraft(null);
    onChange(read);
    onSettle?.();
  };
  return (
    <span class="number-field">
      <input
        type="text"
        inputMode="decimal"
        aria-label={label}
        aria-invalid={fault !== ""}
        aria-describedby={fault ? id : undefined}
        value={draft ?? formatNumber(value, digits)}
        onInput={(event) => setDraft(event.currentTarget.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === "Enter") commit();
          if (event.key !== "Escape" || draft === null) return;
          event.stopPropagation();
          setDraft(null);
          setFault("");
        }}
      />
      <span class="unit">{unitSymbol(unit)}</span>
      {fault && (
        <span class="field-fault" id={id} role="alert">
          {fault}
        </span>
      )}
    </span>
  );
}
