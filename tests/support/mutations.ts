/** Single mistakes, planted into good scripts. Each kind says by which rules it may be found. */
import { springWords } from "#lib/plan/format.ts";
import type { ScriptLine } from "#lib/plan/schema.ts";
import { isStrap } from "#lib/transitions/transitions.ts";
import {
  adding,
  asBeginning,
  leavingOut,
  moveName,
  type Place,
  replacing,
  rewording,
  sayingAfter,
  sayingFirst,
} from "./mutation-places.ts";

export interface Mistake {
  readonly kind: string;
  readonly rules: readonly string[];
  /** Ways to say it, taken in turn. */
  readonly say: readonly string[];
  /** The script with the mistake, or undefined where it cannot be made. */
  readonly plant: (place: Place, say: string) => ScriptLine[] | undefined;
}

const TOLD_WRONG = ["says-otherwise", "change-not-told"];
const OPPOSITE = { front: "back", back: "front", left: "right", right: "left" } as const;
const HOME = /carriage home/i;
const SPRINGS = /\{springs\}/;
const FACE = /^\s*face the/i;
const DOWN = /handles? down/i;
const POSTURE = /^\s*(kneel tall|lie down|lie face down|sit tall|stand hip-wide|stand tall)/i;

const springsOf = ({ plan, item }: Place): [string, number][] =>
  plan.equipment.springs.map(({ id }): [string, number] => [id, item.springs[id] ?? 0]);
const saidSprings = ({ plan }: Place, springs: readonly (readonly [string, number])[]): string =>
  springWords(plan.equipment, Object.fromEntries(springs.filter(([, n]) => n > 0)));
/** A spring that is on neither before nor after. */
const strangeSpring = ({ plan, from, to }: Place): string | undefined =>
  plan.equipment.springs.map(({ id }) => id).findLast((id) => !to.springs[id] && !from?.springs[id]);

const isNamed = (names: string, name: string): boolean =>
  name
    .toLowerCase()
    .split(/[^a-z]+/)
    .some((word) => word.length > 3 && names.toLowerCase().includes(word));
/** A move of the class whose name shares no word with this move or the next. */
function otherMove(place: Place): string | undefined {
  const near = `${moveName(place, place.item)} ${moveName(place, place.next)}`;
  return Object.values(place.plan.moves)
    .map(({ name }) => name)
    .find((name) => !isNamed(near, name));
}

const SPRING_MISTAKES: readonly Mistake[] = [
  {
    kind: "same springs where they change",
    rules: TOLD_WRONG,
    say: ["same springs", "the springs stay", "keep your springs", "springs as they are"],
    plant: (place, say) => (place.from ? replacing(place, SPRINGS, say) : undefined),
  },
  {
    kind: "one spring more that is not planned",
    rules: ["says-otherwise"],
    say: ["add one SPRING", "one SPRING on", "and put a SPRING on", "plus one SPRING"],
    plant(place, say) {
      const spring = strangeSpring(place);
      const words = spring && say.replace("SPRING", spring);
      if (!words || !place.from) return undefined;
      return replacing(place, SPRINGS, `now on {springs}, ${words}`) ?? sayingFirst(place, words);
    },
  },
  {
    kind: "wrong spring name",
    rules: TOLD_WRONG,
    say: ["now on SPRINGS", "SPRINGS", "change to SPRINGS", "we work on SPRINGS"],
    plant(place, say) {
      const strange = strangeSpring(place);
      const on = springsOf(place).filter(([, n]) => n > 0);
      if (!strange || on.length === 0) return undefined;
      const [[, count], ...rest] = on as [[string, number], ...[string, number][]];
      return replacing(place, SPRINGS, say.replace("SPRINGS", saidSprings(place, [[strange, count], ...rest])));
    },
  },
  {
    kind: "wrong count",
    rules: TOLD_WRONG,
    say: ["now on SPRINGS", "SPRINGS", "change to SPRINGS", "we work on SPRINGS"],
    plant(place, say) {
      const on = springsOf(place).filter(([, n]) => n > 0);
      const more = on.map(([id, n], place_): [string, number] => [id, place_ === 0 ? n + 1 : n]);
      return on.length > 0 ? replacing(place, SPRINGS, say.replace("SPRINGS", saidSprings(place, more))) : undefined;
    },
  },
  {
    kind: "carriage home said after the springs",
    rules: ["springs-changed-carriage-out"],
    say: [""],
    plant: (place) => (place.from ? sayingAfter(place, HOME, SPRINGS) : undefined),
  },
  {
    kind: "carriage home left out",
    rules: ["springs-changed-carriage-out"],
    say: [""],
    plant: (place) => (place.from ? leavingOut(place, HOME) : undefined),
  },
];

