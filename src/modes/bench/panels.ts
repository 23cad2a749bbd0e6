/** What the bench opens beside the stage, in the order of its bar. */
export const PANELS = ["adjust", "look", "compare", "numbers", "take"] as const;
export type PanelName = (typeof PANELS)[number];
