/** A button that asks for a lesson file. */

export interface LessonFilePickerProps {
  readonly label: string;
  readonly onPick: (file: File | undefined) => void;
}

export const LessonFilePicker = ({ label, onPick }: LessonFilePickerProps) => (
  <label class="button">
    {label}
    <input
      class="unseen"
      type="file"
      accept=".md,text/markdown,text/plain"
      onChange={(event) => {
        onPick(event.currentTarget.files?.[0]);
        // Else the same file could not be picked again.
        event.currentTarget.value = "";
      }}
    />
  </label>
);
