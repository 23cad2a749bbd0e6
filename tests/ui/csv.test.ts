import { describe, expect, it } from "vitest";
import { writeCsv } from "../../src/ui/take-away/csv.ts";

describe("a table of comma-separated values (RFC 4180)", () => {
  it("ends each record with CRLF and quotes commas, quotes and line breaks", () => {
    expect(
      writeCsv([
        ["a", 'say "b"', "c,d"],
        [1, -2.5, "e\nf"],
      ]),
    ).toBe('a,"say ""b""","c,d"\r\n1,-2.5,"e\nf"\r\n');
  });

  it("defuses words that a spreadsheet would run, and leaves negative numbers alone", () => {
    expect(writeCsv([["=1+1", -3]])).toBe("'=1+1,-3\r\n");
  });
});
