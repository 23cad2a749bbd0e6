/** The page's one stage: made once, drawn once for each screen frame while a mode shows it. */
import { effect, type ReadonlySignal, type Signal, signal } from "@preact/signals";
import type { Before, Frame } from "../../../chain/frame.ts";
import { language } from "../../../i18n/index.ts";
import type { Box, Divider } from "../../../scenes/scene.ts";
import type { Insets, Stage } from "../../../scenes/stage.ts";
import type { Handle } from "../../../sim/geometry/geometry.ts";
import { tellMissedPart, tellStoppedPicture } from "../page-notes.tsx";
import type { Session } from "../session.ts";
import { counted, screenFrames } from "./frame-wishes.ts";
import { type StagePictures, stagePictures } from "./stage-pictures.ts";
import { stillPace } from "./still-pace.ts";
import { themeNamed } from "./themes.ts";

type Way = "starting" | Stage["way"];

export interface StageLoop extends StagePictures {
  readonly way: ReadonlySignal<Way>;
  /** Blood has been seen to move here, or was waited for long enough: what it did not need may take the processor. */
  readonly opened: ReadonlySignal<boolean>;
  /** Handles of the first pane's geometry; empty while they are not shown. */
  readonly handles: ReadonlySignal<readonly Handle[]>;
  /** Shows the stage until the returned function is called. `floor`: CSS px of the smallest type. */
  show(floor: number): () => void;
  /** Keeps the frames coming, undrawn, until the returned function is called: for pictures apart from the screen. */
  follow(): () => void;
  setInsets(insets: Insets): void;
  /** The last one drawn. */
  frame(): Frame | null;
  /** Keeps what is drawn as it is, or lets it follow again. */
  hold(on: boolean): void;
  /** Calls a few times a second or more until the returned function is called; `drawn`: the canvas has just been drawn and holds that frame. */
  afterFrame(listener: (drawn: boolean) => void): () => void;
  canvas(): HTMLCanvasElement | null;
  /** px of the canvas that nothing of the page covers */
  clear(): Box;
  /** mm of a pane's plane -> CSS px */
  toScreen(point: readonly [number, number], pane?: number): readonly [number, number] | null;
  pick(x: number, y: number): string | null;
  divider(): Divider | null;
}

/** Drawings of blood in which it is seen to move; and ms after which nothing waits for it any longer. */
const MOVED = 2;
const PATIENCE = 1500;
const NO_INSETS: Insets = { top: 0, right: 0, bottom: 0, left: 0 };

