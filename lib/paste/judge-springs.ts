/** Which springs are on, or the doubt about them. */
import { sentenceCase, springWords } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import type { Equipment, Spring } from "#lib/plan/schema.ts";
import type { Answers, RowAnswer } from "./answers.ts";
import type { DoubtChoice, PasteDoubt } from "./judged.ts";
import { SPRING_SENTENCES } from "./paste-words.ts";
import type { SpringsFound } from "./types.ts";

type Counts = Readonly<Record<string, number>>;

export interface SpringsJudged {
  readonly springs?: Counts;
  readonly starting: boolean;
  readonly doubts: readonly PasteDoubt[];
  readonly notes: readonly string[];
}

export interface SpringsQuestion {
  readonly found: SpringsFound;
  readonly answer: RowAnswer;
  readonly answers: Answers;
  readonly equipment: Equipment;
  /** The springs that adding by hand would choose. */
  readonly starting: Counts;
  /** The row has a time, or one was given. */
  readonly timed: boolean;
}

export function judgeSprings(q: SpringsQuestion): SpringsJudged {
  const { found, answer } = q;
  const settled = (springs: Counts, starting = false): SpringsJudged => ({
    springs,
    starting,
    doubts: [],
    notes: starting ? [] : [...found.notes, ...explainedNotes(q)],
  });
  if (answer.springs) return settled(onOnly(answer.springs));
  const { counts, unknown } = translated(q);
  const open = (doubts: PasteDoubt[]): SpringsJudged => ({ starting: false, doubts, notes: found.notes });
  if (unknown.length > 0) return open(unknown.map((u) => unknownDoubt(q, counts, u)));
  const named = onOnly(counts);
  const any = Object.keys(named).length > 0;
  if (found.none && any) return open([bothDoubt(q, named)]);
  if (found.orTime && !q.timed) return open([orTimeDoubt(q, named, found.orTime)]);
  const over = q.equipment.springs.filter((s) => (named[s.id] ?? 0) > s.count);
  if (over.length > 0) return open([overDoubt(q, named, over)]);
  if (any || found.none || Object.keys(counts).length > 0) return settled(named);
  return settled(onOnly(q.starting), true);
}

/** Notes on what a person said a word means, wherever it occurs. */
function explainedNotes({ found, answer, answers, equipment }: SpringsQuestion): string[] {
  if (answer.springs) return [];
  return found.unknown.flatMap(({ word }) => {
    const spring = equipment.springs.find((s) => s.id === own(answers.springs, word));
    return spring ? [SPRING_SENTENCES.explained(word, spring)] : [];
  });
}

const onOnly = (counts: Counts): Counts => Object.fromEntries(Object.entries(counts).filter(([, n]) => n > 0));

/** Unknown words that a person has explained are counted with the springs they mean. */
function translated({ found, answers, equipment }: SpringsQuestion) {
  const counts: Record<string, number> = { ...found.counts };
  const unknown: SpringsFound["unknown"][number][] = [];
  for (const u of found.unknown) {
    const id = own(answers.springs, u.word);
    if (id === undefined || !equipment.springs.some((s) => s.id === id)) unknown.push(u);
    else counts[id] = (counts[id] ?? 0) + u.count;
  }
  return { counts, unknown };
}

function unknownDoubt(
  q: SpringsQuestion,
  counts: Counts,
  { word, count }: { word: string; count: number },
): PasteDoubt {
  const { springs } = q.equipment;
  if (word !== "") {
    const choices = springs.map(
      (s): DoubtChoice => ({ label: `“${word}” is ${s.label}`, answer: { spring: { word, id: s.id } } }),
    );
    return { about: "springs", say: SPRING_SENTENCES.unknown(word), choices };
  }
  const fitting = springs.filter((s) => s.count >= count);
  const choices = fitting.map((s) => springsChoice(q, { ...counts, [s.id]: (counts[s.id] ?? 0) + count }));
  return { about: "springs", say: SPRING_SENTENCES.onlyCounted(count), choices };
}

function bothDoubt(q: SpringsQuestion, named: Counts): PasteDoubt {
  const say = SPRING_SENTENCES.noneAndSome(q.equipment, named);
  return { about: "springs", say, choices: [springsChoice(q, named), springsChoice(q, {})] };
}

function orTimeDoubt(
  q: SpringsQuestion,
  named: Counts,
  { text, seconds }: { text: string; seconds: number },
): PasteDoubt {
  const time = seconds % 60 === 0 ? `${seconds / 60} min` : `${seconds} s`;
  return {
    about: "springs",
    say: SPRING_SENTENCES.orTime(text),
    choices: [springsChoice(q, named), { label: time, answer: { row: { seconds, springs: onOnly(q.starting) } } }],
  };
}

function overDoubt(q: SpringsQuestion, named: Counts, over: readonly Spring[]): PasteDoubt {
  const say = over.map((s) => SPRING_SENTENCES.tooMany(named[s.id] ?? 0, s));
  const held = Object.fromEntries(Object.entries(named).map(([id, n]) => [id, Math.min(n, countIn(q.equipment, id))]));
  return { about: "springs", say: say.join(" "), choices: [springsChoice(q, held)] };
}

const countIn = (equipment: Equipment, id: string): number => equipment.springs.find((s) => s.id === id)?.count ?? 0;

function springsChoice({ equipment }: SpringsQuestion, counts: Counts): DoubtChoice {
  return { label: sentenceCase(springWords(equipment, counts)), answer: { row: { springs: onOnly(counts) } } };
}
