/** The author's checker in a thread of its own. */
import { solve } from "../../sim/circulation/solve.ts";
import { draftChecker, type FromDraftChecker, type ToDraftChecker } from "./draft-checker.ts";

const hear = draftChecker({
  solve,
  post: (message: FromDraftChecker) => postMessage(message),
  rest: () => new Promise((done) => setTimeout(done)),
});

self.addEventListener("message", ({ data }: MessageEvent<ToDraftChecker>) => void hear(data));
