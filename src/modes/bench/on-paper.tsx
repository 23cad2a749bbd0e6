/** What the browser's own print puts on paper in place of the bench: the page for families, its picture drawn for paper where there is time. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { language } from "../../i18n/index.ts";
import { HANDING_OUT } from "../../ui/take-away/handout.tsx";
import { printAs } from "../../ui/take-away/print-as.ts";
import { HandoutView } from "../shared/handout/handout-view.tsx";
import type { Context } from "../shared/mode.ts";

/** The stage as it stands; nothing where only a graphics chip could read it back. */
function standing(): string {
  const canvas = document.querySelector<HTMLCanvasElement>("#stage canvas");
  return canvas?.getContext("2d") ? canvas.toDataURL() : "";
}

const isHanded = (): boolean => document.documentElement.classList.contains(HANDING_OUT);

export function OnPaper({ context }: { readonly context: Context }) {
  /** what is printed: a picture of its own comes, or the data address of the one that stands */
  const paper = useSignal<{ readonly picture?: string } | null>(null);
  useEffect(() => {
    const close = () => {
      document.documentElement.classList.remove(HANDING_OUT);
      paper.value = null;
    };
    const onKey = (event: KeyboardEvent) => {
      const asked = (event.ctrlKey || event.metaKey) && !event.shiftKey && !event.altKey;
      if (!asked || event.key.toLowerCase() !== "p" || isHanded()) return;
      event.preventDefault();
      paper.value = {};
    };
    const onPrint = () => {
      if (isHanded()) return;
      // The page has no time to draw: what is set here is on it before the browser goes on.
      document.documentElement.classList.add(HANDING_OUT);
      paper.value = { picture: standing() };
      addEventListener("afterprint", close, { once: true });
    };
    addEventListener("keydown", onKey);
    addEventListener("beforeprint", onPrint);
    return () => {
      removeEventListener("keydown", onKey);
      removeEventListener("beforeprint", onPrint);
      removeEventListener("afterprint", close);
    };
  }, []);
  if (!paper.value) return null;
  const close = () => {
    paper.value = null;
  };
  const { picture } = paper.value;
  return picture === undefined ? (
    <HandoutView context={context} onReady={(title) => printAs(title, language(), close)} onClose={close} />
  ) : (
    <HandoutView context={context} picture={picture} onClose={close} />
  );
}
