/**
 * A state as a short text for a link or a QR code: `1~textracardiac~sabc24def18`.
 * The first piece is the version of the format; each further piece is a letter and its value, and only what differs from
 * the default state is written. Every character is unreserved in a URL (RFC 3986). No personal data: invented bodies only.
 */
import type { Fault } from "../sim/faults.ts";
import { currentId } from "../sim/parameters/aliases.ts";
import { STAGES, VOLUME_RULES } from "../sim/parameters/request.ts";
import {
  readBody,
  readChoice,
  readClots,
  readNumber,
  readSettings,
  shortWord,
  writeSettings,
} from "./address-pieces.ts";
import { arriveAtScene, isComplete } from "./enter-scene.ts";
import {
  COLOURINGS,
  MAX_BESIDE,
  OVERLAYS,
  PLAY_SPEEDS,
  SCENES,
  type SceneState,
  START,
  SWIPES,
  type View,
} from "./scene-state.ts";

const VERSION = "1";

/** Longest text that still makes an easily read QR code. */
export const LONGEST_ADDRESS = 350;

/** Characters; three panes with every control moved need fewer. The rest is not read. */
export const LONGEST_READ = 2000;

/** The scene as it is written, with nothing that it would bring. */
const EXACT = "e";

const FLAGS = { l: "labels", h: "handles", s: "streamlines", g: "gradeLine", d: "ledger" } as const;
type Flag = keyof typeof FLAGS;

export interface Read {
  readonly state: SceneState;
  /** What could not be used, each with its replacement. Empty when all of the text was used. */
  readonly dropped: readonly Fault[];
}

/** The short text. Dye is momentary and is left out. */
export function writeAddress(state: SceneState): string {
  const { request, view } = state;
  const pieces = [VERSION];
  const tell = (letter: string, value: string, fallback: string) => {
    if (value !== fallback) pieces.push(letter + value);
  };
  const body = (each: typeof request.body) => `${each.ageYears}_${each.bsa}_${each.haemoglobin}`;
  tell("p", state.scene, START.scene);
  // A bare name of a scene brings what the scene is shown with.
  if (!isComplete(state)) pieces.push(EXACT);
  tell("t", shortWord(request.stage), shortWord(START.request.stage));
  tell("b", body(request.body), body(START.request.body));
  tell("v", shortWord(request.volumeRule), shortWord(START.request.volumeRule));
  tell("s", writeSettings(request.set), "");
  for (const pane of state.beside) {
    pieces.push(`w${shortWord(pane.stage ?? "")}`);
    tell("x", writeSettings(pane.set ?? {}), "");
  }
  tell("c", view.colouring, START.view.colouring);
  tell("o", view.overlay, START.view.overlay);
  tell("f", writeFlags(view), "");
  tell("r", String(view.playSpeed), String(START.view.playSpeed));
  if (view.paused) pieces.push("z");
  tell("k", view.focus ?? "", "");
  tell("m", view.camera, START.view.camera);
  tell("d", String(view.swipe), String(START.view.swipe));
  tell("q", view.clots.join("_"), "");
  return pieces.join("~");
}

/** The valid state nearest to the text, for any text. */
export function readAddress(text: string): Read {
  const dropped: Fault[] = [];
  if (text.length > LONGEST_READ)
    dropped.push({ path: "link", found: `${text.length} characters`, allowed: `at most ${LONGEST_READ}` });
  const [version, ...pieces] = text.slice(0, LONGEST_READ).split("~");
  if (version !== VERSION) dropped.push({ path: "version", found: version ?? "", allowed: VERSION });
  let state: SceneState = START;
  for (const piece of pieces.filter((each) => each !== EXACT))
    state = readPiece(state, piece.charAt(0), piece.slice(1), dropped);
  return { state: pieces.includes(EXACT) ? state : arriveAtScene(state), dropped };
}

function readPiece(state: SceneState, letter: string, value: string, dropped: Fault[]): SceneState {
  const { request, view } = state;
  const ask = (change: Partial<typeof request>) => ({ ...state, request: { ...request, ...change } });
  const see = (change: Partial<View>) => ({ ...state, view: { ...view, ...change } });
  switch (letter) {
    case "p":
      return { ...state, scene: readChoice("scene", value, SCENES, state.scene, dropped) };
    case "t":
      return ask({ stage: readChoice("stage", value, STAGES, request.stage, dropped) });
    case "b":
      return ask({ body: readBody(value, request.body, dropped) });
    case "v":
      return ask({
        volumeRule: readChoice("volumeRule", value, VOLUME_RULES, request.volumeRule, dropped),
      });
    case "s":
      return ask({ set: readSettings("set", value, dropped) });
    case "w": {
      const stage = value ? readChoice("beside.stage", value, STAGES, request.stage, dropped) : undefined;
      if (state.beside.length === MAX_BESIDE) break;
      return { ...state, beside: [...state.beside, stage ? { stage } : {}] };
    }
    case "x": {
      const last = state.beside.at(-1);
      if (!last) break;
      const set = readSettings("beside.set", value, dropped);
      return { ...state, beside: [...state.beside.slice(0, -1), { ...last, set }] };
    }
    case "c":
      return see({ colouring: readChoice("colouring", value, COLOURINGS, view.colouring, dropped) });
    case "o":
      return see({ overlay: readChoice("overlay", value, OVERLAYS, view.overlay, dropped) });
    case "f":
      return see(readFlags(value, dropped));
    case "r": {
      const playSpeed = readNumber("playSpeed", value, PLAY_SPEEDS, dropped);
      return playSpeed === null ? state : see({ playSpeed });
    }
    case "z":
      if (value !== "") break;
      return see({ paused: true });
    case "k":
      return see({ focus: readName("focus", value, dropped) });
    case "m":
      return see({ camera: readName("camera", value, dropped) ?? START.view.camera });
    case "d":
      return see({ swipe: readNumber("swipe", value, SWIPES, dropped) });
    case "q":
      return see({ clots: readClots(value, dropped) });
  }
  dropped.push({ path: "link", found: letter + value, allowed: "petbvswxcofrzkmdq" });
  return state;
}

// Names are looked up in the geometry later; a name can only have letters.
function readName(path: string, value: string, dropped: Fault[]): string | null {
  if (/^[a-z]{1,40}$/i.test(value)) return currentId("places", value);
  dropped.push({ path, found: value, allowed: "a-z" });
  return null;
}

function writeFlags(view: View): string {
  return Object.entries(FLAGS)
    .filter(([, name]) => view[name] !== START.view[name])
    .map(([letter, name]) => (view[name] ? letter.toUpperCase() : letter))
    .join("");
}

function readFlags(value: string, dropped: Fault[]): Partial<View> {
  const flags: { -readonly [Name in (typeof FLAGS)[Flag]]?: boolean } = {};
  for (const letter of value) {
    const name = FLAGS[letter.toLowerCase() as Flag];
    if (name) flags[name] = letter !== letter.toLowerCase();
    else dropped.push({ path: "view", found: letter, allowed: Object.keys(FLAGS).join("") });
  }
  return flags;
}
