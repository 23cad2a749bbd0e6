/** A visit to the kiosk as a pure state machine: screens, idling and the way back. Time comes in with the events. */

type Screen = "welcome" | "topics" | "lesson";

export interface Visit {
  readonly screen: Screen;
  /** s on the visit's clock at the last touch */
  readonly touched: number;
  /** s left before the return to the start, whole; null while nobody is warned */
  readonly left: number | null;
}

export type VisitEvent =
  | { readonly kind: "touch" | "tick"; readonly at: number }
  | { readonly kind: "open"; readonly screen: Screen; readonly at: number }
  | { readonly kind: "leave"; readonly at: number };

export interface IdleLimits {
  /** s without a touch until the warning */
  readonly idle: number;
  /** s of warning: 20 at least (WCAG 2.2.1) */
  readonly warning: number;
}

export const USUAL_IDLE_LIMITS: IdleLimits = { idle: 60, warning: 20 };

export const startVisit = (at: number): Visit => ({ screen: "welcome", touched: at, left: null });

/** Any touch keeps the place; without one a warning counts down, then the start shows again. */
export function visit(now: Visit, event: VisitEvent, limits: IdleLimits = USUAL_IDLE_LIMITS): Visit {
  switch (event.kind) {
    case "touch":
      return { ...now, touched: event.at, left: null };
    case "open":
      return { screen: event.screen, touched: event.at, left: null };
    case "leave":
      return startVisit(event.at);
    case "tick": {
      if (now.screen === "welcome") return now;
      // A clock that jumped back, or slept, counts as a touch just now rather than as a day of idling.
      const idle = event.at - now.touched;
      if (idle < 0) return { ...now, touched: event.at, left: null };
      const left = Math.ceil(limits.idle + limits.warning - idle);
      if (left <= 0) return startVisit(event.at);
      return { ...now, left: left <= limits.warning ? left : null };
    }
  }
}
