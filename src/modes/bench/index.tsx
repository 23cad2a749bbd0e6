/** The bench as a mode. */
import { render } from "preact";
import type { Mode } from "../shared/mode.ts";
import { Bench } from "./bench.tsx";

export const mode: Mode = {
  mount(host, context) {
    render(<Bench context={context} />, host);
    return () => render(null, host);
  },
};