const BODY_MISTAKES: readonly Mistake[] = [
  {
    kind: "opposite facing",
    rules: TOLD_WRONG,
    say: ["face the FACING", "turn to the FACING", "look to the FACING", "come round to face the FACING"],
    plant: (place, say) =>
      place.from ? replacing(place, FACE, say.replace("FACING", OPPOSITE[place.to.facing])) : undefined,
  },
  {
    kind: "stay where it turns",
    rules: TOLD_WRONG,
    say: ["stay facing the FACING", "keep facing the FACING", "still facing the FACING"],
    plant: (place, say) => (place.from ? replacing(place, FACE, say.replace("FACING", place.from.facing)) : undefined),
  },
  {
    kind: "position swapped",
    rules: TOLD_WRONG,
    say: ["lie on your back", "sit down", "stand up"],
    plant(place, say) {
      const other = { "lie on your back": "supine", "sit down": "seated", "stand up": "standing" }[say];
      if (!place.from || place.from.position === place.to.position || other === place.to.position) return undefined;
      return replacing(place, POSTURE, say);
    },
  },
  {
    kind: "wrong side",
    rules: TOLD_WRONG,
    say: ["SIDE side", "on the SIDE", "SIDE side now", "this is the SIDE side"],
    plant(place, say) {
      const { side } = place.item;
      if (side !== "left" && side !== "right") return undefined;
      return replacing(place, /^\s*\{side\} side/i, say.replace("SIDE", OPPOSITE[side]));
    },
  },
  {
    kind: "handles kept where they are put down",
    rules: [...TOLD_WRONG, "hand-or-foot-not-free"],
    say: ["keep the handles", "hold on to your handles", "handles stay in your hands"],
    plant: (place, say) => (place.to.hands.includes("handle") ? undefined : replacing(place, DOWN, say)),
  },
  {
    kind: "strap left on",
    rules: [...TOLD_WRONG, "hand-or-foot-not-free"],
    say: ["leave the strap on", "keep your feet in the straps", "", "strap stays on"],
    plant(place, say) {
      if (!place.from || !isStrap(place.from.feet) || isStrap(place.to.feet)) return undefined;
      return say ? replacing(place, /strap/i, say) : leavingOut(place, /strap/i);
    },
  },
];

const ROUND_WORDS: Readonly<Record<number, readonly string[]>> = {
  1: ["This is the last round.", "Third round now.", "Second round, a bit slower."],
  2: ["Last round.", "First round, just learn the path.", "Round three."],
  3: ["One more round after this.", "Second round.", "Round one, easy does it."],
};

/** "Out as you press, in as you return": in and out change places. */
const turnedBreath = (text: string): string =>
  text.replace(/(^|, )(in|out)\b/gi, (_, gap: string, way: string) => {
    const other = way.toLowerCase() === "in" ? "out" : "in";
    return gap === "" ? asBeginning(other) : gap + other;
  });

const TALK_MISTAKES: readonly Mistake[] = [
  {
    kind: "another move called next",
    rules: ["says-otherwise"],
    say: ["Next up: MOVE.", "Next, MOVE.", "After this comes MOVE.", "MOVE is next."],
    plant(place, say) {
      const other = otherMove(place);
      return other && place.next ? adding(place, say.replace("MOVE", other), { leftSeconds: 20 }) : undefined;
    },
  },
  {
    kind: "wrong seconds left",
    rules: ["says-otherwise"],
    say: ["Last fifteen seconds.", "Only ten seconds left.", "Fifteen seconds to go.", "Ten more seconds."],
    plant: (place, say) => (place.item.seconds >= 45 ? adding(place, say, { afterSeconds: 6 }) : undefined),
  },
  {
    kind: "wrong round",
    rules: ["says-otherwise"],
    say: ["0", "1", "2"],
    plant(place, say) {
      const words = ROUND_WORDS[place.round?.nth ?? 0]?.[Number(say)];
      return words ? adding(place, words, { afterSeconds: 8 }) : undefined;
    },
  },
  {
    kind: "breath the wrong way round",
    rules: ["says-otherwise"],
    say: ["turned", "said outright"],
    plant(place, say) {
      const { exhaleOn } = place.plan.moves[place.item.move] ?? {};
      if (!exhaleOn) return undefined;
      if (say === "turned") return rewording(place, "breath", turnedBreath);
      const [out, back] = exhaleOn === "out" ? ["Inhale", "exhale"] : ["Exhale", "inhale"];
      return rewording(place, "breath", () => `${out} on the way out, ${back} on the way back.`);
    },
  },
  {
    kind: "no care in the safety line",
    rules: ["caution-without-safety-line", "expected-caution-unanswered"],
    say: ["Enjoy this one.", "Have fun with it.", "You look great."],
    plant: (place, say) =>
      (place.plan.moves[place.item.move]?.cautions ?? []).length > 0
        ? rewording(place, "safety", () => say)
        : undefined,
  },
];

export const MISTAKES: readonly Mistake[] = [...SPRING_MISTAKES, ...BODY_MISTAKES, ...TALK_MISTAKES];
