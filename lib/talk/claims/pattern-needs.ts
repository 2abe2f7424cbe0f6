/**
 * Reads from a regular expression what a text must contain for it to match. Only what is surely needed counts. An
 * expression that is not understood here needs nothing, so it is always tried.
 */

/** One of these parts of words must be there; `FIGURE` stands for any figure. */
export type Need = readonly string[];

export const FIGURE = "\\d";
/** Longer parts are cut, so that few have to be looked up for each word. */
export const LONGEST_PART = 8;
const SHORTEST_PART = 2;
const MOST_NEEDS = 4;

/** All of them must be filled, the rarest first, at most four. */
export function needsOf({ source, flags }: RegExp): Need[] {
  if (flags !== "" && flags !== "g") return [];
  return new Reader(source).whole()?.slice(0, MOST_NEEDS) ?? [];
}

const LETTERS = new Set("abcdefghijklmnopqrstuvwxyz0123456789'");
/** What a quantifier begins with, and what a branch ends before. */
const COUNTS = new Set("?*+{");
const ENDS = new Set("|)");
const QUANTIFIER = /(?<none>[?*]|\{0)?(?:\+|\{?\d*,?\d*\})?\??/y;
const CLASS = /\[(?:\\.|[^\]\\])*\]/y;
const ESCAPED_CLASS = /\\[bBwWsSD]|\\[^A-Za-z0-9]/y;
const SIGN = /[\s,:"^$.;&!<>=@#%~`/_-]/y;
const LOOK_AROUND = /\(\?<?[=!]/y;
const GROUP = /\((?:\?:|\?<[A-Za-z]\w*>|(?!\?))/y;

/** What opens and closes groups; whole escapes and classes, since theirs do not count. */
const BRACKETS = /\\.|\[(?:\\.|[^\]\\])*\]|[()]/g;
/** A group's text -> what it needs. */
const READ_GROUPS = new Map<string, Need[]>();

class Reader {
  private readonly source: string;
  private at = 0;

  constructor(source: string) {
    this.source = source;
  }

  /** Undefined for what is not understood. */
  whole(): Need[] | undefined {
    const needs = this.branches();
    return this.at === this.source.length ? needs : undefined;
  }

  /** One of what the branches need: the rarest of each. */
  private branches(): Need[] {
    const all = [this.branch()];
    while (this.passes("|")) all.push(this.branch());
    if (all.length === 1) return all.flat();
    const rarest = all.map(([need]) => need ?? []);
    return rarest.every((need) => need.length > 0) ? [[...new Set(rarest.flat())].sort()] : [];
  }

  private branch(): Need[] {
    const needs: Need[] = [];
    let part = "";
    for (;;) {
      const letter = this.letter();
      const inner = letter ? [] : this.piece();
      const quantifier = inner && COUNTS.has(this.sign()) ? this.taken(QUANTIFIER) : null;
      const isNeeded = quantifier?.groups?.none === undefined;
      if (letter && isNeeded) part += letter;
      if (letter && !quantifier) continue;
      if (part.length >= SHORTEST_PART) needs.push([part.slice(0, LONGEST_PART)]);
      part = "";
      if (!inner) return needs.sort(rarestFirst);
      if (isNeeded) needs.push(...inner);
    }
  }

  /** What a group or a sign needs; undefined at the end of a branch, and at what is not understood. */
  private piece(): Need[] | undefined {
    if (this.passes(" ")) return [];
    if (ENDS.has(this.sign())) return undefined;
    if (this.taken(/\\d/y)) return [[FIGURE]];
    if (this.taken(CLASS) || this.taken(ESCAPED_CLASS) || this.taken(SIGN)) return [];
    const isAside = this.taken(LOOK_AROUND);
    if (!isAside && !this.taken(GROUP)) return undefined;
    const inner = this.group();
    if (!this.passes(")")) return undefined;
    return isAside ? [] : inner;
  }

  /** The branches of a group that has just been opened. Long lists of words are in dozens of patterns: each is read once. */
  private group(): Need[] {
    const from = this.at;
    const to = this.groupEnd();
    const text = this.source.slice(from, to);
    const known = READ_GROUPS.get(text);
    if (known) {
      this.at = to;
      return known;
    }
    const needs = this.branches();
    if (this.at === to) READ_GROUPS.set(text, needs);
    return needs;
  }

  /** Where the group that is open here ends. */
  private groupEnd(): number {
    let open = 1;
    for (const { 0: sign, index } of this.source.slice(this.at).matchAll(BRACKETS)) {
      if (sign === "(") open++;
      if (sign === ")") open--;
      if (open === 0) return this.at + index;
    }
    return this.source.length;
  }

  /** The sign that is next, or nothing at the end. */
  private sign(): string {
    return this.source[this.at] ?? "";
  }

  private letter(): string {
    const sign = this.sign();
    if (!LETTERS.has(sign)) return "";
    this.at++;
    return sign;
  }

  /** A sign that stands for itself needs no expression: there are thousands of them. */
  private passes(sign: string): boolean {
    const isNext = this.sign() === sign;
    if (isNext) this.at++;
    return isNext;
  }

  private taken(what: RegExp): RegExpExecArray | null {
    what.lastIndex = this.at;
    const found = what.exec(this.source);
    if (found) this.at += found[0].length;
    return found;
  }
}

/** Long parts are rarer than short ones, and one is rarer than any of many. */
const rarestFirst = (a: Need, b: Need): number => shortest(b) - shortest(a) || a.length - b.length;
const shortest = (need: Need): number => Math.min(...need.map((part) => part.length));
