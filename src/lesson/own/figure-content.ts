/** Whether a figure's bytes are what its name says: PNG and JPEG by their signature, an SVG by its tags, so that a file from elsewhere brings no script, link or picture along. */
import type { Fault } from "../../sim/faults.ts";
import { bytesOfBase64 } from "../progress/base64.ts";
import { drawingCost, MAX_DRAWN, plainTags } from "./drawing-cost.ts";

/** Each type's name, and the base64 of the first bytes of all its files. */
const SIGNATURES = { png: ["PNG", "iVBORw0KGgo"], jpg: ["JPEG", "/9j/"] } as const;

const NO_SHAPE =
  /^<([\w-]+:)?(script|foreignobject|a|image|iframe|object|embed|audio|video|handler|listener)[\s/>]/i;
const HANDLER = /\son[a-z]+\s*=/i;
const LINK = /\s(?:[\w-]+:)?href\s*=\s*(?:"\s*[^"#\s]|'\s*[^'#\s])/i;

export function contentFault(name: string, data: string): Omit<Fault, "path"> | null {
  if (name.endsWith(".svg")) return svgFault(name, data);
  const [type, start] = SIGNATURES[name.endsWith(".png") ? "png" : "jpg"];
  return data.startsWith(start)
    ? null
    : { found: `${name} is no ${type}`, allowed: "a picture of the type that its name ends in" };
}

function svgFault(name: string, data: string): Omit<Fault, "path"> | null {
  const text = decoded(data);
  const tags = text && plainTags(text);
  if (!tags)
    return {
      found: `${name} is no plain SVG`,
      allowed: "an SVG of tags alone; added on the author page, it is cleaned",
    };
  const bad = tags.find((tag) => NO_SHAPE.test(tag) || HANDLER.test(withoutValues(tag)) || LINK.test(tag));
  if (bad !== undefined)
    return {
      found: `${name} with ${bad.slice(0, 40)}`,
      allowed: "an SVG without scripts, links and pictures; added on the author page, it is cleaned",
    };
  return costFault(name, text);
}

/** Masks, patterns, markers and filters within each other: a small file may ask for more than a browser can draw. */
export function costFault(name: string, svg: string): Omit<Fault, "path"> | null {
  const cost = drawingCost(svg);
  if (cost <= MAX_DRAWN) return null;
  const times = Number.isFinite(cost) ? `${cost} times` : "without end";
  return { found: `${name} with parts to draw ${times}`, allowed: `at most ${MAX_DRAWN} times` };
}

const withoutValues = (tag: string): string => tag.replace(/"[^"]*"|'[^']*'/g, '""');

/** null for what is no base64 of UTF-8 */
function decoded(data: string): string | null {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytesOfBase64(data));
  } catch {
    return null;
  }
}
