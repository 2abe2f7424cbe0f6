/**
 * What words that no reading takes may still tell, asked only of planned acts that nothing else tells. Signs that agree with
 * the plan count as told; a clause that only has words of the act's subject makes it unsure, so that it is never called
 * missing. Nothing here contradicts a plan.
 */

import type { ActsChange } from "./judged.ts";
import type { PlannedAct } from "./planned.ts";
import { formsOf, type SpringName } from "./read/lexicon.ts";
import type { Unread } from "./read/unread.ts";

/** `plain`: told without naming how, "flip it around". */
export type Hint = "told" | "plain" | "unsure" | null;

interface Signs {
  /** Words that tell the act where it is planned. */
  readonly told: RegExp;
  readonly plain?: RegExp;
  /** Words of its subject. */
  readonly about: RegExp;
}

const words = (list: string): RegExp => new RegExp(`(?:^|[^\\p{L}'’-])(?:${list})(?=$|[^\\p{L}~-])`, "u");

const SHUT = "in|home|shut|closed?|rest(?:s|ing)?|back|stop(?:s|per|pers)?|bumpers?|buffers?|start|base|park(?:s|ed)?";
/** Where something that comes home comes to. */
const HARBOUR = "harbou?r|dock|berth|port|shore|nest|bed|base|garage|stable|barn|roost|cradle|house|start";
const HOME: Signs = {
  told: words(
    `carriages?\\b.*(?:${SHUT}|${HARBOUR})|\\p{L}+ (?:(?:your|our)sel(?:f|ves) )?(?:(?:back|all the way|right|straight|gently) )*(?:in|home)(?: first)?$|(?:in|into|to|at) (?:the |your )?(?:${HARBOUR})`,
  ),
  about: words(
    `(?!the |your )\\p{L}+ (?:the |your |that )?carriages?|carriages? \\p{L}+|(?:home|in|shut|closed?)$|to (?:a )?stop|${HARBOUR}`,
  ),
};
/** All that a clause says. */
const HOME_ALONE = /^(?:in|home|close|shut|stop|stops|stoppers?|bumpers?|buffers?)$/;

const HANDLE = "handles?|grips?|cables?|ropes?|reins";
const AWAY =
  "down|away|back|home|hooks?|hung|hang|live|rest|go|pegs?|aside|free|leave|put|drop|stow|release|lose|behind|off";
const HANDLES_DOWN: Signs = {
  told: words(
    `(?:${HANDLE})\\b.*\\b(?:${AWAY})|(?:${AWAY})\\b.*\\b(?:${HANDLE})|empty hands|hands (?:free|empty)|(?:put|set|drop|hang|lay|leave|rack|place)(?:ting|ping|ing)? (?:it|them|both|that|this)`,
  ),
  about: words(HANDLE),
};
const HOLD = "take|grab|grasp|hold|hands?|pick|reach|collect|get|catch|with|find|fetch|gather|meet|ready|up|clasp";
const HANDLES_UP: Signs = {
  told: words(
    `(?:${HANDLE})\\b.*\\b(?:${HOLD})|(?:${HOLD})\\b.*\\b(?:${HANDLE})|(?:collect|grab|take|pick|fetch|get|hold)(?:ting|ing)? (?:up )?(?:it|them|both|(?:the |that )?(?:one|other))`,
  ),
  about: words(HANDLE),
};
const CROSSED = "(?:un)?cross(?:ed|es|ing|over)?|criss-?cross(?:ed)?|x|untangle|opposite|swap|switch|straight|parallel";
const HANDLES_CROSS: Signs = { told: words(CROSSED), about: words(`${HANDLE}|${CROSSED}`) };

const STRAP = "straps?|loops?|cuffs?|slings?";
const FOOT = "foot|feet|legs?|toes?|heels?|ankles?";
const OUT = "out|off|free|from|away|release|leave|lose|remove|undo|shed";
const INTO = "in|into|under|underneath|beneath|through|on|inside|thread|wear|around|round|hook|tuck|attach";
const STRAP_OFF: Signs = {
  told: words(`(?:${OUT})\\b.*\\b(?:${STRAP})|(?:${STRAP})\\b.*\\b(?:${OUT})|(?:${FOOT})\\b.*\\b(?:out|free)`),
  about: words(`${STRAP}|(?:${FOOT})\\b.*\\b(?:out|off|free|down)`),
};
const STRAP_ON: Signs = {
  told: words(
    `(?:${INTO})\\b.*\\b(?:${STRAP})|(?:${STRAP})\\b.*\\b(?:${INTO})|(?:${FOOT})\\b.*\\b(?:in|back in|under|through)$`,
  ),
  about: words(`${STRAP}|(?:${FOOT})\\b.*\\b(?:in|into|under|through|up)`),
};

