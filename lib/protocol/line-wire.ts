/**
 * What both ends of the line must agree on before the first message. Kept apart from the schemas, which pages do not
 * need.
 */

/** Raised when pages and servers of the old and the new version could no longer understand each other. */
export const LINE_VERSION = 2;
export const LINE_PATH = "/floor/line";

/** What a screen is for. "lead" is the coach's own. */
export const SCREEN_VIEWS = ["lead", "demonstrator", "crew", "wall"] as const;
export type ScreenView = (typeof SCREEN_VIEWS)[number];
export type FollowerView = Exclude<ScreenView, "lead">;
