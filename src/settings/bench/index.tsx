/** The bench as a setting. */
import { render } from "preact";
import type { Setting } from "../setting.ts";
import { Bench } from "./bench.tsx";

export const setting: Setting = {
  mount(host, context) {
    render(<Bench context={context} />, host);
    return () => render(null, host);
  },
};
