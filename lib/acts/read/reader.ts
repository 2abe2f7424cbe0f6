/** Reads a line: what its words tell, in the order in which people hear it and in the order in which they are to do it. */
import { FACINGS } from "#lib/plan/schema.ts";
import { type Clause, clausesOf, type ReadAct, type ReadClause } from "./clauses.ts";
import { corrected } from "./corrected.ts";
import type { Draft } from "./draft.ts";
import { readingAt } from "./grammar.ts";
import type { Lexicon } from "./lexicon.ts";
import { tokensOf } from "./tokens.ts";
import { isUnderstood, unclearOf } from "./unclear.ts";
import { type Unit, unitsOf } from "./units.ts";
import { type Unread, unreadOf } from "./unread.ts";

export interface LineReading {
  /** In the order of the words. */
  readonly acts: readonly ReadAct[];
  /** The same in the order in which they are to be done. */
  readonly inOrder: readonly ReadAct[];
  readonly unread: readonly Unread[];
}

/** About a minute of talk. A line that goes on is no set-up, and must not keep others waiting. */
const MOST_WORDS = 200;

export function readTelling(text: string, lexicon: Lexicon): LineReading {
  const clauses = clausesOf(unitsOf(tokensOf(text, lexicon.added).slice(0, MOST_WORDS), lexicon));
  const read: ReadClause[] = [];
  // "Not the front" is about a way to face where the sentence has named a turn.
  let turning = false;
  for (const [n, clause] of clauses.entries()) {
    const before = read.at(-1);
    if (before?.clause.sentence !== clause.sentence) turning = false;
    // "If you like, kneel": the condition holds for the next clause.
    const hedged = before?.clause.sentence === clause.sentence && (before.open || isWait(before));
    read.push(readClause(clause, clauses[n + 1], { turning, hedged, text }));
    turning ||= clause.units.some(({ classes }) => isTurn(classes));
  }
  const told = stripped(apposed(corrected(read)));
  const acts = told.flatMap((one) => one.acts);
  const unread = read.flatMap((one) => one.unread);
  return { acts, inOrder: ordered(told).flatMap((one) => one.acts), unread };
}

/** "Take off two springs, a strong and a middle": the names say which two. */
function apposed(read: readonly ReadClause[]): readonly ReadClause[] {
  if (read.reduce((sum, { acts }) => sum + acts.length, 0) < 2) return read;
  let last: { readonly act: ReadAct; readonly sentence: number } | undefined;
  const dropped = new Set<ReadAct>();
  const named = read.map((one) => ({
    ...one,
    acts: one.acts.map((act): ReadAct => {
      const whole = last?.sentence === one.clause.sentence ? last.act : undefined;
      last = { act, sentence: one.clause.sentence };
      const draft = whole && namesOf(whole.draft, act.draft);
      if (!whole || !draft) return act;
      dropped.add(whole);
      return { ...act, draft };
    }),
  }));
  return named.map((one) => ({ ...one, acts: one.acts.filter((act) => !dropped.has(act)) }));
}

/** "Everything off, one light on": what goes on is then all that is on. */
function stripped(read: readonly ReadClause[]): readonly ReadClause[] {
  const springs = read.flatMap(({ acts }) => acts).filter(({ draft }) => draft.act === "springs");
  if (springs.length < 2) return read;
  const at = springs.findIndex(({ draft }) => isBared(draft));
  const none = springs[at];
  const put = springs.slice(at + 1);
  const parts = put.flatMap(({ draft }) => (isPutOn(draft) ? draft.parts : []));
  if (!none || put.length === 0 || !put.every(({ draft }) => isPutOn(draft))) return read;
  const whole: ReadAct = { ...none, draft: { act: "springs", way: "total", parts }, to: put.at(-1)?.to ?? none.to };
  return read.map((one) => ({
    ...one,
    acts: one.acts.filter((act) => !put.includes(act)).map((act) => (act === none ? whole : act)),
  }));
}
const isBared = (draft: Draft): boolean => draft.act === "springs" && draft.way === "none";
type Put = Extract<Draft, { readonly act: "springs"; readonly parts: unknown }>;
const isPutOn = (draft: Draft): draft is Put =>
  draft.act === "springs" && "parts" in draft && !["off", "off-or-on", "keep"].includes(draft.way);

/** "Forty-eight seconds, then we stand." */
const isWait = ({ clause, acts }: ReadClause): boolean =>
  acts.length === 0 && clause.units.some(({ word }) => ["seconds", "minutes", "minute"].includes(word));

