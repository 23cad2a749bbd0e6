/** `test` for pages whose flow is not judged: their fields rest at the first moment, and the processor is left to the rest. */
import { type BrowserContext, test as base, type Page } from "@playwright/test";

export const restFields = (where: BrowserContext | Page): Promise<unknown> =>
  where.addInitScript(() => {
    const { postMessage } = Worker.prototype;
    Worker.prototype.postMessage = function (message: { kind?: string }, ...more: unknown[]) {
      const passed = message.kind === "run" ? { ...message, rate: 0 } : message;
      return Reflect.apply(postMessage, this, [passed, ...more]);
    };
  });

export const test = base.extend({
  context: async ({ context }, use) => {
    await restFields(context);
    await use(context);
  },
});
