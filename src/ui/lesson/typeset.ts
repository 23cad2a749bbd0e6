/** TeX -> sanitised markup (spans for the eye, MathML for readers). Links, pictures and handlers cannot come through. */
import DOMPurify from "dompurify";
import katex from "katex";
import { formulaFault } from "../../lesson/format/formula.ts";
import "katex/dist/katex.min.css";

/** null for what cannot be set: then its TeX stays. */
export function typeset(tex: string, display: boolean): string | null {
  const markup = markupOf(tex, display);
  return markup && sanitized(markup);
}

function markupOf(tex: string, display: boolean): string | null {
  if (formulaFault(tex)) return null;
  try {
    return katex.renderToString(tex, {
      displayMode: display,
      output: "htmlAndMathml",
      throwOnError: false,
      trust: false,
      strict: "ignore",
      maxSize: 10,
      maxExpand: 100,
    });
  } catch {
    // It throws at more than its own faults, such as a full stack.
    return null;
  }
}

const sanitized = (markup: string): string =>
  DOMPurify.sanitize(markup, {
    USE_PROFILES: { html: true, mathMl: true, svg: true },
    ADD_TAGS: ["semantics", "annotation"],
    FORBID_TAGS: ["a", "img", "image", "use", "form", "input", "button"],
    FORBID_ATTR: ["href", "src", "id"],
  });
