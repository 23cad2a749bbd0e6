/** What is longer than the server takes ends with an ellipsis. */
export const cutText = (text: string, longest: number): string =>
  text.length > longest ? `${text.slice(0, longest - 1)}…` : text;
