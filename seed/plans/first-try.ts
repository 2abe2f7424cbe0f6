/** A trainee's class with realistic mistakes. Each is listed in PLANTED with the rule that has to find it. */
import type { Plan } from "#lib/plan/schema.ts";
import { ROOMS } from "#seed/studio/rooms.ts";
import { composePlan, type DemoRow } from "./compose.ts";

const MIDDLE = { middle: 1 };
const LIGHT = { light: 1 };

const ROWS: readonly DemoRow[] = [
  { heading: "Warm up on the platform" },
  { move: "plank-slide", seconds: 60, springs: MIDDLE },
  {
    move: "forearm-pike",
    seconds: 60,
    springs: { firm: 1 },
    transition: 4,
    lines: [{ kind: "setup", text: "Forearms down, here we go." }],
  },
  { move: "push-up-slow", seconds: 60, springs: MIDDLE, transition: 14, without: ["easier"] },
  {
    move: "bear-plank-hover",
    seconds: 60,
    springs: MIDDLE,
    transition: 8,
    without: ["breath", "safety"],
    lines: [
      { kind: "safety", text: "Fists if the wrists complain." },
      { kind: "easier", text: "Set the knees down and lift them again." },
    ],
  },
  { move: "bear-plank-press", seconds: 45, springs: {}, transition: 10 },
  { heading: "Arms" },
  { move: "lat-pull-kneeling", seconds: 45, springs: { light: 1, middle: 1 }, transition: 6, without: ["safety"] },
  {
    move: "row-kneeling",
    seconds: 15,
    springs: { light: 1, middle: 1 },
    transition: 8,
    lines: [
      {
        kind: "focus",
        text: "Feel the shoulder blades slide down and together, as if a pencil stood between them, and keep the neck long.",
      },
    ],
  },
  { move: "curl-kneeling", seconds: 40, springs: { light: 6 }, transition: 26 },
  {
    move: "chest-press-kneeling",
    seconds: 75,
    springs: MIDDLE,
    transition: 28,
    without: ["start", "breath", "form", "easier"],
  },
  { move: "overhead-press-kneeling", seconds: 60, springs: MIDDLE, transition: 8 },
  {
    move: "triceps-press-forward",
    seconds: 60,
    springs: MIDDLE,
    transition: 8,
    lines: [{ kind: "focus", text: "Only 20 seconds left, this is the last move of the class." }],
  },
  { move: "fly-kneeling", seconds: 60, springs: MIDDLE, transition: 9 },
  { heading: "Sides" },
  {
    move: "trunk-rotation-kneeling",
    side: "right",
    seconds: 60,
    springs: LIGHT,
    facing: "left",
    transition: 16,
    lines: [{ kind: "setup", text: "One handle down, carriage home, {springs}, {side} side. Kneel tall, arms long." }],
  },
  { move: "trunk-rotation-kneeling", side: "left", seconds: 45, springs: LIGHT, facing: "right", transition: 14 },
  { move: "row-single", side: "right", seconds: 50, springs: LIGHT, transition: 12 },
  { heading: "Finish" },
  { move: "curl-up-press", seconds: 62, springs: { light: 2 }, transition: 20 },
  { move: "leg-press-supine", seconds: 90, springs: { firm: 1, strong: 2 }, transition: 24 },
  { move: "leg-lowering-straps", seconds: 60, springs: MIDDLE, transition: 21 },
  {
    move: "forearm-plank-hold",
    seconds: 60,
    springs: MIDDLE,
    offsetMm: 40,
    transition: 16,
    lines: [
      { kind: "setup", text: "Up to the front platform, forearms down, hips level." },
      { kind: "setup", text: "Up to the front platform, forearms down, hips level." },
    ],
  },
];

const WARM_UP = ["plank-slide", "forearm-pike", "push-up-slow", "bear-plank-hover", "bear-plank-press"];

