/** The stage: owns the renderer and its canvas, keeps one scene, draws Frames, survives a lost graphics context. */
import "pixi.js/unsafe-eval";
import "./pixi-patches.ts";
import { Application, type Container, Rectangle } from "pixi.js";
import type { Frame } from "../chain/frame.ts";
import { canvasForProcessor, hasGraphicsChip } from "./drawing/by-processor.ts";
import type { Box, Scene, Viewport } from "./scene.ts";
import { SCENE_MAKERS } from "./scene-table.ts";
import type { Theme } from "./theme/theme.ts";

/** Room that controls and captions take at the edges, CSS px. */
export interface Insets {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

export interface StageOptions {
  readonly theme: Theme;
  /** CSS px: smallest type; 24 in a lecture or kiosk */
  readonly floor?: number;
  readonly insets?: Insets;
  /** s, wall clock */
  readonly clock: () => number;
  /** How to draw, whatever the device has. */
  readonly way?: "webgl" | "canvas" | undefined;
}

export interface Stage {
  /** How it draws now: by WebGL, by the canvas renderer, or not at all. */
  readonly way: "webgl" | "canvas" | "none";
  draw(frame: Frame): void;
  setTheme(theme: Theme): void;
  setFloor(floor: number): void;
  setInsets(insets: Insets): void;
  /** Takes the host's size anew; also called by itself when the host changes. */
  resize(): void;
  /** The frame as a picture of this size, every easing arrived; the screen keeps its own. */
  snapshot(frame: Frame, width: number, height: number): Promise<HTMLCanvasElement>;
  /** The frame as the inside of an SVG element of this size, every easing arrived. */
  drawing(frame: Frame, width: number, height: number): Promise<string>;
  /** The element or place under a point (CSS px from the host's top left). */
  pick(x: number, y: number): { readonly name: string; readonly pane: number } | null;
  /** mm of a pane's plane -> CSS px from the host's top left. */
  toScreen(point: readonly [number, number], pane?: number): readonly [number, number] | null;
  release(): void;
}

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
  const { clock } = options;
  let app: Application | null = null;
  let released = false;
  let scene: { readonly name: string; readonly made: Scene } | null = null;
  let last: number | undefined;
  let starting: Promise<void> = Promise.resolve();

  await loadType(theme);

  const begin = async () => {
    app = await startApplication(host, options.way ?? (hasGraphicsChip() ? "webgl" : "canvas"));
    if (released) end();
    if (!app) return;
    const canvas = app.canvas;
    canvas.style.position = "absolute";
    canvas.style.inset = "0";
    canvas.setAttribute("aria-hidden", "true");
    host.appendChild(canvas);
    canvas.addEventListener("webglcontextlost", (event) => {
      event.preventDefault();
      // A fresh renderer is simpler and surer than mending this one: all that is drawn comes from the next Frame.
      end();
      starting = begin();
    });
    resize();
  };

  const end = () => {
    const old = app;
    app = null;
    scene?.made.release();
    scene = null;
    if (!old) return;
    const { canvas } = old;
    old.destroy({ removeView: true }, { children: true });
    canvas.remove();
  };

  const resize = () => {
    const { clientWidth, clientHeight } = host;
    if (!app || clientWidth <= 0 || clientHeight <= 0) return;
    app.renderer.resize(clientWidth, clientHeight, density(host, app.renderer.name));
    // A new size empties the canvas: the old picture stands until the next one is drawn.
    app.renderer.render(app.stage);
  };

  const settingFor = (width: number, height: number, elapsed: number, edge: Insets): Viewport => ({
    full: { x: 0, y: 0, width, height },
    clear: inner(width, height, edge),
    floor,
    elapsed,
    dense: app!.renderer.resolution,
    meshes: app!.renderer.name === "webgl",
  });

  const sceneFor = (frame: Frame): Scene | null => {
    const { scene: name } = frame.state;
    if (scene?.name === name) return scene.made;
    const make = SCENE_MAKERS[name];
    if (scene) {
      app!.stage.removeChild(scene.made.view);
      scene.made.release();
      scene = null;
    }
    if (!make) return null;
    const made = make();
    app!.stage.addChild(made.view as Container);
    scene = { name, made };
    return made;
  };

