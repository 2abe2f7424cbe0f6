/** Reads amounts of springs: "one light and two heavy springs", "another middle", "both lights", "no springs". */
import { classesOf, type Lexicon, nameAt } from "./lexicon.ts";
import { type Behind, LESS, MORE, numberOf, quantityAt, THE, timesAt } from "./quantities.ts";
import type { Token } from "./tokens.ts";
import { AFTER_A_SPRING, MOVED_WORDS, PLACE_LABELS } from "./vocabulary.ts";

export interface AmountPart {
  /** The id; undefined for a spring without a name. */
  readonly spring?: string;
  /** Null for all that there are of it. */
  readonly count: number | null;
  /** "One more", "another". */
  readonly more: boolean;
  /** "One less". */
  readonly less?: boolean;
}

export interface Amount {
  readonly parts: readonly AmountPart[];
  /** Index after its last token. */
  readonly end: number;
}

/** One amount, or several that are joined by "and", "plus" or a comma. */
export function amountAt(tokens: readonly Token[], at: number, lexicon: Lexicon): Amount | null {
  const first = partAt(tokens, at, lexicon);
  if (!first) return null;
  const parts = [first.part];
  let { end } = first;
  // "Drop a heavy, two lights" drops one thing.
  const mayList = !VERBS.some((name) => classesOf(tokens[at - 1]?.word ?? "").includes(name));
  for (let more = nextPart(tokens, end, mayList, lexicon); more; more = nextPart(tokens, end, mayList, lexicon)) {
    parts.push(more.part);
    end = more.end;
  }
  return { parts: tokens[at]?.word === "both" ? oneOfEach(parts) : parts, end };
}

/** "Both the firm and the strong" are one of each. */
const oneOfEach = (parts: readonly AmountPart[]): readonly AmountPart[] =>
  parts.length === 2 && parts[0]?.spring !== parts[1]?.spring ? parts.map((part) => ({ ...part, count: 1 })) : parts;

const VERBS: readonly string[] = ["add", "remove", "set", "swap", "off"];

function nextPart(tokens: readonly Token[], end: number, mayList: boolean, lexicon: Lexicon): PartAt | null {
  const token = tokens[end];
  if (!token || token.gap === 2 || (token.gap === 1 && !mayList)) return null;
  // "Minus a long plus two softs."
  const joined = JOINING.has(token.word) && (mayList || token.word !== "plus");
  // "One middle one firm."
  if (!joined && token.gap === 0 && !(mayList && numberOf(token.word) !== null)) return null;
  const found = partAt(tokens, joined ? end + 1 : end, lexicon, joined);
  const after = found && tokens[found.end];
  // "One light, one heavy off" is about two things.
  return after &&
    !joined &&
    after.gap === 0 &&
    ["off", "comes", "goes", "away", "out", "no", "not", "gone"].includes(after.word)
    ? null
    : found;
}

const JOINING: ReadonlySet<string> = new Set(["and", "plus", "&"]);

interface PartAt {
  readonly part: AmountPart;
  readonly end: number;
}

/** `listed`: after "and", so that a bare name is a spring as well. */
function partAt(tokens: readonly Token[], at: number, lexicon: Lexicon, listed = false): PartAt | null {
  const plain = numberOf(tokens[at]?.word ?? "");
  const next = plain === null || tokens[at + 1]?.gap !== 0 ? null : nounAt(tokens, at + 1, lexicon);
  // A name may begin with a word of number: "one extra light".
  if (plain !== null && next?.spring !== undefined)
    return counted(tokens, { spring: next.spring, count: plain, more: tokens[at]?.word === "another" }, next.end);
  const quantity = quantityAt(tokens, at);
  const from = quantity?.end ?? at;
  const noun = from > at && tokens[from]?.gap !== 0 ? null : nounAt(tokens, from, lexicon);
  if (!noun) return null;
  const { spring, many, end } = noun;
  if (!quantity && !noun.sure && !(listed && isOnItsOwn(tokens[end])) && !isHandled(tokens, at, end, lexicon))
    return null;
  if (quantity?.definite && noun.placeLike && PLACES.has(tokens[at - 1]?.word ?? "")) return null;
  if (!quantity || quantity.definite) {
    // "The springs" is not an amount.
    if (spring === undefined && (many || !quantity)) return null;
    const times = timesAt(tokens, end) ?? behindAt(tokens, end, lexicon);
    return {
      part: { ...named(spring), count: times?.count ?? (many ? null : 1), more: times?.more ?? false },
      end: times?.end ?? end,
    };
  }
  const { count, more, less } = quantity;
  return counted(tokens, { ...named(spring), count, more, ...(less ? { less } : {}) }, end);
}

