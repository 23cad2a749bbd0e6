/** The kiosk as a mode. */
import { render } from "preact";
import type { Mode } from "../shared/mode.ts";
import { Kiosk } from "./kiosk.tsx";
import "../lecture/talk.css";
import "./kiosk.css";
import "./kiosk-dialogs.css";

export const mode: Mode = {
  mount(host, context) {
    render(<Kiosk context={context} />, host);
    return () => render(null, host);
  },
};