  const draw = (frame: Frame) => {
    if (!app) return;
    // Moved to another screen, or its scale changed.
    if (app.renderer.resolution !== density(host, app.renderer.name)) resize();
    const now = clock();
    const elapsed = last === undefined ? 0 : Math.min(0.25, Math.max(0, now - last));
    last = now;
    const { width, height } = app.screen;
    const viewport = settingFor(width, height, elapsed, insets);
    if (Math.min(viewport.clear.width, viewport.clear.height) < MIN_ROOM) return;
    sceneFor(frame)?.draw(frame, viewport, theme);
    app.renderer.render(app.stage);
  };

  /** Gives `take` the frame drawn at this size, apart from the screen. */
  const held = async <Taken>(
    frame: Frame,
    width: number,
    height: number,
    other: Partial<Viewport>,
    take: (app: Application, view: Container) => Taken,
  ): Promise<Taken> => {
    await starting;
    const make = SCENE_MAKERS[frame.state.scene];
    if (!app || !make) throw new Error("nothing can be drawn here");
    const still = make();
    try {
      const viewport = { ...settingFor(width, height, Number.POSITIVE_INFINITY, NO_INSETS), ...other };
      // Twice: the room that words take is known after the first.
      still.draw(frame, viewport, theme);
      still.draw(frame, viewport, theme);
      return take(app, still.view as Container);
    } finally {
      still.release();
    }
  };

  const watcher = new ResizeObserver(resize);
  watcher.observe(host);
  await begin();

  return {
    get way() {
      if (!app) return "none";
      return app.renderer.name === "webgl" ? "webgl" : "canvas";
    },
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
    snapshot: (frame, width, height) =>
      held(frame, width, height, {}, ({ renderer }, view) => {
        const drawn = renderer.extract.canvas({
          target: view,
          frame: new Rectangle(0, 0, width, height),
          resolution: 1,
          antialias: true,
        });
        return drawn as HTMLCanvasElement;
      }),
    async drawing(frame, width, height) {
      const { sceneAsSvg } = await import("./drawing/svg.ts");
      return held(frame, width, height, { meshes: false, dense: MAX_DENSE }, (_, view) => sceneAsSvg(view));
    },
    pick: (x, y) => scene?.made.pick?.(x, y) ?? null,
    toScreen: (point, pane = 0) => scene?.made.toScreen?.(point, pane) ?? null,
    release() {
      released = true;
      watcher.disconnect();
      end();
    },
  };
}

async function startApplication(host: HTMLElement, way: "webgl" | "canvas"): Promise<Application | null> {
  const app = new Application();
  try {
    await app.init({
      ...(way === "canvas" ? { canvas: canvasForProcessor() } : {}),
      preference: way,
      width: Math.max(1, host.clientWidth),
      height: Math.max(1, host.clientHeight),
      antialias: true,
      autoDensity: true,
      autoStart: false,
      backgroundAlpha: 0,
      resolution: density(host, way),
    });
    return app;
  } catch {
    return null;
  }
}

/** Device pixels in a CSS pixel as drawn now: the processor draws no more of them than it can in time. */
function density({ clientWidth, clientHeight }: HTMLElement, way: string): number {
  const wanted = Math.min(MAX_DENSE, globalThis.devicePixelRatio || 1);
  const most = Math.sqrt(MAX_PIXELS / Math.max(1, clientWidth * clientHeight));
  return way === "webgl" ? wanted : Math.min(wanted, most);
}

/** Text drawn before its face has come would keep the wrong shape. */
async function loadType({ family }: Theme): Promise<void> {
  try {
    await Promise.all([
      document.fonts.load(`24px "${family}"`),
      document.fonts.load(`bold 24px "${family}"`),
    ]);
  } catch {
    // The fallback face is legible too.
  }
}

const inner = (width: number, height: number, edge: Insets): Box => ({
  x: edge.left,
  y: edge.top,
  width: Math.max(1, width - edge.left - edge.right),
  height: Math.max(1, height - edge.top - edge.bottom),
});
