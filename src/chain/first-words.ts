/** What is said to a worker before it runs goes along as its name: a message would wait in the page until the page's own thread is free. */

/** Messages of plain records, numbers and Float32Arrays as a name; what JSON does not know (undefined, NaN, infinity, the sign of zero) is lost. */
export const asName = (messages: readonly unknown[]): string =>
  JSON.stringify(messages, (_, value) => (value instanceof Float32Array ? { floats: [...value] } : value));

/** Those messages; none from a worker without a name. */
export const fromName = <Message>(name: string): readonly Message[] =>
  name === ""
    ? []
    : JSON.parse(name, (_, value) => (value?.floats ? Float32Array.from(value.floats) : value));
