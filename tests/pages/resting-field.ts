/** `test` for pages whose flow is not judged: their fields rest at the first moment, and the processor is left to the rest. */
import { test as base } from "@playwright/test";

export const test = base.extend({
  context: async ({ context }, use) => {
    await context.addInitScript(() => {
      const { postMessage } = Worker.prototype;
      Worker.prototype.postMessage = function (message: { kind?: string }, ...more: unknown[]) {
        const passed = message.kind === "run" ? { ...message, rate: 0 } : message;
        return Reflect.apply(postMessage, this, [passed, ...more]);
      };
    });
    await use(context);
  },
});
