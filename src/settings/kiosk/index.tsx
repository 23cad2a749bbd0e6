/** The kiosk as a setting. */
import { render } from "preact";
import type { Setting } from "../setting.ts";
import { Kiosk } from "./kiosk.tsx";

export const setting: Setting = {
  mount(host, context) {
    render(<Kiosk context={context} />, host);
    return () => render(null, host);
  },
};
