/** The phone page: its own entry, a few kilobytes, nothing of the kit but its words. */
import { effect } from "@preact/signals";
import { render } from "preact";
import { Phone } from "./phone.tsx";
import { join, readCode, wake } from "./seat.ts";
import { language, t } from "./words.ts";
import "./phone.css";

effect(() => {
  document.documentElement.lang = language.value;
  document.title = t("phone.title");
});

const code = readCode(location.hash.slice(1));
if (code) join(code);

addEventListener("online", wake);
addEventListener("pageshow", wake);
document.addEventListener("visibilitychange", () => {
  if (document.visibilityState === "visible") wake();
});

const host = document.getElementById("page");
if (host) render(<Phone />, host);
