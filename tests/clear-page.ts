/** Files of tests share a process, and with it the page: what one leaves in the document is none of the next one's. */
import { afterAll } from "vitest";

afterAll(() => {
  globalThis.document?.body?.replaceChildren();
});
