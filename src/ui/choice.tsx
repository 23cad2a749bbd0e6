/** One of a few words: a radio group with one tab stop, arrows choose (native radios). */
import { useId } from "preact/hooks";

export interface ChoiceProps<Word extends string> {
  readonly label: string;
  readonly value: Word;
  readonly words: readonly Word[];
  readonly nameOf: (word: Word) => string;
  readonly onChoose: (word: Word) => void;
  /** Keeps the group's name for screen readers only. */
  readonly quietLabel?: boolean;
}

export function Choice<Word extends string>(props: ChoiceProps<Word>) {
  const { label, value, words, nameOf, onChoose, quietLabel } = props;
  const name = useId();
  return (
    <fieldset class="choice">
      <legend class={quietLabel ? "unseen" : undefined}>{label}</legend>
      <div class="choice-words">
        {words.map((word) => (
          <label key={word}>
            <input
              type="radio"
              name={name}
              value={word}
              checked={word === value}
              onChange={() => onChoose(word)}
            />
            <span>{nameOf(word)}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

export interface SwitchProps {
  readonly label: string;
  readonly on: boolean;
  readonly onChange: (on: boolean) => void;
}

/** Something shown or not. */
export const Switch = ({ label, on, onChange }: SwitchProps) => (
  <label class="switch">
    <input
      type="checkbox"
      role="switch"
      aria-checked={on}
      checked={on}
      onChange={(event) => onChange(event.currentTarget.checked)}
    />
    <span>{label}</span>
  </label>
);
