/** A button that asks for a lesson file. */
import { FilePicker, type FilePickerProps } from "./file-picker.tsx";

export const LessonFilePicker = (props: Omit<FilePickerProps, "accept">) => (
  <FilePicker {...props} accept=".md,text/markdown,text/plain" />
);
