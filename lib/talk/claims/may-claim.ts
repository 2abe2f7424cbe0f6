/** Whether a text is worth reading for claims. Most lines are not. */

/** A claim contains one of these. */
const WORTH_READING =
  /second|minute|\b(?:just|only) the\b|coming|waiting|finish|\bend|start|begin|open|clos|wrap|opener|kick|class|\blap|hump|middle|mid ?point|midway|couple|dozen|nothing|\bafter\b|from here|\bdone\b|\bover\b|anything|lungs|straight|takes us|leads|afterwards|soon|again|per ?cent|on the clock|\btwice|\bonce|left|right|\bother\b|\btimes\b|target|goal|to go|remain|more|last|final|first|half|side|next|spring|round|\bset|\bon\b|hal(?:e|ing)|breath|blow|\bair\b|puff|sigh|huff|hiss|^(?:in|out) |\b(?:in|out) (?:as|when|on)\b|after this|ready for|moving|follow|into|penultimate|hour|already|time through|\bthen\b|reps?\b|repetition|these|\d|\b(?:no|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|[a-z]+teen|[a-z]+ty)\b/i;

/** Their names hold such words: `{seconds-left}`. */
const LIVE_FIELD = /\{[a-z-]+\}/g;

export const mayClaim = (text: string): boolean => WORTH_READING.test(text.replace(LIVE_FIELD, " "));
