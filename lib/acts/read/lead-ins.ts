/** Polite and chatty words around what is to be done: "I want you to", "go ahead and", "next", "for me". */
import type { Unit } from "./units.ts";

const words = (list: string): ReadonlySet<string> => new Set(list.split(" "));

/** Said before an infinitive. */
const BEFORE_TO = words(
  "i i'm i'd i'll we we're we'll we'd you you're you'll us me so okay ok and now then just like want need going gonna have " +
    "love got it's time ready everyone everybody please alright here today this for be all next first",
);
/** One of these makes "to" an infinitive's. */
const WISHES = words("want need going like have love time ready gonna");
const OPENERS = words(
  "alright well oh hey do lovely great good perfect beautiful brilliant super guys folks right-then",
);
const ASKING = words("could can would wouldn't might");

const DOING = words(
  "bring ride park close dock go face turn lie sit stand kneel take put free wear add reach remove set swap stay lift",
);
const isDoing = (unit: Unit | undefined): boolean =>
  unit !== undefined &&
  unit.word !== "home" &&
  unit.facing === undefined &&
  unit.classes.some((name) => DOING.has(name));
/** Things that are named in a set-up without a verb: "next, handles down". */
const THINGS = words("carriage handle strap amount springs-field feet hands");
const isThing = (unit: Unit | undefined): boolean =>
  unit !== undefined && (unit.word === "home" || unit.classes.some((name) => THINGS.has(name)));

const skipFill = (units: readonly Unit[], at: number): number => {
  let end = at;
  while (units[end]?.classes.includes("fill") && !isDoing(units[end])) end++;
  return end;
};

/** The index after "I want you to", "we're going to", "time to". */
function afterInfinitive(units: readonly Unit[]): number {
  const to = units.findIndex(({ word }) => word === "to");
  if (to < 1 || to > 8) return 0;
  const before = units.slice(0, to).map(({ word }) => word);
  const isLeadIn = before.every((word) => BEFORE_TO.has(word)) && before.some((word) => WISHES.has(word));
  return isLeadIn && isDoing(units[skipFill(units, to + 1)]) ? to + 1 : 0;
}

/** The index after "if you could", "if you would just". */
function afterAsking(units: readonly Unit[]): number {
  const at = units.findIndex(({ word }) => word === "if");
  if (at >= 0 && at <= 2 && units[at + 1]?.word === "you'd") return at + 2;
  if (at < 0 || at > 2 || units[at + 1]?.word !== "you" || !ASKING.has(units[at + 2]?.word ?? "")) return 0;
  return at + 3;
}

/** Where "whenever you're ready", "for me" or "this time" begins at the end of a clause. */
function tailAt(units: readonly Unit[]): number {
  const whenever = units.findIndex(({ word }) => word === "whenever");
  const [before, last] = units.slice(-2).map(({ word }) => word);
  if (whenever > 0 && last === "ready") return whenever;
  const isTail = (before === "for" && (last === "me" || last === "us")) || (before === "this" && last === "time");
  return isTail ? units.length - 2 : units.length;
}

/** A clause without its lead-in and its tail; all of it where nothing would be left. */
export const bareClause = (units: readonly Unit[]): readonly Unit[] => {
  const short = withoutLeadIn(units.slice(0, tailAt(units)));
  return short.length > 0 ? short : units;
};

function withoutLeadIn(units: readonly Unit[]): readonly Unit[] {
  let at = 0;
  while (OPENERS.has(units[at]?.word ?? "") || (at > 0 && units[at]?.word === "everyone")) at++;
  if (units[at]?.word === "go" && units[at + 1]?.word === "ahead") at += units[at + 2]?.word === "and" ? 3 : 2;
  if (units[at]?.word === "next") {
    const then = units[at + 1];
    if (isDoing(then) || isThing(then)) at++;
  }
  at += afterAsking(units.slice(at));
  at += afterInfinitive(units.slice(at));
  return at > 0 && at < units.length ? units.slice(at) : units;
}
