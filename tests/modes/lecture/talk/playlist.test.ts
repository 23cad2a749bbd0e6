import { describe, expect, it } from "vitest";
import {
  readPlaylistFile,
  readStops,
  writePlaylistFile,
  writeStops,
} from "../../../../src/modes/lecture/talk/playlist.ts";

const stops = [
  { lesson: "03-pathways", step: "swirl" },
  { lesson: "03-pathways", step: "tunnel" },
  { lesson: "04-energy-loss", step: "narrow" },
  { lesson: "03-pathways", step: "swirl" },
];

describe("a playlist", () => {
  it("comes back from a link as it went", () => {
    expect(readStops(writeStops(stops))).toEqual(stops);
    expect(writeStops(stops)).toMatch(/^[A-Za-z0-9\-._~!*]+$/);
    expect(readStops("")).toEqual([]);
  });

  it("comes back from a file as it went", () => {
    const playlist = { title: "Evening for parents", minutes: 25, stops };
    expect(readPlaylistFile(writePlaylistFile(playlist))).toEqual({ playlist, faults: [] });
  });

  it("from a strange file is refused with a reason", () => {
    expect(readPlaylistFile("not json").faults[0]!.path).toBe("file");
    expect(readPlaylistFile("null").faults[0]!.path).toBe("file");
    expect(readPlaylistFile('{"kind":"other"}').faults[0]!.path).toBe("kind");
  });

  it("with a bad stop and a bad time keeps the rest and says so", () => {
    const text = JSON.stringify({ kind: "lungward-playlist", minutes: -3, stops: [stops[0], 7] });
    const { playlist, faults } = readPlaylistFile(text);
    expect(playlist!.stops).toEqual([stops[0]]);
    expect(playlist!.minutes).toBe(20);
    expect(faults.map(({ path }) => path)).toEqual(["stops.1", "minutes"]);
  });
});
