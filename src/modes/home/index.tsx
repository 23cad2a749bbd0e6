/** The start page as a mode. */
import { render } from "preact";
import type { Mode } from "../shared/mode.ts";
import { Home } from "./home.tsx";

export const mode: Mode = {
  mount(host, context) {
    render(<Home context={context} />, host);
    return () => render(null, host);
  },
};