const PLACES: Readonly<Record<string, string>> = {
  front: "front|forwards?|ahead",
  back: "back|rear|backwards?|behind",
  left: "left(?:-hand)?",
  right: "right(?:-hand)?",
  carriage: "carriage",
  floor: "floor|ground|mat",
};
const TURNING =
  "turn(?:s|ed|ing)?|fac(?:e|es|ed|ing)|look(?:s|ed|ing)?|spin|swing|swivel|pivot|rotate|flip|eyes?|nose|gaze|chest|wall|towards?|round|around|direction|way|window|mirror|head|point(?:s|ed|ing)?|aim(?:ed)?|view";
const turnTo = (facing: string): Signs => ({
  told: words(
    `(?:${TURNING})\\b.*\\b(?:${PLACES[facing] ?? facing})|(?:${PLACES[facing] ?? facing})\\b.*\\b(?:${TURNING})`,
  ),
  plain: words(
    "(?:turn|flip|spin|swivel|swing|pivot|rotate|whizz?|whip|wheel)\\b.*\\b(?:round|around|about|over)|(?:that|this|the other|opposite) (?:way|direction)|about.?(?:turn|face)|one.?eighty|180",
  ),
  about: words(
    `turn(?:s|ed|ing)?|fac(?:e|es|ed|ing)|look(?:s|ed|ing)?|spin|swing|swivel|pivot|rotate|flip|round|around|direction|other way|window|mirror|walls?|other end|(?:to|towards?|at|the) (?:the )?(?:${PLACES[facing] ?? facing})$`,
  ),
});
const stationAt = (station: string): Signs => ({
  told: words(
    station === "front" || station === "back"
      ? `(?:${PLACES[station]}) (?:platform|bar|end|edge)|(?:at|to|on|onto|for|from) (?:the )?(?:${PLACES[station]})(?! of)`
      : (PLACES[station] ?? station),
  ),
  about: words(`${PLACES[station] ?? station}|platforms?|ends?|bars?|machine|off|aboard|across|over|walk|travel`),
});

const POSITIONS: Readonly<Record<string, Signs>> = {
  plank: { told: words("planks?|push-?up"), about: words("hands?|feet|toes|body|long|press-?up|straight|hold") },
  quadruped: {
    told: words("fours?|four points?|tabletop|table(?: top)?|bear|hands\\b.*\\bknees|knees\\b.*\\bhands"),
    about: words("knees?|kneel(?:ing)?|hands?|crawl|paws|hover"),
  },
  kneeling: { told: words("knees?|kneel(?:s|ing)?|shins?"), about: words("up|shins?|legs?|tall|high") },
  seated: { told: words("sit(?:s|ting)?|seat(?:ed)?|bottoms?|bums?|perch"), about: words("up|down|hips?|legs?|tall") },
  supine: {
    told: words("(?:on|onto|down on|to) (?:your|our|the|their) backs?|lie|lay|lying|backs? down|face up|spine"),
    about: words("backs?|down|roll|recline|lower|head|rest"),
  },
  prone: {
    told: words("tumm(?:y|ies)|bell(?:y|ies)|stomachs?|face down|fronts?\\b.*\\bdown|prone"),
    about: words("fronts?|down|roll|lie|lay|lying|chest|head"),
  },
  "side-lying": {
    told: words("(?:on|onto) (?:your|our|the|their)(?: \\p{L}+)? sides?|(?:lie|lay|lying|roll)\\b.*\\bsides?"),
    about: words("sides?|lie|lay|lying|roll|hips?|down"),
  },
  standing: {
    told: words("stand(?:s|ing)?|upright|(?:on|onto|to) (?:your|our|both|the) feet|lunge|squat"),
    about: words("up|feet|foot|rise|tall|step|floor|legs?"),
  },
  inverted: { told: words("pike|upside|invert(?:ed)?"), about: words("hips?|up|head|feet") },
};

const OTHER = "other|opposite|second|swap(?:ping)?|switch(?:ing)?|change|changing|mirror|swop|trade|over";
const sideOf = (side: string): Signs => ({
  told: words(`${side}(?:~\\p{L}+)?`),
  about: words(`sides?|other|opposite|swap(?:ping)?|switch(?:ing)?|mirror|swop|(?:left|right)(?:~\\p{L}+)?`),
});
const OF_A_BODY = words(
  "arms?|hands?|elbows?|shoulders?|knees?|legs?|foot|feet|heels?|toes?|ribs?|bell(?:y|ies)|core|navel|chin|chest|hips?|breath|breathe|inhale|air|abs|spine|tail|strap|handle|handles|straps|loops?",
);
/** Only where one side follows the other. */
const OTHER_SIDE = words(
  `(?:${OTHER})(?:~|\\b.*\\b)(?:sides?|legs?|arms?|foot|feet|hands?|one)|^(?:swap|switch|change)`,
);

