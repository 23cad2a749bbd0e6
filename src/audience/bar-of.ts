/** Which bar of a histogram holds a value: a bar holds its lower end, the last one its upper end too. */
export function barOf(edges: readonly number[], value: number): number {
  const beyond = edges.findIndex((edge) => edge > value);
  return (beyond < 0 ? edges.length - 1 : beyond) - 1;
}
