/** Writing a lesson as a mode. */
import { render } from "preact";
import type { Mode } from "../shared/mode.ts";
import "../study/study.css";
import "./author.css";
import "./author-narrow.css";
import "./author-low.css";
import { Author } from "./author.tsx";

export const mode: Mode = {
  mount(host, context) {
    render(<Author context={context} />, host);
    return () => render(null, host);
  },
};
