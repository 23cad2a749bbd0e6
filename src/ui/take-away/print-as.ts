/** The browser's print under a name of its own: it offers the document's title as the name of the PDF. */
import { nameOf } from "./file-name.ts";

/** @param language of the words; @param done runs once the print has closed */
export function printAs(subject: string, language: string, done: () => void = () => {}): void {
  const before = document.title;
  document.title = nameOf(subject, language, new Date());
  addEventListener(
    "afterprint",
    () => {
      document.title = before;
      done();
    },
    { once: true },
  );
  print();
}
