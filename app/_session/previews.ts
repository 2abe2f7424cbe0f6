/** What every preview of a change to the plan (new times, another order, a rehearsal) has in common. */

/** All that a preview shows, as text: two previews that read the same are the same. */
export const asShown = (preview: unknown): string => JSON.stringify(preview);

/** Said in place of the button that takes a preview. */
export const LOOK_ONLY = "You cannot edit this plan, so you can look at this but not take it.";

/** Said beside that button. */
export const TAKEN_IN_ONE_STEP = "Nothing changes until you take it. One undo reverses it.";

/** Said when somebody else changed the plan while a preview of times was open. */
export const TIMES_UP_TO_DATE = "the times below are up to date";
