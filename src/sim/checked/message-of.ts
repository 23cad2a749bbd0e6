/** What went wrong, in the words of whatever was thrown. */
export const messageOf = (fault: unknown): string => (fault instanceof Error ? fault.message : String(fault));
