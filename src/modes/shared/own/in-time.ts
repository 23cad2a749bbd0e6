/** Some browsers leave a request to their database unanswered for good: whoever waits must not wait with it. */

/** ms */
const LONGEST = 10_000;

/** Rejects where there is no answer in time. */
export function inTime<T>(asked: Promise<T>): Promise<T> {
  return new Promise((done, failed) => {
    const due = setTimeout(() => failed(new Error(`no answer in ${LONGEST} ms`)), LONGEST);
    asked.then(done, failed).finally(() => clearTimeout(due));
  });
}
