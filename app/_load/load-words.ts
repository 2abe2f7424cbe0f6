/** The note that stands wherever a load is shown. */
export const LOAD_NOTE =
  "Calculated from this room’s springs as the studio measured them. Where the machine maker’s manual says otherwise, follow the manual.";
