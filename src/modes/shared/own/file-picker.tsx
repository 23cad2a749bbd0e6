/** A button that asks for a file. */

export interface FilePickerProps {
  readonly label: string;
  /** File name endings and media types, as the browser's `accept` has them. */
  readonly accept: string;
  readonly onPick: (file: File) => void;
}

export const FilePicker = ({ label, accept, onPick }: FilePickerProps) => (
  <label class="button">
    {label}
    <input
      class="unseen"
      type="file"
      accept={accept}
      onChange={(event) => {
        const file = event.currentTarget.files?.[0];
        if (file) onPick(file);
        // Else the same file could not be picked again.
        event.currentTarget.value = "";
      }}
    />
  </label>
);
