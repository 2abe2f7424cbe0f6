/** What the load part says. */

/** Said wherever a load is shown. */
export const LOAD_NOTE =
  "Worked out from this room's springs as the studio measured them: a model, not a reading. The machine maker's manual wins.";
