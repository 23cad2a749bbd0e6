/** Writes docs/validation-physiology.md. */
import { writeFileSync } from "node:fs";
import { validationPage } from "./validation/validation-page.ts";

writeFileSync(new URL("../../docs/validation-physiology.md", import.meta.url), validationPage());
