/** The stage: owns the renderer and its canvas, keeps one scene, draws Frames, survives a lost graphics context. */
import { type Container, Rectangle, type Renderer } from "pixi.js";
import type { Frame } from "../chain/frame.ts";
import { fetchRenderer, type Started, startRenderer, type Way, wayOf } from "./drawing/renderer.ts";
import { freeOld } from "./pixi-patches.ts";
import type { Box, Divider, Scene, Viewport } from "./scene.ts";
import { sceneKeeper } from "./scene-keeper.ts";
import { drawingOf, fetchMaker } from "./scene-table.ts";
import type { Theme } from "./theme/theme.ts";

/** Room that controls and captions take at the edges, CSS px. */
export interface Insets {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

/** How a picture apart from the screen is drawn. */
export interface Look {
  readonly theme: Theme;
  /** px of the picture: its smallest type */
  readonly floor: number;
}

export interface StageOptions {
  readonly theme: Theme;
  /** CSS px: smallest type; 24 in a lecture or kiosk */
  readonly floor?: number;
  readonly insets?: Insets;
  /** s, wall clock */
  readonly clock: () => number;
  /** How to draw, whatever the device has. */
  readonly way?: Way | undefined;
}

export interface Stage {
  /** How it draws now: by WebGL, by the canvas renderer, or not at all. */
  readonly way: Way | "none";
  /** Resolved once words can be drawn; until then a moving pathway shows its blood alone, anything else nothing. */
  readonly typed: Promise<void>;
  draw(frame: Frame): void;
  setTheme(theme: Theme): void;
  setFloor(floor: number): void;
  setInsets(insets: Insets): void;
  /** Takes the host's present size; also called by itself when the host changes. */
  resize(): void;
  /** The frame as a picture of this size, every easing arrived; the screen keeps its own. */
  snapshot(frame: Frame, size: Size, look: Look): Promise<HTMLCanvasElement>;
  /** The frame as the inside of an SVG element of this size, every easing arrived. */
  drawing(frame: Frame, size: Size, look: Look): Promise<string>;
  /** The element or place under a point (CSS px from the host's top left). */
  pick(x: number, y: number): { readonly name: string; readonly pane: number } | null;
  /** mm of a pane's plane -> CSS px from the host's top left. */
  toScreen(point: readonly [number, number], pane?: number): readonly [number, number] | null;
  /** As last drawn; null where no pane lies over another. */
  divider(): Divider | null;
  release(): void;
}

type Size = readonly [width: number, height: number];
type Take<Taken> = (view: Container, renderer: Renderer) => Taken;

/** s: every easing has come to its end */
const ARRIVED = Number.POSITIVE_INFINITY;
const NOTHING = "nothing can be drawn here";
const NO_INSETS: Insets = { top: 0, right: 0, bottom: 0, left: 0 };
/** CSS px that nothing covers, in each direction: with less, as under words that hide the scene, nothing is drawn. */
const MIN_ROOM = 24;
/** Device pixels in a CSS pixel: more costs without showing. */
const MAX_DENSE = 2;
/** Device pixels that the processor draws: somewhat more than 1920 x 1080. */
const MAX_PIXELS = 2_300_000;

/** Never rejects: where nothing can be drawn, `way` is "none" and the page shows its words alone. */
export async function createStage(host: HTMLElement, options: StageOptions): Promise<Stage> {
  let { theme, floor = 13, insets = NO_INSETS } = options;
  let { renderer, meshes, paintInto }: Started | typeof NO_RENDERER = NO_RENDERER;
  let released = false;
  const scene = sceneKeeper();
  let last: number | undefined;
  let starting: Promise<void> = Promise.resolve();

  let way = wayOf(options.way);
  const type = loadType(theme);
  // What does not load shows in `begin`.
  await fetchRenderer[way]().catch(() => {});

  const begin = async () => {
    ({ renderer, meshes, paintInto } = await rendererIn(host, way));
    if (released) end();
    if (!renderer) return;
    host.appendChild(renderer.canvas).addEventListener("webglcontextlost", (event) => {
      event.preventDefault();
      // A fresh renderer is simpler and safer than repairing this one: all that is drawn comes from the next Frame.
      end();
      way = wayOf(options.way);
      starting = begin();
    });
    resize();
  };

  const end = () => {
    const old = renderer;
    renderer = null;
    scene.release();
    if (!old) return;
    const { canvas } = old;
    old.destroy({ removeView: true });
    canvas.remove();
  };

  const resize = () => {
    if (!renderer || fits(renderer, host)) return;
    renderer.resize(host.clientWidth, host.clientHeight, density(host, renderer.name));
    // A new size empties the canvas: the old picture stands until the next one is drawn.
    if (scene.made) render(renderer, scene.root);
  };

  const draw = (frame: Frame) => {
    if (!renderer || (!type.here && (frame.still || drawingOf(frame) !== "pathway"))) return;
    // Moved to another screen, or its scale changed.
    if (renderer.resolution !== density(host, renderer.name)) resize();
    const now = options.clock();
    const elapsed = last === undefined ? 0 : Math.min(0.25, Math.max(0, now - last));
    last = now;
    const before = scene.made;
    const shown = scene.of(drawingOf(frame));
    // A whole picture is followed by a whole one; only the first may come piece by piece.
    const eased = before && shown !== before ? ARRIVED : elapsed;
    const means = { meshes, paintInto, mute: !type.here };
    const viewport = { ...viewportOf(renderer, sizeOf(renderer), insets, floor, eased), ...means };
    if (Math.min(viewport.clear.width, viewport.clear.height) < MIN_ROOM) return;
    // Until another scene's drawing has come the picture stays as it is.
    if (!shown && before) return;
    shown?.draw(frame, viewport, theme);
    render(renderer, scene.root);
  };

  /** Gives `take` the frame drawn at this size, apart from the screen. */
  const apart = async <Taken>(frame: Frame, size: Size, as: Look & Partial<Viewport>, take: Take<Taken>) => {
    await Promise.all([type.loaded, starting]);
    const make = await fetchMaker(drawingOf(frame));
    const own = renderer;
    if (!own) throw new Error(NOTHING);
    const viewport = { ...viewportOf(own, size, NO_INSETS, as.floor, ARRIVED), meshes, ...as };
    return drawnOnce(make(), frame, viewport, as.theme, (view) => take(view, own));
  };

  const watcher = new ResizeObserver(resize);
  watcher.observe(host);
  await begin();

  return {
    get way() {
      if (!renderer || scene.missing) return "none";
      return renderer.name === "webgl" ? "webgl" : "canvas";
    },
    typed: type.loaded,
    draw,
    setTheme(next) {
      theme = next;
    },
    setFloor(next) {
      floor = next;
    },
    setInsets(next) {
      insets = next;
    },
    resize,
    snapshot: (frame, size, look) => apart(frame, size, look, (view, own) => pictureOf(own, view, ...size)),
    async drawing(frame, size, look) {
      const { sceneAsSvg } = await import("./drawing/svg.ts");
      return apart(frame, size, { ...look, meshes: null, dense: MAX_DENSE }, sceneAsSvg);
    },
    pick: (x, y) => scene.made?.pick?.(x, y) ?? null,
    toScreen: (point, pane = 0) => scene.made?.toScreen?.(point, pane) ?? null,
    divider: () => scene.made?.divider ?? null,
    release() {
      released = true;
      watcher.disconnect();
      end();
    },
  };
}

function render(renderer: Renderer, view: Container): void {
  renderer.render(view);
  freeOld();
}

/** Draws the frame with a scene of its own, which lives until `take` has what it wants. */
function drawnOnce<Taken>(
  still: Scene,
  frame: Frame,
  viewport: Viewport,
  theme: Theme,
  take: (view: Container) => Taken,
): Taken {
  try {
    // Twice: the room that words take is known after the first.
    still.draw(frame, viewport, theme);
    still.draw(frame, viewport, theme);
    return take(still.view);
  } finally {
    still.release();
    freeOld();
  }
}

function pictureOf(renderer: Renderer, target: Container, width: number, height: number): HTMLCanvasElement {
  const drawn = renderer.extract.canvas({
    target,
    frame: new Rectangle(0, 0, width, height),
    resolution: 1,
    antialias: true,
  });
  return drawn as HTMLCanvasElement;
}

/** A renderer of the host's size; null where nothing can be drawn. */
async function rendererIn(host: HTMLElement, way: Way): Promise<Started | typeof NO_RENDERER> {
  try {
    const started = await startRenderer(way, {
      width: Math.max(1, host.clientWidth),
      height: Math.max(1, host.clientHeight),
      antialias: true,
      autoDensity: true,
      backgroundAlpha: 0,
      resolution: density(host, way),
    });
    const { canvas } = started.renderer;
    canvas.style.position = "absolute";
    canvas.style.inset = "0";
    canvas.setAttribute("aria-hidden", "true");
    return started;
  } catch {
    return NO_RENDERER;
  }
}

const NO_RENDERER = { renderer: null, meshes: null, paintInto: undefined };

/** Device pixels in a CSS pixel as drawn now: the processor draws no more of them than it can in time. */
function density({ clientWidth, clientHeight }: HTMLElement, way: string): number {
  const wanted = Math.min(MAX_DENSE, globalThis.devicePixelRatio || 1);
  const most = Math.sqrt(MAX_PIXELS / Math.max(1, clientWidth * clientHeight));
  return way === "webgl" ? wanted : Math.min(wanted, most);
}

/** The zero has a face of its own. */
const SAMPLE = "0 a";

/** Text drawn before its face has come would keep the wrong shape. */
function loadType({ family }: Theme) {
  const asked = ["24px", "bold 24px"].map((size) => document.fonts.load(`${size} "${family}"`, SAMPLE));
  // The fallback face is legible too.
  const loaded = Promise.allSettled(asked).then(() => {
    type.here = true;
  });
  const type = { loaded, here: false };
  return type;
}

/** The host has the renderer's size, or none. */
function fits({ screen, resolution, name }: Renderer, host: HTMLElement): boolean {
  const { clientWidth, clientHeight } = host;
  if (clientWidth <= 0 || clientHeight <= 0) return true;
  return screen.width === clientWidth && screen.height === clientHeight && resolution === density(host, name);
}

const viewportOf = (
  { resolution }: Renderer,
  [width, height]: readonly [number, number],
  edge: Insets,
  floor: number,
  elapsed: number,
): Omit<Viewport, "meshes" | "paintInto" | "mute"> => ({
  full: { x: 0, y: 0, width, height },
  clear: inner(width, height, edge),
  floor,
  elapsed,
  dense: resolution,
});

const sizeOf = ({ screen }: Renderer): Size => [screen.width, screen.height];

const inner = (width: number, height: number, edge: Insets): Box => ({
  x: edge.left,
  y: edge.top,
  width: Math.max(1, width - edge.left - edge.right),
  height: Math.max(1, height - edge.top - edge.bottom),
});
