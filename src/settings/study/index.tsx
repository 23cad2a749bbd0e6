/** Studying alone as a setting. */
import { render } from "preact";
import type { Setting } from "../setting.ts";
import "./study.css";
import { Study } from "./study.tsx";

export const setting: Setting = {
  mount(host, context) {
    render(<Study context={context} />, host);
    return () => render(null, host);
  },
};
