/** Comma and point are both decimal signs; true minus and thin spaces are read. Undefined when it is no number. */
export function parseNumber(text: string): number | undefined {
  const plain = text
    .trim()
    .replace(/[\s\u202f\u00a0]/g, "")
    .replace("\u2212", "-")
    .replace(",", ".");
  return /^-?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : undefined;
}