/** What moves a number of springs without a name, with the names that come after it; undefined where they do not add up. */
function namesOf(whole: Draft, named: Draft): Draft | undefined {
  if (!isMoved(whole) || named.act !== "springs" || named.way !== "now") return undefined;
  const [of] = whole.parts;
  const count = named.parts.reduce(
    (sum, part) => sum + (part.spring === undefined ? Number.NaN : (part.count ?? 1)),
    0,
  );
  return of?.spring === undefined && of?.count === count ? { ...named, way: whole.way } : undefined;
}

type Moved = Extract<Draft, { readonly act: "springs"; readonly parts: unknown }>;
const isMoved = (draft: Draft): draft is Moved =>
  draft.act === "springs" && (draft.way === "on" || draft.way === "off") && draft.parts.length === 1;

const isTurn = (classes: readonly string[]): boolean => classes.includes("face") || classes.includes("turn");

/** The state of a clause as its words are read; `turning`: a turn has been named, so a bare "front" is a way to face. */
interface Mood {
  /** Where the negation begins, in characters; null for none. */
  negated: number | null;
  hedged: boolean;
  /** "As you press": what follows is not asked for. */
  during: boolean;
  turning: boolean;
  started: boolean;
}

const NO_NEGATION: ReadonlySet<string> = new Set(["forget", "worry", "rush", "hurry", "only"]);

/** "Kneel if you like": a condition holds for the whole clause. */
const moodOf = (units: readonly Unit[], { turning, hedged }: Pick<Mood, "turning" | "hedged">): Mood => ({
  negated: null,
  hedged: hedged || units.some(({ classes }) => classes.includes("hedge")),
  during: false,
  turning,
  started: false,
});

function readClause(
  clause: Clause,
  next: Clause | undefined,
  { turning, hedged, text }: Pick<Mood, "turning" | "hedged"> & { readonly text: string },
): ReadClause {
  const { units } = clause;
  const mood = moodOf(units, { turning, hedged });
  const putOff = next?.sentence === clause.sentence && (next.joint === "until" || next.joint === "before");
  const notYet = units.some(({ word }) => word === "yet");
  const acts: ReadAct[] = [];
  const taken = new Set<number>();
  let first = false;
  for (let at = 0; at < units.length; ) {
    const unit = units[at] as Unit;
    const reading = readingAt(units, at, !mood.started) ?? aimAt(units, at, mood);
    if (!reading) {
      first ||= unit.word === "first" || unit.word === "firstly";
      setMood(mood, unit, units[at + 1]);
      at++;
      continue;
    }
    const place = { from: mood.negated ?? unit.from, to: units[reading.end - 1]?.to ?? unit.to, hedged: mood.hedged };
    const told =
      mood.negated === null
        ? unclearOf(reading, units, at, taken)
        : reading.drafts.flatMap((draft) => negated(draft, { putOff, notYet }));
    const drafts = told.filter((draft) => !isNamed(draft, clause));
    acts.push(
      ...drafts
        .filter((draft) => draft.act !== "touch" && (!mood.during || isTurnTo(draft) || draft.act === "carriage-home"))
        .map((draft) => ({ draft: mood.during ? inPassing(draft) : draft, ...place })),
    );
    mood.started = true;
    if (isUnderstood(reading, units, at)) for (let n = at; n < reading.end; n++) taken.add(n);
    at = reading.end;
  }
  const isLeftOut = mood.negated !== null || mood.during;
  const unread = isLeftOut ? [] : unreadOf(clause, (at) => taken.has(at), { text, hedged: mood.hedged });
  return { clause, acts, first, open: mood.hedged && acts.length === 0, unread };
}

/** "As the carriage comes home" may be of the repetition. */
const inPassing = (draft: Draft): Draft => (draft.act === "carriage-home" ? { ...draft, loose: true } : draft);

/** "As you turn to face the front" asks for the turn too. */
const isTurnTo = (draft: Draft): boolean =>
  draft.act === "turn" && draft.loose === undefined && FACINGS.some((facing) => facing === draft.to);

/** "Before the softs": springs that are only named. */
const isNamed = (draft: Draft, { joint }: Clause): boolean =>
  (joint === "before" || joint === "after") && draft.act === "springs" && draft.way === "now";

