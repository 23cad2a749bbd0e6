/** Where the drawing library would keep for ever what it no longer needs, or never rest. */
import { BatchTextureArray, GCManagedHash, Ticker } from "pixi.js";

/** Pooled batches keep a key for every texture that they ever held, and each new word is a texture. */
const clearTextures = BatchTextureArray.prototype.clear;
BatchTextureArray.prototype.clear = function () {
  clearTextures.call(this);
  this.ids = Object.create(null);
};

/** Books of what is drawn keep the key of all that has ended, and, where the processor draws, the shapes themselves. */
const strike = GCManagedHash.prototype.remove;
GCManagedHash.prototype.remove = function (item, ...more) {
  strike.call(this, item, ...more);
  delete this.items[item.uid];
};

// It would ask for every screen frame to see whether something is old enough to be freed.
Ticker.system.autoStart = false;
/** To be called after a drawing. */
export const freeOld = (): void => Ticker.system.update();
