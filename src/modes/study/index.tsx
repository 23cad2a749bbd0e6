/** Studying alone as a mode. */
import { render } from "preact";
import type { Mode } from "../shared/mode.ts";
import "./study.css";
import { Study } from "./study.tsx";

export const mode: Mode = {
  mount(host, context) {
    render(<Study context={context} />, host);
    return () => render(null, host);
  },
};
