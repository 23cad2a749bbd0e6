/** The one scene that is shown; another one takes its place once its drawing has been fetched. */
import { Container } from "pixi.js";
import type { SceneName } from "../state/scene-state.ts";
import type { Scene } from "./scene.ts";
import { fetchMaker, makerOf } from "./scene-table.ts";

/** ms until a drawing that did not come is asked for again */
const AGAIN = 3000;

export function sceneKeeper() {
  let root = new Container();
  let name: SceneName | null = null;
  let made: Scene | null = null;
  let asked: SceneName | null = null;
  let missed: SceneName | null = null;

  const leave = () => {
    if (made) root.removeChild(made.view);
    made?.release();
    made = null;
    name = null;
  };

  const fetchScene = async (wanted: SceneName) => {
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
    /** The scene of this name; null until it has come, and the one before stays made meanwhile. */
    of(wanted: SceneName): Scene | null {
      if (made && name === wanted) return made;
      const make = makerOf(wanted);
      if (missed !== wanted || make) missed = null;
      if (!make) {
        void fetchScene(wanted);
        return null;
      }
      leave();
      made = make();
      name = wanted;
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
