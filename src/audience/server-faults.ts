/** What the server says of its own faults: to whoever runs it, never to a caller. */

/** The same message once: a fault that lasts is met again at every call. */
export function tellOnce(tell: (message: string) => void): (message: string) => void {
  const told = new Set<string>();
  return (message) => {
    if (!told.has(message)) tell(message);
    told.add(message);
  };
}