function signsOf(act: PlannedAct): Signs {
  switch (act.act) {
    case "carriage-home":
      return HOME;
    case "handles-down":
      return HANDLES_DOWN;
    case "handles-up":
      return HANDLES_UP;
    case "handles-cross":
      return HANDLES_CROSS;
    case "strap-off":
      return STRAP_OFF;
    case "strap-on":
      return STRAP_ON;
    case "turn":
      return turnTo(act.facing);
    case "station":
      return stationAt(act.station);
    case "position":
      return POSITIONS[act.position] ?? { told: /$^/, about: /$^/ };
    case "side":
      return sideOf(act.side);
    default:
      return { told: /$^/, about: /$^/ };
  }
}

const ON = words(
  "plus|join|replac\\p{L}+|instead|where|for|add(?:s|ed|ing)?|on|more|plus|extra|with|join(?:s|ing)?|also|in|too|introduc\\p{L}+|load\\p{L}*",
);
const OFF = words(
  "minus|take|off|away|out|remov\\p{L}+|los\\p{L}+|without|less|minus|gone|go(?:es)?|drop\\p{L}*|shed\\p{L}*|free",
);

/** After an everyday name these make it an adjective: "a light bend", "strong core". */
const NOUNS =
  "touch|bend|breaths?|exhale|inhale|core|arms?|legs?|spine|back|knees?|elbows?|hands?|feet|grip|hold|pulses?|range|reach|rows?|time|seconds?|minutes?|of|lines?|way|body|stretch|sets?|part|neck|ribs?|shoulders?|steps?|moves?|movement|motion|work|bit|effort|point";
/** What is done with a spring whose bare name opens a clause: "light joins it". */
const DONE =
  "joins?|replaces?|too|also|as well|on|off|out|in|away|comes?|goes|go|instead|for|where|is|are|please|now|next|rather|gone|back|with|to";

/** A spring's name that is no amount where it stands: "a strong adding". */
function springSign(
  act: PlannedAct & { readonly spring: string },
  { said }: Unread,
  springs: readonly SpringName[],
): Hint {
  const name = springs.find(({ id }) => id === act.spring);
  if (!name) return null;
  const forms = [...name.words.slice(0, -1), `(?:${formsOf(name.words.at(-1) ?? "").join("|")})`].join(" ");
  const counted = `(?:an?|the|your|that|one|two|three|four|another|plus|minus|\\d) (?:more |extra |new |other )?${forms}`;
  const isSpring = name.common
    ? new RegExp(`(?:\\b${counted}(?! (?:${NOUNS})\\b)|^${forms}(?=$| (?:${DONE})\\b))(?![\\p{L}'-])`, "u")
    : words(forms);
  if (!isSpring.test(said)) return null;
  return (act.act === "spring-on" ? ON : OFF).test(said) ? "told" : "unsure";
}

/** Whether unread words tell a planned act. */
export function signOf(act: PlannedAct, unread: Unread, change: ActsChange, springs: readonly SpringName[]): Hint {
  const sign = "spring" in act ? springSign(act, unread, springs) : plainSign(act, unread, change);
  return sign !== null && unread.hedged ? "unsure" : sign;
}

const VERB_AND_HANDLES = new RegExp(
  `^(?!(?:with|the|your|both|my|no|same|keep)\\b)\\p{L}+ (?:the |your |both |left |right )*(?:${HANDLE})$`,
  "u",
);

function plainSign(act: PlannedAct, { said, clause }: Unread, { from, planned }: ActsChange): Hint {
  const { told, plain, about } = signsOf(act);
  // "Elbow close", "draw the belly in".
  if (act.act === "carriage-home" && OF_A_BODY.test(clause) && !/carriage/.test(said)) return null;
  // "Feed in a light": what is read after it belongs to it.
  const all = clause.endsWith(said) ? said : `${said} …`;
  if (told.test(all) || (act.act === "carriage-home" && said === clause && HOME_ALONE.test(said))) return "told";
  if (plain?.test(all)) return "plain";
  // "Rack the handles", where there is nothing else to do with them.
  const isOnly = !planned.some((other) => other !== act && other.act.startsWith("handles"));
  if (act.act.startsWith("handles-") && isOnly && VERB_AND_HANDLES.test(said)) return "told";
  if (act.act === "side" && (from?.side === "left" || from?.side === "right") && OTHER_SIDE.test(said)) return "told";
  return about.test(all) ? "unsure" : null;
}
