/** Writes docs/validation-physiology.md and its figure. */
import { writeFileSync } from "node:fs";
import { TORNADO, validationPage } from "./validation/validation-page.ts";

const docs = (path: string) => new URL(`../../docs/${path}`, import.meta.url);
const { text, tornado } = validationPage();
writeFileSync(docs("validation-physiology.md"), text);
writeFileSync(docs(TORNADO), tornado);