/** "One light more", "one light spring less". */
function counted(tokens: readonly Token[], part: AmountPart, end: number): PartAt {
  const behind = tokens[end]?.gap === 0 ? (tokens[end]?.word ?? "") : "";
  if (MORE.includes(behind)) return { part: { ...part, more: true }, end: end + 1 };
  return LESS.includes(behind) ? { part: { ...part, less: true }, end: end + 1 } : { part, end };
}

/** "Light spring, one more", "soft springs, two, take off": the number behind the name, and nothing it counts after it. */
function behindAt(tokens: readonly Token[], at: number, lexicon: Lexicon): Behind | null {
  const [number, next] = [tokens[at], tokens[at + 1]];
  if (!number || number.gap === 2 || number.word === "a" || number.word === "no") return null;
  const count = numberOf(number.word);
  if (count === null || nounAt(tokens, at + 1, lexicon)) return null;
  const more = next?.gap === 0 && MORE.includes(next.word);
  const end = more ? at + 2 : at + 1;
  return isOnItsOwn(tokens[end]) ? { count, end, more } : null;
}

/** Whether no noun follows. */
const isOnItsOwn = (next: Token | undefined): boolean =>
  next === undefined || next.gap > 0 || JOINING.has(next.word) || MOVED_WORDS.has(next.word);

/** "Strong on, feet out", said without a pause. */
const isNextThing = (token: Token | undefined, springs: Lexicon["springs"]): boolean =>
  token !== undefined && (isName(token, springs) || NEXT_THINGS.some((name) => classesOf(token.word).includes(name)));
const NEXT_THINGS: readonly string[] = [
  "fill",
  "go",
  "limb",
  "carriage",
  "handle",
  "strap",
  "face",
  "turn",
  "kneel",
  "sit",
  "lie",
  "stand",
];

/** "Heavy off", "swap heavy for light", "add light": a verb makes a bare name a spring. */
function isHandled(tokens: readonly Token[], at: number, end: number, lexicon: Lexicon): boolean {
  const [next, second] = [tokens[end], tokens[end + 1]];
  // "Soft is two now."
  if (timesAt(tokens, end)) return true;
  // "Instead of middle we put light."
  if (tokens[at - 1]?.word === "of" && ["instead", "place", "lieu"].includes(tokens[at - 2]?.word ?? "")) return true;
  if (
    next?.gap === 0 &&
    AFTER_A_BARE_NAME.has(next.word) &&
    (isOnItsOwn(second) || isNextThing(second, lexicon.springs))
  )
    return true;
  if (isLinked(tokens, end, 1, lexicon) || isLinked(tokens, at - 1, -1, lexicon)) return true;
  if ((next?.gap === 1 || (tokens[at]?.gap ?? 0) > 0) && behindAt(tokens, end, lexicon)) return true;
  // "Middle: off."
  const opens = (tokens[at]?.gap ?? 0) > 0 && next?.gap === 1;
  if (opens && (next.word === "on" || next.word === "off") && isOnItsOwn(second)) return true;
  // "Light in its place", "lights the same".
  if (next?.gap === 0 && (tokens[end + 2]?.word === "place" ? next.word === "in" : second?.word === "same"))
    return true;
  // "Light and nothing else", "light as well".
  if (next?.gap === 0 && PAIRED.get(next.word) === second?.word && second) return true;
  const before = tokens[at - 1];
  if (tokens[at]?.gap !== 0 || !before) return false;
  if (["only", "just", "put", "plus", "minus", "same"].includes(before.word))
    return isOnItsOwn(next) || isNextThing(next, lexicon.springs);
  const classes = classesOf(before.word);
  const linking = before.word === "is" && classesOf(tokens[at - 2]?.word ?? "").includes("springs");
  if (linking || classes.includes("add") || classes.includes("remove") || classes.includes("springs")) return true;
  // "Take off light", "swap strong for light".
  const verbs = tokens
    .slice(Math.max(0, at - (WITH_A_VERB.has(before.word) ? 5 : 2)), at)
    .flatMap(({ word }) => classesOf(word));
  return (
    verbs.includes("swap") || (WITH_A_VERB.has(before.word) && (verbs.includes("set") || verbs.includes("remove")))
  );
}

