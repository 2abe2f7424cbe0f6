/**
 * A class to take apart on the first day: twelve minutes on the example room, made of the starting library. It passes every
 * rule there, so that each change shows what it does. The words are ours.
 */
import type { Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";

/** One line of each kind in the order in which they are said; null where there is none. */
const say = (setup: string, safety: string | null, rest: readonly [string, string, string, string]): ScriptLine[] => {
  const [start, breath, form, easier] = rest;
  return [
    { kind: "setup", text: setup },
    ...(safety === null ? [] : [{ kind: "safety" as const, text: safety }]),
    { kind: "start", text: start },
    { kind: "breath", text: breath },
    { kind: "form", text: form },
    { kind: "easier", text: easier },
  ];
};

const ITEMS: readonly PlanItem[] = [
  { id: "block-1", kind: "heading", title: "Pulls, kneeling, facing back" },
  {
    id: "lat-pull-kneeling",
    kind: "move",
    move: "lat-pull-kneeling",
    side: "both",
    seconds: 60,
    springs: { light: 1, middle: 1 },
    transitionSeconds: 20,
    script: say(
      "Carriage home, now on {springs}, onto the carriage, face the back, feet on the carriage, take both handles. Kneel tall, arms up and forward.",
      "Sore shoulders start at eye height; pad sore knees.",
      [
        "Pull the elbows down.",
        "Out as you pull, in as you reach.",
        "Shoulders low before the elbows bend.",
        "Hands start at eye height.",
      ],
    ),
  },
  {
    id: "row-kneeling",
    kind: "move",
    move: "row-kneeling",
    side: "both",
    seconds: 60,
    springs: { light: 1, middle: 1 },
    transitionSeconds: 6,
    script: say("Kneel tall, arms long in front.", "Pad sore knees, or sit on the heels.", [
      "Row the elbows back.",
      "Out as you row, in as you reach.",
      "Blades together, chest still.",
      "Sit back on the heels.",
    ]),
  },
  { id: "block-4", kind: "heading", title: "Presses, kneeling, facing front" },
  {
    id: "chest-press-kneeling",
    kind: "move",
    move: "chest-press-kneeling",
    side: "both",
    seconds: 60,
    springs: { middle: 1 },
    transitionSeconds: 12,
    script: say(
      "Carriage home, now on {springs}, face the front. Kneel tall, hands at the chest.",
      "Pad sore knees, or sit on the heels.",
      [
        "Press forward.",
        "Out as you press, in as you return.",
        "Wrists straight, ribs over hips.",
        "Sit back on the heels.",
      ],
    ),
  },
  {
    id: "overhead-press-kneeling",
    kind: "move",
    move: "overhead-press-kneeling",
    side: "both",
    seconds: 60,
    springs: { middle: 1 },
    transitionSeconds: 6,
    script: say("Kneel tall, hands by the shoulders.", "Sore shoulders press at eye height; pad sore knees.", [
      "Press up and forward.",
      "Out as you press, in as you lower.",
      "Ribs down, shoulders away from ears.",
      "Eye height and no higher.",
    ]),
  },
  {
    id: "triceps-press-forward",
    kind: "move",
    move: "triceps-press-forward",
    side: "both",
    seconds: 60,
    springs: { middle: 1 },
    transitionSeconds: 6,
    script: say("Kneel tall, elbows bent at chest height.", "Pad sore knees, or sit on the heels.", [
      "Straighten the elbows.",
      "Out as you straighten, in as you bend.",
      "Upper arms still, only elbows move.",
      "Kneel closer to the back.",
    ]),
  },
  { id: "block-8", kind: "heading", title: "Sides" },
  {
    id: "row-single-right",
    kind: "move",
    move: "row-single",
    side: "right",
    seconds: 50,
    springs: { light: 1 },
    transitionSeconds: 20,
    script: say(
      "Carriage home, put one handle down, now on {springs}, face the back, {side} side. Kneel tall, {side} arm long, free hand on the hip.",
      "Pad sore knees, or sit on the heels.",
      ["Row the elbow back.", "Out as you row, in as you reach.", "Hips and shoulders stay square.", "Pull half-way."],
    ),
  },
  {
    id: "row-single-left",
    kind: "move",
    move: "row-single",
    side: "left",
    seconds: 50,
    springs: { light: 1 },
    transitionSeconds: 8,
    script: say(
      "Put the handle down, {side} side, handle in the other hand. Kneel tall, {side} arm long, free hand on the hip.",
      "Pad sore knees, or sit on the heels.",
      ["Row the elbow back.", "Out as you row, in as you reach.", "Hips and shoulders stay square.", "Pull half-way."],
    ),
  },
  { id: "block-11", kind: "heading", title: "Finish" },
  {
    id: "curl-up-press",
    kind: "move",
    move: "curl-up-press",
    side: "both",
    seconds: 60,
    springs: { light: 2 },
    transitionSeconds: 22,
    script: say(
      "Carriage home, now on {springs}, face the front, take the other handle too. Lie down, arms to the ceiling, knees over hips.",
      "If bending forward or lying flat is not for you, head down or sit up.",
      [
        "Curl and press down.",
        "Out as you curl, in as you lower.",
        "Chin soft, lift from the ribs.",
        "Head stays down, arms only.",
      ],
    ),
  },
];

/** All of a plan but its room and its moves, which are the studio's. */
export const EXAMPLE_CLASS: Omit<Plan, "format" | "equipment" | "moves"> = {
  title: "Example: twelve minutes to take apart",
  lengthSeconds: 720,
  theme: { name: "Pull, press and trunk" },
  level: "open",
  openingSeconds: 60,
  closingSeconds: 100,
  headsUpSeconds: 15,
  countInSeconds: 3,
  gridSeconds: 5,
  people: 8,
  notes:
    "An example. Change a time, a spring or a side and look what the clock and the findings say; undo brings it back. Delete it when you have seen enough.",
  items: [...ITEMS],
};
