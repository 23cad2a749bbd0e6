/** The pointer and the pen's lines over a picture. */
import type { ReadonlySignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Marks, PenLine } from "./pen.ts";

export function PenLayer({ marks }: { readonly marks: ReadonlySignal<Marks> }) {
  const at = marks.value.pointer;
  return (
    <div class="pen-layer" aria-hidden="true">
      <PenLines marks={marks} />
      {at && <div class="pointer-dot" style={{ left: `${100 * at[0]}%`, top: `${100 * at[1]}%` }} />}
    </div>
  );
}

export function PenLines({ marks }: { readonly marks: ReadonlySignal<Marks> }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const { current } = canvas;
    if (!current) return;
    const draw = () => drawLines(current, marks.peek().lines);
    const watcher = new ResizeObserver(draw);
    watcher.observe(current);
    const stop = marks.subscribe(draw);
    return () => {
      watcher.disconnect();
      stop();
    };
  }, [marks]);
  return <canvas class="pen-lines" ref={canvas} />;
}

/** share of the picture's height */
const WIDTH = 0.006;

/** Each on a rim of the ground's colour, so that it is seen on any picture. */
function drawLines(canvas: HTMLCanvasElement, lines: readonly PenLine[]): void {
  const { clientWidth: width, clientHeight: height } = canvas;
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext("2d");
  if (!context || lines.length === 0) return;
  const { color, outlineColor } = getComputedStyle(canvas);
  context.lineCap = "round";
  context.lineJoin = "round";
  for (const [colour, wide] of [
    [outlineColor, 2],
    [color, 1],
  ] as const) {
    context.strokeStyle = colour;
    context.lineWidth = Math.max(1.5, WIDTH * height) * wide;
    for (const { points } of lines) {
      context.beginPath();
      for (const [x, y] of points) context.lineTo(x * width, y * height);
      // A press without a move is a dot.
      if (points.length === 1 && points[0]) context.lineTo(points[0][0] * width + 0.1, points[0][1] * height);
      context.stroke();
    }
  }
}