export function createStageLoop(
  host: HTMLElement,
  { chain, before }: Session,
  theme: ReadonlySignal<"dark" | "light">,
  asked?: string,
): StageLoop {
  const way = signal<Way>("starting");
  const handles = signal<readonly Handle[]>([]);
  const { opened, look } = firstView(() => stage && frame);
  const listeners = new Set([look]);
  let stage: Stage | null = null;
  let started: Promise<void> | null = null;
  let frame: Frame | null = null;
  let insets = NO_INSETS;
  let floor = 13;
  let held = false;
  const { showing, following, wakeUp, goOn, isDue, isStale } = pacedFrames(
    () => [chain.scene.value, before.value],
    () => told(turn),
  );

  const start = async () => {
    stage = await (await fetchStage()).createStage(host, {
      ...{ theme: themeNamed(theme.peek()), floor, insets, clock: () => performance.now() / 1000 },
      way: asked === "webgl" || asked === "canvas" ? asked : undefined,
    });
    way.value = stage.way;
    void stage.typed.then(wakeUp);
    // Asked for while it was being made.
    stage.setFloor(floor);
    stage.setInsets(insets);
    effect(() => {
      language();
      stage?.setTheme(themeNamed(theme.value));
      wakeUp();
    });
  };

  const turn = () => {
    if (held || document.hidden) return;
    const last = frame;
    frame = withBefore(chain.frame(), before.peek());
    if (!frame.still || frame.state !== last?.state || changed(frame, last)) goOn();
    if (!showing.any() || !isDue()) return;
    const stale = isStale(frame);
    if (stage) {
      if (stale) {
        stage.draw(frame);
        tellStoppedPicture(false);
      }
      way.value = stage.way;
    }
    setHandles(handles, frame);
    for (const listener of listeners) listener(stale);
  };

  const pictures = stagePictures({
    chain,
    // Nobody sees the frames that are followed: tracers in them are led when a picture is taken.
    frame: () => (following.any() ? chain.picture() : frame),
    own: () => ({ theme: theme.peek(), floor }),
    async stage() {
      started ??= start();
      await started;
      if (!stage) throw new Error("no stage");
      return stage;
    },
  });

  // After a new size the last picture stands there, laid out for the old one.
  new ResizeObserver(wakeUp).observe(host);

  return {
    ...{ way, opened, handles },
    show(smallest) {
      floor = smallest;
      const leave = showing.add();
      host.hidden = false;
      stage?.setFloor(floor);
      wakeUp();
      started ??= start();
      return () => {
        leave();
        host.hidden = !showing.any();
      };
    },
    follow: following.add,
    setInsets(next) {
      if (sameInsets(insets, next)) return;
      insets = next;
      stage?.setInsets(next);
      wakeUp();
    },
    frame: () => frame,
    hold(on) {
      held = on;
    },
    afterFrame(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    canvas: () => host.querySelector("canvas"),
    clear: () => clearBox(host, insets),
    ...pictures,
    toScreen: (point, pane) => stage?.toScreen(point, pane) ?? null,
    pick: (x, y) => stage?.pick(x, y)?.name ?? null,
    divider: () => stage?.divider() ?? null,
  };
}

/** Who wants frames, and when they come. @param asked reads the signals by which a person asks for another picture */
function pacedFrames(asked: () => unknown, turn: () => void) {
  const { isDue, isStale, wakeUp, goOn, rest } = stillPace(() => performance.now());
  const { begin, hurry } = screenFrames(
    () => showing.any() || following.any(),
    turn,
    () => (following.any() ? 0 : rest()),
  );
  const showing = counted(begin);
  const following = counted(begin);
  // It shows in the next screen frame, however long the picture has stood still.
  effect(() => {
    asked();
    hurry();
  });
  return {
    ...{ showing, following, isDue, isStale },
    wakeUp() {
      wakeUp();
      hurry();
    },
    goOn() {
      goOn();
      hurry();
    },
  };
}

/** Whether blood has moved here. @param seen what a drawing shows */
function firstView(seen: () => Frame | null) {
  const opened = signal(false);
  let bled = 0;
  const open = () => {
    opened.value = true;
  };
  setTimeout(open, PATIENCE);
  return {
    opened,
    look(drawn: boolean) {
      const frame = drawn && seen();
      if (!frame) return;
      if (frame.panes.some(({ tracers }) => tracers)) bled++;
      if (frame.still || bled >= MOVED) open();
    },
  };
}

/** The page measures at each rendering of its words; a picture that stands still must not be drawn for that. */
const sameInsets = (one: Insets, other: Insets): boolean =>
  one.top === other.top &&
  one.right === other.right &&
  one.bottom === other.bottom &&
  one.left === other.left;

const fetchStage = () =>
  import("../../../scenes/stage.ts").catch((reason) => {
    tellMissedPart();
    throw reason;
  });

/** A frame that fails is told, until another one has been drawn. */
function told(turn: () => void): void {
  try {
    turn();
  } catch (reason) {
    tellStoppedPicture(true);
    throw reason;
  }
}

/** The frame with what each pane showed before the last change. */
const withBefore = (frame: Frame, before: readonly Before[] | null): Frame =>
  before ? { ...frame, panes: frame.panes.map((pane, i) => ({ ...pane, before: before[i] })) } : frame;

const changed = ({ panes }: Frame, last: Frame): boolean => panes[0]?.before !== last.panes[0]?.before;

/** One empty list is as good as another. */
function setHandles(handles: Signal<readonly Handle[]>, { state, panes }: Frame): void {
  const found = state.view.handles ? (panes[0]?.geometry?.handles ?? []) : [];
  if (found !== handles.peek() && (found.length > 0 || handles.peek().length > 0)) handles.value = found;
}

/** px of the canvas */
function clearBox(host: HTMLElement, insets: Insets): Box {
  const { clientWidth, clientHeight } = host;
  const scale = (host.querySelector("canvas")?.width ?? clientWidth) / clientWidth;
  return {
    x: scale * insets.left,
    y: scale * insets.top,
    width: scale * (clientWidth - insets.left - insets.right),
    height: scale * (clientHeight - insets.top - insets.bottom),
  };
}
