/** Words and numbers over a scene, each on a plate so that it keeps its contrast; texts are kept and reused from drawing to drawing. */
import { Container, Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Theme } from "../theme/theme.ts";
import { layOut, type Written, written } from "./written.ts";

export interface Line {
  readonly words: string;
  /** CSS px */
  readonly size: number;
  readonly colour: string;
  readonly bold?: boolean;
}

export interface Note {
  readonly lines: readonly Line[];
  /** CSS px, where the anchor of the block lies */
  readonly x: number;
  readonly y: number;
  /** 0..1 of the block's width and height; default 0, 0 */
  readonly anchor?: readonly [number, number];
  /** no plate: for axis numbers on the plain ground */
  readonly bare?: boolean;
  /** CSS px at which lines break; they never do without it */
  readonly wrap?: number;
  /** rim in the accent colour: this is pointed at */
  readonly lit?: boolean;
}

/** Where a note came to lie, plate included, CSS px. */
export interface Lain {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const PAD = 0.45;

export interface Lettering {
  readonly view: Container;
  /** Forgets the notes of the last drawing. */
  begin(): void;
  write(note: Note, theme: Theme): Lain;
  /** The room that a note would take, CSS px. */
  measure(note: Omit<Note, "x" | "y">, theme: Theme): { readonly width: number; readonly height: number };
  /** Frees the texts of the last `count` lines, to write them elsewhere. */
  takeBack(count: number): void;
  /** Hides what was not written again. */
  end(): void;
}

export function lettering(): Lettering {
  const view = new Container();
  const plates = new Graphics();
  view.addChild(plates);
  const texts: Written[] = [];
  let used = 0;
  view.onRender = ({ resolution }) => {
    for (const { view, paint } of texts) if (view.visible) paint(resolution);
  };

  const take = ({ words, size, bold, colour }: Line, { family }: Theme, wrap: number | undefined) => {
    let text = texts[used];
    if (!text) {
      text = written();
      texts.push(text);
      view.addChild(text.view);
    }
    used++;
    const laid = layOut(words, { family, size, bold }, wrap);
    text.write(laid, colour);
    text.view.visible = true;
    return { view: text.view, width: laid.width, height: laid.height };
  };

  const set = (note: Omit<Note, "x" | "y">, theme: Theme) => {
    const parts = note.lines.map((line) => take(line, theme, note.wrap));
    const pad = note.bare ? 0 : Math.round(PAD * entryAt(note.lines, 0).size);
    const inner = Math.max(...parts.map((part) => part.width));
    const height = Math.ceil(parts.reduce((sum, part) => sum + part.height, 0)) + Math.round(1.2 * pad);
    return { parts, pad, inner, width: Math.ceil(inner) + 2 * pad, height };
  };

  return {
    view,
    begin() {
      used = 0;
      plates.clear();
    },
    write(note, theme) {
      const { parts, pad, inner, width, height } = set(note, theme);
      const [ax, ay] = note.anchor ?? [0, 0];
      const x = Math.round(note.x - ax * width);
      const y = Math.round(note.y - ay * height);
      if (!note.bare) {
        plates.roundRect(x, y, width, height, 6).fill({ color: theme.colour.plate, alpha: 0.88 });
        plates.stroke({
          color: note.lit ? theme.colour.accent : theme.colour.plateRim,
          width: note.lit ? 2.5 : 1,
        });
      }
      let top = y + Math.round(0.6 * pad);
      for (const part of parts) {
        part.view.position.set(Math.round(x + pad + (inner - part.width) * ax), top);
        top += part.height;
      }
      return { x, y, width, height };
    },
    measure(note, theme) {
      const { width, height } = set(note, theme);
      used -= note.lines.length;
      return { width, height };
    },
    takeBack(count) {
      used -= count;
    },
    end() {
      for (let i = used; i < texts.length; i++) entryAt(texts, i).view.visible = false;
    },
  };
}
