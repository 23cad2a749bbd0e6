/** The one scene that is shown; another one takes its place once its drawing has been fetched. */
import { Container } from "pixi.js";
import type { MakeScene, Scene } from "./scene.ts";
import { type DrawingName, fetchMaker, makerOf } from "./scene-table.ts";

/** ms until a drawing that did not come is asked for again */
const AGAIN = 3000;

export function sceneKeeper() {
  let root = new Container();
  let name: DrawingName | null = null;
  let made: Scene | null = null;
  let madeBy: MakeScene | null = null;
  let asked: DrawingName | null = null;
  let missed: DrawingName | null = null;

  const leave = () => {
    if (made) root.removeChild(made.view);
    made?.release();
    made = null;
    madeBy = null;
    name = null;
  };

  const fetchScene = async (wanted: DrawingName) => {
    if (asked === wanted) return;
    asked = wanted;
    try {
      await fetchMaker(wanted);
    } catch {
      missed = wanted;
      if (asked === wanted) leave();
      await new Promise((done) => setTimeout(done, AGAIN));
    }
    if (asked === wanted) asked = null;
  };

  return {
    /** What the renderer draws. */
    get root() {
      return root;
    },
    get made() {
      return made;
    },
    /** The scene last asked for could not be fetched. */
    get missing() {
      return missed !== null;
    },
    /** The scene as this drawing; null until it has come, and the one before stays made meanwhile. */
    of(wanted: DrawingName): Scene | null {
      if (made && name === wanted) return made;
      const make = makerOf(wanted);
      if (missed !== wanted || make) missed = null;
      if (!make) {
        void fetchScene(wanted);
        return null;
      }
      if (make !== madeBy) leave();
      name = wanted;
      // The same scene goes on once more painters have come.
      if (made) return made;
      made = make();
      madeBy = make;
      root.addChild(made.view);
      return made;
    },
    release() {
      leave();
      // What a renderer has noted on it ends with it.
      root.destroy();
      root = new Container();
    },
  };
}