const PAIRED: ReadonlyMap<string, string> = new Map(Object.entries({ and: "nothing", as: "well" }));
const WITH_A_VERB: ReadonlySet<string> = new Set(["for", "to", "with", "into", "on", "off", "out", "away", "by"]);

/** "Short for long", "light instead of middle", "middle, not strong": between two names, nothing but words that link them. */
function isLinked(tokens: readonly Token[], at: number, step: 1 | -1, { springs }: Lexicon): boolean {
  for (let i = at, links = 0; links < 6; i += step) {
    const token = tokens[i];
    // The gap before a word parts it from the one before it, whichever way this goes.
    const crossed = step === 1 ? token : tokens[i + 1];
    if (!token || !crossed || crossed.gap === 2) return false;
    if (crossed.gap === 1 && crossed.word !== "not") return false;
    if (links > 0 && isName(token, springs)) return true;
    const linksOn = links > 0 && (THE.includes(token.word) || numberOf(token.word) !== null);
    if (!LINKS.has(token.word) && !linksOn) return false;
    links++;
  }
  return false;
}
const LINKS: ReadonlySet<string> = new Set(
  "for to into against where spring springs becomes plus instead of not than rather in place down up replaces joins and a one".split(
    " ",
  ),
);

/** "Middle comes off", "light goes on", "strong out". */
const AFTER_A_BARE_NAME: ReadonlySet<string> = new Set(
  "off on in out away comes goes come go gone no stays stay remains can only alone both done finished joins join also too replaces".split(
    " ",
  ),
);

const named = (spring: string | undefined) => (spring === undefined ? {} : { spring });
const PLACES: ReadonlySet<string> = new Set(["in", "at", "to", "into", "through", "from", "towards", "toward", "near"]);

interface Noun {
  readonly spring?: string;
  readonly many: boolean;
  /** Understood as a spring without a quantity too. */
  readonly sure: boolean;
  readonly placeLike: boolean;
  readonly end: number;
}

const isSpringWord = (token: Token | undefined): boolean =>
  token !== undefined && token.gap === 0 && classesOf(token.word).includes("springs");

function nounAt(tokens: readonly Token[], at: number, { springs }: Lexicon): Noun | null {
  for (const { id, words, common } of springs) {
    const number = nameAt(words, (n) => (n > 0 && tokens[at + n]?.gap !== 0 ? undefined : tokens[at + n]?.word));
    if (number === null) continue;
    let end = at + words.length;
    const next = tokens[end];
    const called = isSpringWord(next);
    if (called) end++;
    else if (next?.gap === 0 && ["one", "ones"].includes(next.word)) end += isNameAt(tokens, end + 1, springs) ? 0 : 1;
    else if (next && next.gap === 0 && !mayFollow(next, springs)) return null;
    const many = called ? next?.word.endsWith("s") === true : number === "many" || next?.word === "ones";
    return {
      spring: id,
      many,
      sure: called || !common,
      placeLike: common && !called && PLACE_LABELS.has(words[0] ?? ""),
      end,
    };
  }
  const token = tokens[at];
  if (!token || !classesOf(token.word).includes("springs")) return null;
  // "No spring change" is not about a number.
  if (/^chang/.test(tokens[at + (tokens[at + 1]?.word === "to" ? 2 : 1)]?.word ?? "")) return null;
  return { many: token.word.endsWith("s"), sure: false, placeLike: false, end: at + 1 };
}

const isNameAt = (tokens: readonly Token[], at: number, springs: Lexicon["springs"]): boolean =>
  tokens[at]?.gap === 0 && isName(tokens[at], springs);

const isName = (token: Token | undefined, springs: Lexicon["springs"]): boolean =>
  springs.some(({ words }) => nameAt(words.slice(0, 1), () => token?.word) !== null);

const mayFollow = (next: Token, springs: Lexicon["springs"]): boolean =>
  classesOf(next.word).includes("fill") ||
  AFTER_A_SPRING.has(next.word) ||
  /^x?\d/.test(next.word) ||
  next.word.startsWith("{") ||
  springs.some(({ words }) => words[0] === next.word);
