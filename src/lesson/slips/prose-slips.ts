/** Slips in a step's words: marks that are nearly right and would stand on the page as typed. */
import { parseFigure } from "../model/live-figures.ts";
import type { Slip } from "./slip.ts";

/** A live number in single braces, a claim apart from its sentence, a list with signs that make none. */
export function proseSlips(text: string): readonly Slip[] {
  const lines = text.split("\n");
  return lines.flatMap((written, line) => [
    ...singleBraces(written).map((slip) => ({ line, ...slip })),
    ...detachedClaims(written).map((slip) => ({ line, ...slip })),
    ...listSigns(lines, line).map((slip) => ({ line, ...slip })),
  ]);
}

type Found = Omit<Slip, "line">;

function singleBraces(line: string): Found[] {
  return [...line.matchAll(/(?<!\{)\{([^{}|:]{1,200}\|[^{}|]{1,40})\}(?!\})/g)]
    .filter(([, inner = ""]) => parseFigure(inner).ok)
    .map(([written, inner = ""]) => ({
      found: written,
      allowed: "a live number in two braces on each side",
      fix: [written, `{{ ${inner.trim()} }}`],
    }));
}

function detachedClaims(line: string): Found[] {
  return [...line.matchAll(/\][ \t]{1,9}(\{claim:[^{}]{0,400}\})/g)].map(([written, claim = ""]) => ({
    found: `a claim apart from its sentence, ${claim.slice(0, 40)}`,
    allowed: "[The sentence.]{claim: ...} without a blank between",
    fix: [written, `]${claim}`],
  }));
}

const SIGN = /^(\s*)[–—•·●▪]\s+(?=\S)/;

/** Two lines or more that begin so are meant as a list; one alone may be speech. */
function listSigns(lines: readonly string[], at: number): Found[] {
  const from = lines[at] ?? "";
  const bullet = /^\s*[•·●▪]/.test(from);
  if (!SIGN.test(from) || SIGN.test(lines[at - 1] ?? "")) return [];
  let to = at;
  while (SIGN.test(lines[to] ?? "")) to++;
  if (to - at < 2 && !bullet) return [];
  const list = lines.slice(at, to);
  return [
    {
      found: `a list with ${JSON.stringify(from.trim().charAt(0))}`,
      allowed: "a hyphen and a blank at the start of each line, - so",
      fix: [list.join("\n"), list.map((line) => line.replace(SIGN, "$1- ")).join("\n")],
    },
  ];
}

/** A live number whose unit and digits stand in the other order, or without the bar before them. */
export function numberSlip(
  inner: string,
): { readonly found: string; readonly allowed: string; readonly right: string } | null {
  const [, name, digits, unit] = /^(.*\S)\s*\|\s*(\d)\s+(\S+)\s*$/.exec(inner) ?? [];
  const turned = name && `${name} | ${unit} ${digits}`;
  if (turned && parseFigure(turned).ok)
    return {
      found: `${digits} ${unit}`,
      allowed: `the unit first, then the digits: ${unit} ${digits}`,
      right: `{{ ${turned.trim()} }}`,
    };
  const [, before, after] = /^([^|]*\S)\s+(\S+\s+\d)\s*$/.exec(inner) ?? [];
  const barred = before && `${before} | ${after}`;
  if (barred && parseFigure(barred).ok)
    return {
      found: `{{${inner}}}`,
      allowed: `a bar before the unit: | ${after}`,
      right: `{{ ${barred.trim()} }}`,
    };
  return null;
}
