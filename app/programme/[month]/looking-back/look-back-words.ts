/** The sentences of looking back. Pure. */
import type { LateChange, LateFitting } from "#lib/look-back/late-changes.ts";
import { listWords, plural, secondsWords } from "#lib/plan/format.ts";

export const LOOK_BACK = {
  what: "Counted from the logs that cue devices sent. A class without a log may have been taught all the same.",
  themes: "By theme",
  coaches: "By coach",
  regulars: "By regulars",
  groups: "By muscle group",
  groupsWhat:
    "Minutes of work by the weights of the moves, over the classes that have a log: what was done of what their plans say. A class that two groups of regulars come to counts for both.",
  planned: "Planned",
  done: "Done",
  allClasses: "All classes",
  allGroups: "All groups",
  late: "What keeps coming late",
  lateWhat:
    "Over all classes of the edition. A change counts when it was late at least twice, and in half of its classes.",
  noneLate: "No change was late twice, and in half of its classes.",
  logs: "Class by class",
  noLogs: "No class of this month has a log that you may read.",
  none: "Nothing to count yet.",
} as const;

interface Sums {
  readonly all: {
    readonly planned: number;
    readonly taught: number;
    readonly abandoned: number;
    readonly noLog: number;
  };
  readonly toCome: number;
  readonly outside: number;
  readonly struck: number;
  readonly late: { readonly classes: number; readonly minutes: number };
}

/** "Of 40 classes that are over 35 were taught, 1 was only begun and 4 have no log." */
export function sumSentence({ all, toCome, outside, struck }: Sums): string {
  const { planned, taught, abandoned, noLog } = all;
  const over =
    planned === 0
      ? "No class of this month is over."
      : `Of ${plural(planned, "class that is over", "classes that are over")}, ${listWords([
          `${taught} ${taught === 1 ? "was" : "were"} taught`,
          `${abandoned} ${abandoned === 1 ? "was" : "were"} only begun`,
          `${noLog} ${noLog === 1 ? "has" : "have"} no log`,
        ])}.`;
  const rest = [
    toCome > 0 && `${toCome} to come.`,
    outside > 0 && `${plural(outside, "log is", "logs are")} of no class of the programme.`,
    struck > 0 && `${plural(struck, "log was", "logs were")} struck.`,
  ].filter(Boolean);
  return [over, ...rest].join(" ");
}

export const lateSentence = ({ late }: Sums): string =>
  late.classes === 0
    ? ""
    : `${plural(late.classes, "class", "classes")} began late, by ${plural(late.minutes, "minute")} in all.`;

const FITTING_WORDS = {
  springs: "springs on or off",
  straps: "straps on or off",
  handles: "handles up, down or crossed",
  stations: "a change of station",
} as const;

/** "Long box row: late in 3 of 4 classes, by 12 s as a rule (springs on or off and straps on or off)." */
export function lateChangeWords({ name, late, of, seconds, fittings }: LateChange): string {
  const asks = fittings.length > 0 ? ` (${listWords(fittings.map((one) => FITTING_WORDS[one]))})` : "";
  return `Into ${name}: late in ${late} of ${of} classes, by ${secondsWords(Math.round(seconds))} as a rule${asks}.`;
}

export const fittingName = ({ fitting }: LateFitting): string => FITTING_WORDS[fitting];

const END_WORDS = { whole: "to its end", early: "ended early", abandoned: "only begun" } as const;
export const howEnded = (end: keyof typeof END_WORDS): string => END_WORDS[end];

/** "3 min late", "on time", "2 min early". */
export function startWordsOf(minutesLate: number | null): string {
  if (minutesLate === null) return "no class of the programme";
  if (minutesLate === 0) return "on time";
  return minutesLate > 0 ? `${minutesLate} min late` : `${-minutesLate} min early`;
}