/** "Face the back, not the front": a bare way to face after a turn. */
function aimAt(
  units: readonly Unit[],
  at: number,
  { turning }: Mood,
): { drafts: readonly Draft[]; end: number } | null {
  const facing = units[at]?.facing;
  const isLast = units.slice(at + 1).every(({ classes }) => classes.includes("fill"));
  const isSide = ["for", "with", "on"].includes(units[at - 1]?.word ?? "");
  return turning && facing && isLast && !isSide ? { drafts: [{ act: "turn", to: facing }], end: at + 1 } : null;
}

function setMood(mood: Mood, { word, classes, from }: Unit, next: Unit | undefined): void {
  if (classes.includes("not")) mood.negated = NO_NEGATION.has(next?.word ?? "") ? null : from;
  else if (word === "instead" || word === "rather")
    mood.negated ??= next?.word === "of" || next?.word === "than" ? from : null;
  else if (word === "and") mood.negated = null;
  else if (classes.includes("later")) mood.hedged = true;
  // "Long as a ladder" is a likeness.
  else if (classes.includes("during")) mood.during ||= !(word === "as" && /^an?$/.test(next?.word ?? ""));
  if (!classes.includes("fill") && word !== "and" && word !== "first") mood.started = true;
}

/** "Don't let go until the carriage is home" puts it off; "don't let go" and "don't turn" mean that it stays. */
function negated(draft: Draft, { putOff, notYet }: { putOff: boolean; notYet: boolean }): Draft[] {
  if (notYet) return [];
  if (putOff) return draft.act === "handles-down" || draft.act === "strap-off" ? [{ ...draft, implied: true }] : [];
  if (draft.act === "touch") return [{ act: "stay", of: draft.of }];
  if (draft.act === "handles-cross") return [{ ...draft, un: !draft.un, loose: true }];
  if (draft.act === "handles-down") return [{ act: "stay", of: "handles" }];
  if (draft.act === "side" && draft.side === "other") return [{ act: "stay", of: "side" }];
  if (draft.act === "turn" && (draft.to === "round" || draft.to === "any")) return [{ act: "stay", of: "turn" }];
  return draft.act === "strap-off" ? [{ act: "stay", of: "strap" }] : [];
}

const RELEASES: readonly Draft["act"][] = ["carriage-home", "handles-down", "strap-off"];

/**
 * "Two light once the carriage is home", "before you turn, handles down; before that, carriage home", "carriage home first".
 * Clauses that follow one that was moved stay behind it.
 */
function ordered(read: readonly ReadClause[]): ReadClause[] {
  const order: ReadClause[] = [];
  let behind: ReadClause | null = null;
  const telling = read.filter(({ acts, clause }) => acts.length > 0 || clause.joint === "before");
  for (const [n, one] of telling.entries()) {
    const last: ReadClause | undefined = telling[n - 1];
    const sameSentence = last?.clause.sentence === one.clause.sentence;
    const place = placeIn(order, one, { last: sameSentence ? last : undefined, next: telling[n + 1] });
    const follows: number | null =
      sameSentence && last !== undefined && behind === last && one.clause.joint !== "before"
        ? order.indexOf(last) + 1
        : null;
    const at: number | null = place ?? follows;
    const waits = one.clause.joint === "after" || one.clause.joint === "until";
    behind = at === null || waits ? null : one;
    order.splice(at ?? order.length, 0, one);
  }
  return order;
}

/** "The carriage being home." */
const isBeing = ({ clause }: ReadClause): boolean => clause.units.some(({ word }) => word === "being");

/** The place of a clause that is to be done before what was said; null for the others. */
function placeIn(
  order: readonly ReadClause[],
  one: ReadClause,
  { last, next }: { last: ReadClause | undefined; next: ReadClause | undefined },
): number | null {
  const { joint, sentence } = one.clause;
  const begins = order.findIndex(({ clause }) => clause.sentence === sentence);
  const isRelease = one.acts[0] !== undefined && RELEASES.includes(one.acts[0].draft.act);
  if (joint === "before-that")
    return begins >= 0 ? begins : order.findIndex(({ clause }) => clause.sentence === sentence - 1);
  if (isRelease && one.first) return 0;
  if (begins < 0) return null;
  // "Get home before you change it."
  const isBeforeAll = next?.clause.joint === "before" && next.acts.length === 0 && next.clause.sentence === sentence;
  if (joint === "until" || (isRelease && (joint === "after" || joint === "so" || isBeforeAll || isBeing(one))))
    return begins;
  if (last?.clause.joint !== "before" || joint === "before") return null;
  // "Before you turn, handles down"; a second "before" goes before all that was said.
  return order.filter(({ clause }) => clause.joint === "before" && clause.sentence === sentence).length > 1
    ? begins
    : order.indexOf(last);
}
