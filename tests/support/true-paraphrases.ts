/** Other words for what a script says, each as true as what it replaces. */
import { spokenSprings } from "#lib/plan/format.ts";
import type { ScriptLine } from "#lib/plan/schema.ts";
import { isStrap } from "#lib/transitions/transitions.ts";
import { adding, asBeginning, moveName, type Place, replacing, rewording } from "./mutation-places.ts";

export interface Paraphrase {
  readonly kind: string;
  readonly say: readonly string[];
  readonly plant: (place: Place, say: string) => ScriptLine[] | undefined;
}

const POSTURE = /^\s*(kneel tall|lie down|lie face down|sit tall|stand hip-wide|stand tall)/i;

/** Written as "position: words". */
const POSITIONS = [
  "kneeling: come up onto your knees",
  "kneeling: kneel, nice and tall",
  "kneeling: up on both knees",
  "supine: lie on your back",
  "supine: roll down onto your back",
  "supine: lie back and settle",
  "prone: lie on your belly",
  "prone: down onto your front",
  "seated: take a seat",
  "seated: sit up tall",
  "standing: come to standing",
  "standing: stand up tall",
];

const SET_UP: readonly Paraphrase[] = [
  {
    kind: "carriage home",
    say: [
      ...["let the carriage come home", "bring the carriage all the way in", "dock the carriage", "park the carriage"],
      ...["close the carriage", "take it home first", "carriage in", "ride it home"],
    ],
    plant: (place, say) => replacing(place, /carriage home/i, say),
  },
  {
    kind: "springs",
    say: [
      ...["change to SPRINGS", "we're on SPRINGS", "you want SPRINGS on", "SPRINGS only", "SPRINGS, please"],
      ...["your springs are {springs}", "it's {springs} now", "set your springs to SPRINGS"],
    ],
    plant: (place, say) =>
      replacing(place, /\{springs\}/, say.replace("SPRINGS", spokenSprings(place.plan.equipment, place.item.springs))),
  },
  {
    kind: "facing",
    say: [
      ...["turn to the FACING", "turn to face the FACING", "come round to the FACING", "look to the FACING"],
      ...["facing the FACING", "turn yourself to face the FACING", "eyes to the FACING"],
    ],
    plant: (place, say) => replacing(place, /^\s*face the/i, say.replace("FACING", place.to.facing)),
  },
  {
    kind: "position",
    say: POSITIONS,
    plant(place, say) {
      const [position, words] = say.split(": ");
      return position === place.to.position && words ? replacing(place, POSTURE, words) : undefined;
    },
  },
  {
    kind: "side",
    say: [
      "{side} side now",
      "on the {side} side",
      "we take the SIDE side",
      "SIDE side, please",
      "it's the SIDE side's turn",
    ],
    plant: ({ item, ...place }, say) =>
      replacing({ item, ...place }, /^\s*\{side\} side/i, say.replace("SIDE", item.side)),
  },
];

const HELD: readonly Paraphrase[] = [
  {
    kind: "handles down",
    say: [
      "let go of the handles",
      "hang the handles up",
      "handles away",
      "set the handles down",
      "handles back on their hooks",
    ],
    plant: (place, say) =>
      place.from?.hands.startsWith("handles") && !place.to.hands.includes("handle")
        ? replacing(place, /handles? down/i, say)
        : undefined,
  },
  {
    kind: "handles up",
    say: [
      "pick up both handles",
      "grab your handles",
      "a handle in each hand",
      "collect both handles",
      "both handles in your hands",
    ],
    plant: (place, say) => replacing(place, /take both handles/i, say),
  },
  {
    kind: "strap off",
    say: [
      "feet out of the straps",
      "slide your feet out of the straps",
      "straps off",
      "slip out of the straps",
      "take the straps off",
    ],
    plant: (place, say) =>
      place.from && isStrap(place.from.feet) && !isStrap(place.to.feet) ? replacing(place, /strap/i, say) : undefined,
  },
  {
    kind: "strap on",
    say: ["feet into the cable straps", "slip your feet in the straps", "straps on", "put your feet in the straps"],
    plant: (place, say) => (isStrap(place.to.feet) ? replacing(place, /strap/i, say) : undefined),
  },
];

const ROUNDS: Readonly<Record<number, readonly string[]>> = {
  1: ["Round one of three.", "First round, just learn the path.", "Two more rounds after this one.", "First of three."],
  2: ["Second round.", "Round two.", "One more round after this one.", "Second time round, a bit slower."],
  3: ["Last round.", "Third and final round.", "No more rounds after this.", "Round three."],
};

const TALK: readonly Paraphrase[] = [
  {
    kind: "next",
    say: [
      "Next up: MOVE.",
      "After this comes MOVE.",
      "MOVE is next.",
      "Next, MOVE.",
      "{next-move} is coming up.",
      "Then MOVE.",
    ],
    plant: (place, say) =>
      place.next ? adding(place, say.replace("MOVE", moveName(place, place.next)), { leftSeconds: 20 }) : undefined,
  },
  {
    kind: "seconds left",
    say: [
      "Thirty seconds to go.",
      "Half a minute left.",
      "Last thirty seconds.",
      "Thirty more seconds.",
      "{seconds-left} seconds left.",
    ],
    plant: (place, say) => (place.item.seconds >= 45 ? adding(place, say, { leftSeconds: 30 }) : undefined),
  },
  {
    kind: "round",
    say: ["0", "1", "2", "3"],
    plant(place, say) {
      const words = ROUNDS[place.round?.nth ?? 0]?.[Number(say)];
      return words ? adding(place, words, { afterSeconds: 8 }) : undefined;
    },
  },
  {
    kind: "breath",
    say: ["out", "Breathe all the way, never hold.", "back", "Let the breath set the pace.", "both"],
    plant(place, say) {
      const { exhaleOn } = place.plan.moves[place.item.move] ?? {};
      const [first, second] = exhaleOn === "out" ? ["Exhale", "inhale"] : ["Inhale", "exhale"];
      if (!exhaleOn) return undefined;
      if (say === "out") return rewording(place, "breath", () => `${first} on the way out.`);
      if (say === "back") return rewording(place, "breath", () => `${asBeginning(second ?? "")} on the way back.`);
      return rewording(place, "breath", () => (say === "both" ? `${first} going out, ${second} coming back.` : say));
    },
  },
  {
    kind: "talk without a claim",
    say: [
      ...["Strong back, light hands.", "One long line from ear to heel.", "The next one is always the best one."],
      ...[
        "Nobody is watching the last one but you.",
        "First the breath, then the work.",
        "Let the left do what the right does.",
      ],
      ...["Turn the volume up a little.", "Stay with me, stay with your breath."],
    ],
    plant: (place, say) => (place.item.seconds >= 40 ? adding(place, say, { afterSeconds: 15 }) : undefined),
  },
];

export const PARAPHRASES: readonly Paraphrase[] = [...SET_UP, ...HELD, ...TALK];
