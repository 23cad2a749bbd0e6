/** An equation: typeset once the typesetter is loaded, its TeX until then. Only the technical version uses it. */
import { useEffect, useState } from "preact/hooks";

export function Equation({ tex, display }: { readonly tex: string; readonly display?: boolean }) {
  const [markup, setMarkup] = useState<string | null>(null);
  useEffect(() => {
    let gone = false;
    void import("./typeset.ts").then(({ typeset }) => {
      if (!gone) setMarkup(typeset(tex, display ?? false));
    });
    return () => {
      gone = true;
    };
  }, [tex, display]);
  const kind = display ? "equation display" : "equation";
  if (markup === null) return <code class={kind}>{tex}</code>;
  return <span class={kind} dangerouslySetInnerHTML={{ __html: markup }} />;
}
