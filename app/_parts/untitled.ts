/** What a plan without a title is called, on every screen. */
export const UNTITLED = "Untitled plan";