/** The mistakes, each with the rule that finds it and the items it is about (none: the whole class). */
export const PLANTED: readonly {
  readonly rule: string;
  readonly items: readonly string[];
  readonly mistake: string;
}[] = [
  { rule: "total-length", items: [], mistake: "the class runs over its slot" },
  { rule: "opening-or-closing-missing", items: [], mistake: "no time to close" },
  { rule: "setup-line-twice", items: ["forearm-plank-hold"], mistake: "the same set-up written twice" },
  { rule: "theme-missed", items: [], mistake: "the chest gets less than the title promises" },
  { rule: "theme-missed", items: [], mistake: "so do the biceps" },
  { rule: "too-many-setups", items: [], mistake: "other springs every other move" },
  { rule: "push-pull-apart", items: [], mistake: "twice as much pushing as pulling" },
  {
    rule: "group-without-rest",
    items: [...WARM_UP, "lat-pull-kneeling"],
    mistake: "a warm-up of planks that gives the belly no rest",
  },
  {
    rule: "wrists-without-rest",
    items: ["push-up-slow", "bear-plank-hover", "bear-plank-press"],
    mistake: "three moves in a row on the wrists",
  },
  { rule: "one-way-spine", items: ["forearm-pike", "curl-up-press"], mistake: "a spine that only bends forward" },
  { rule: "springs-out-of-range", items: ["forearm-pike"], mistake: "a firm spring for a pike" },
  { rule: "transition-too-short", items: ["forearm-pike"], mistake: "four seconds to change a spring" },
  { rule: "springs-changed-carriage-out", items: ["forearm-pike"], mistake: "a spring changed, no carriage home" },
  { rule: "change-not-told", items: ["forearm-pike"], mistake: "nobody hears that the spring changes" },
  { rule: "change-could-be-avoided", items: ["forearm-pike"], mistake: "the spring from before would have done" },
  {
    rule: "change-could-be-avoided",
    items: ["block-1"],
    mistake: "a warm-up that goes down to the forearms and up again",
  },
  {
    rule: "change-could-be-avoided",
    items: ["block-7"],
    mistake: "pulls and presses on whatever springs came to mind",
  },
  { rule: "too-light-to-be-steady", items: ["bear-plank-press"], mistake: "no spring at all, to make it harder" },
  { rule: "springs-out-of-range", items: ["bear-plank-press"], mistake: "no spring at all, so no load either" },
  {
    rule: "transition-too-short",
    items: ["lat-pull-kneeling"],
    mistake: "six seconds to turn, kneel and take the handles",
  },
  { rule: "caution-without-easier", items: ["push-up-slow"], mistake: "wrists loaded and no easier way" },
  { rule: "caution-without-safety-line", items: ["lat-pull-kneeling"], mistake: "arms overhead and no word of care" },
  { rule: "caution-without-easier", items: ["chest-press-kneeling"], mistake: "on the knees and no easier way" },
  { rule: "missing-cue", items: ["bear-plank-hover"], mistake: "a hold with no word about breathing" },
  { rule: "missing-cue", items: ["chest-press-kneeling"], mistake: "no start, breath or form line" },
  { rule: "too-short-or-long", items: ["row-kneeling"], mistake: "fifteen seconds of rowing" },
  { rule: "no-room-for-heads-up", items: ["row-kneeling"], mistake: "over before the next move can be called" },
  { rule: "springs-not-there", items: ["curl-kneeling"], mistake: "six light springs where the machine has four" },
  { rule: "springs-not-there", items: ["leg-press-supine"], mistake: "two strong springs where the machine has one" },
  {
    rule: "change-not-told",
    items: ["trunk-rotation-kneeling-right"],
    mistake: "a quarter turn that the set-up does not say",
  },
  {
    rule: "let-go-before-carriage-home",
    items: ["trunk-rotation-kneeling-right"],
    mistake: "a handle let go while the carriage may be out",
  },
  {
    rule: "uneven-sides",
    items: ["trunk-rotation-kneeling-right", "trunk-rotation-kneeling-left"],
    mistake: "left shorter",
  },
  { rule: "missing-side", items: ["row-single-right"], mistake: "a row for the right arm only" },
  { rule: "partial-rep", items: ["curl-up-press"], mistake: "sixty-two seconds of five-second curls" },
  { rule: "setup-talk-too-long", items: ["forearm-pike"], mistake: "four seconds are no time to say it either" },
  { rule: "setup-talk-too-long", items: ["lat-pull-kneeling"], mistake: "nor are six" },
  { rule: "talk-too-long", items: ["row-kneeling"], mistake: "a long thought for fifteen seconds" },
  { rule: "silent-stretch", items: ["chest-press-kneeling"], mistake: "a minute without a word" },
  { rule: "long-hold-without-breath", items: ["bear-plank-hover"], mistake: "a minute held, breath forgotten" },
  { rule: "says-otherwise", items: ["triceps-press-forward"], mistake: "the last move of the class, and eight follow" },
  {
    rule: "typed-number-that-could-be-live",
    items: ["triceps-press-forward"],
    mistake: "twenty seconds left, typed by hand",
  },
  { rule: "hand-or-foot-not-free", items: ["forearm-plank-hold"], mistake: "feet still in the straps for a plank" },
  { rule: "change-not-told", items: ["forearm-plank-hold"], mistake: "no word about coming out of the straps" },
  { rule: "start-place-not-told", items: ["forearm-plank-hold"], mistake: "four centimetres further out, unsaid" },
];

export const FIRST_TRY: Plan = composePlan(
  {
    title: "Arms and chest, first try",
    lengthSeconds: 1200,
    theme: { name: "Arms and chest", shares: { chest: 0.25, biceps: 0.1 } },
    level: "open",
    openingSeconds: 60,
    closingSeconds: 0,
    people: 10,
    notes: "Not sure about the springs in the pike. Is the middle one too heavy?",
  },
  ROOMS[0]?.equipment ?? { name: "Room", carriageTravelMm: 900, springs: [] },
  ROWS,
);
