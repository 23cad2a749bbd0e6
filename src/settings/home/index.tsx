/** The start page as a setting. */
import { render } from "preact";
import type { Setting } from "../setting.ts";
import { Home } from "./home.tsx";

export const setting: Setting = {
  mount(host, context) {
    render(<Home context={context} />, host);
    return () => render(null, host);
  },
};
