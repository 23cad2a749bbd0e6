/** A built page's content security policy, opened to more hosts that its scripts may connect to. */
const OWN = "connect-src 'self'";

/** A page without a policy needs none. @throws Error for a policy that reads otherwise: it would stop the connections without a word */
export function allowConnections(html: string, sources: string, page: string): string {
  if (html.includes(OWN)) return html.replace(OWN, () => `${OWN} ${sources}`);
  if (!/content-security-policy/i.test(html)) return html;
  throw new Error(`${page}: found a content security policy without ${OWN}; allowed: one with it`);
}
