/** Whether words tell where people start on the carriage: a distance, a direction along it, or the usual place. */
const PLACE_TOLD =
  /\b(?:further|farther|nearer|closer|scoot|shuffle|shift|cm|centimet(?:re|er)s?|inch(?:es)?|anchors?|usual (?:place|spot)|where you (?:were|started)|(?:a|one|two|three) (?:hands?|handwidths?|palms?|fists?|foot|feet|steps?) (?:back|forwards?|out|in|away|up|down)|(?:sit|kneel|stand|lie|move|slide|step|hop|come|go|start) (?:\w+ ){0,3}(?:back|forwards?|away|out))\b/i;

export const tellsPlace = (text: string): boolean => PLACE_TOLD.test(text);
