/** Writing a lesson as a setting. */
import { render } from "preact";
import type { Setting } from "../setting.ts";
import "../study/study.css";
import "./author.css";
import { Author } from "./author.tsx";

export const setting: Setting = {
  mount(host, context) {
    render(<Author context={context} />, host);
    return () => render(null, host);
  },
};
