/** TeX -> sanitised markup (spans for the eye, MathML for readers). Links, pictures and handlers cannot come through. */
import DOMPurify from "dompurify";
import katex from "katex";
import "katex/dist/katex.min.css";

export function typeset(tex: string, display: boolean): string {
  const markup = katex.renderToString(tex, {
    displayMode: display,
    output: "htmlAndMathml",
    throwOnError: false,
    trust: false,
    strict: "ignore",
    maxSize: 10,
    maxExpand: 100,
  });
  return DOMPurify.sanitize(markup, {
    USE_PROFILES: { html: true, mathMl: true, svg: true },
    ADD_TAGS: ["semantics", "annotation"],
    FORBID_TAGS: ["a", "img", "image", "use", "form", "input", "button"],
    FORBID_ATTR: ["href", "src", "id"],
  });
}
