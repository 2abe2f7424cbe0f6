/**
 * Whether a line speaks of a caution: it names the joint, the posture, or what people can do instead. Common practice, no
 * source. A line that would suit any move ("Enjoy this one", "Be careful", "If anything hurts, stop") speaks of none.
 */
import { perValue } from "#lib/memo/per-value.ts";
import { MOVE_CAUTIONS, type MoveCaution, type ScriptLine } from "#lib/plan/schema.ts";

/** Signs by caution, with commas between. A star stands for any ending, a space for one or more. */
const SAFETY_WORDS: Readonly<Record<MoveCaution, string>> = {
  "wrist-load": "wrist*, hand, hands, palm*, fist*, forearm*, elbow*, knuckle*, finger*, thumb*",
  kneeling: "knee, knees, kneel*, kneecap*, shin*, heels, pad, pads, padded, towel*, cushion*, blanket*, mat",
  overhead: `shoulder*, overhead, neck, pinch*, rotator*, ear, ears, eye height, eye level, chin height, chin level,
    arm height, head height, arms lower, lower arms, lower your arms, lower the arms, press forward, less high, as high as`,
  "loaded-flexion": `your back, the back, lower back, low back, back pain, back trouble, sore back*, stiff back*, bad back*,
    backs, spine*, disc*, neck*, bend*, bent, round*, flex*, curl*, roll*, bone*, head down, sit up, upright`,
  "loaded-rotation": `turn*, twist*, rotat*, your back, the back, lower back, low back, back pain, back trouble, sore back*,
    stiff back*, bad back*, backs, spine*, disc*, ribs, waist*, hips, pelvis, bone*`,
  supine: `lie, lying, flat, on your back, your back, prop*, pillow*, cushion*, head up, raise your head, sit,
    sitting, on your side, dizz*, giddy, light headed, faint*, breathless, pregnan*, bump, reflux, heartburn`,
  prone: `lie, lying, face down, facing down, on your front, belly, bellies, stomach*, tumm*, pregnan*, bump, breast*, rib,
    ribs, neck, kneel*, pad, pads, padded, towel*, cushion*, on your side`,
  "head-down": `head, upside down, dizz*, giddy, light headed, faint*, pressure, eye, eyes, glaucoma, come up slowly,
    slowly up, stay in plank, stay in your plank, hips lower, hips low`,
  "long-hold": `rest, rests, breath*, exhal*, inhal*, come out, come down, drop down, knees down, break, let go, the hold,
    a hold, holding, shorter hold, hold less, pressure, put it down, set it down, shake it out, stop early, stop before`,
  "unstable-carriage": `carriage*, hold on, holding, hold the, hold a, bar, bars, slow, slowly, slower, control*, roll,
    rolls, slid*, slip*, glid*, run away, runs away, runaway, stead*, wobbl*, balance, step off, half, small*, short*,
    a hand on, hands on, knees down, spring*`,
  "single-leg-balance": `balanc*, wobbl*, bar, bars, touch*, hold, holding, fingertip*, hand on, hands on, wall, stead*,
    fall*, tip over, sway*, foot down, toe down, toes down, both feet, other foot, back foot, one leg, standing leg, ankle*`,
};

/** A studio's own signs, in the same form. */
export type MoreWords = Readonly<Partial<Record<MoveCaution, readonly string[]>>>;

const PATTERNS = patternsOf(
  Object.fromEntries(Object.entries(SAFETY_WORDS).map(([caution, signs]) => [caution, signs.split(",")])),
);

/** The cautions that a line speaks of, in the order of MOVE_CAUTIONS, whatever its kind. */
export const spokenOf = perValue((line: ScriptLine): readonly MoveCaution[] =>
  MOVE_CAUTIONS.filter((caution) => PATTERNS[caution]?.test(line.text)),
);

/** The same, with a studio's own signs as well. */
export function spokenWith(line: ScriptLine, more: MoreWords): readonly MoveCaution[] {
  if (Object.keys(more).length === 0) return spokenOf(line);
  const own = patternsOf(more);
  return MOVE_CAUTIONS.filter((caution) => spokenOf(line).includes(caution) || own[caution]?.test(line.text));
}

function patternsOf(words: MoreWords): Partial<Record<MoveCaution, RegExp>> {
  const patterns: Partial<Record<MoveCaution, RegExp>> = {};
  for (const caution of MOVE_CAUTIONS) {
    const signs = (words[caution] ?? []).map(patternOf).filter((pattern) => pattern !== "");
    if (signs.length > 0)
      patterns[caution] = new RegExp(`(?<![\\p{L}\\p{N}])(?:${signs.join("|")})(?![\\p{L}\\p{N}])`, "iu");
  }
  return patterns;
}

function patternOf(sign: string): string {
  return sign
    .trim()
    .replace(/[.+?^${}()|[\]\\]/g, "\\$&")
    .replace(/\*+/g, "[\\p{L}]*")
    .replace(/[\s-]+/g, "[\\s-]+");
}
