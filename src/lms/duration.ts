/** ISO 8601 duration with hundredths. */
export const duration = (seconds: number): string => `PT${Math.max(0, seconds).toFixed(2)}S`;
