import { itemName } from "#lib/plan/format.ts";
import type { MoveItem, ScriptLine } from "#lib/plan/schema.ts";
import { claimsOf } from "#lib/talk/claims/claims.ts";
import { ITEM_CLAIMS } from "#lib/talk/claims/of-item.ts";
import type { Claim } from "#lib/talk/claims/types.ts";
import { contradiction } from "../claimed/contradicts.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { bothSides, exampleMove, examplePlan, fullScript } from "../define/example-plan.ts";
import { LATE_TITLES } from "../define/late-titles.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import { type Found, Moment, type RuleExamples } from "../define/types.ts";
import { actsOtherwise } from "../select/acts-otherwise.ts";
import { saidLines } from "../select/said-lines.ts";

const saying = (text: string, kind: ScriptLine["kind"] = "form"): Partial<MoveItem> => ({
  script: [...fullScript, { kind, text }],
});
const three = (text: string, kind?: ScriptLine["kind"]) =>
  examplePlan([
    exampleMove("a", saying(text, kind)),
    exampleMove("b", { move: "press", springs: { heavy: 1 } }),
    exampleMove("c", { move: "plank" }),
  ]);

const turning = (text: string) =>
  examplePlan([exampleMove("a"), exampleMove("b", { facing: "back", script: [{ kind: "setup", text }] })]);

export const saysOtherwise = defineRule({
  id: "says-otherwise",
  reads: "claims",
  claims: ITEM_CLAIMS,
  title: LATE_TITLES["says-otherwise"],
  why: "People pace themselves by what they hear: told that it is the last one, they give all they have left.",
  fix: "Say what the plan says, or put in a live field.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    toleranceSeconds: numberLimit({
      from: 0,
      to: 120,
      usual: 5,
      says: "How far a stated time may be from the time left",
    }),
    toleranceShare: numberLimit({
      from: 0,
      to: 1,
      usual: 0.15,
      says: "The same as a share of the stated time, where that is more",
    }),
  }),
  messages: {
    otherwise: "{itemName}, at {at}: the script says “{said}”, but {really}. Change the line, or the plan.",
    setup: "{itemName}: the set-up says “{said}”, but {really}. Change the line, or the plan.",
    unsure: "{itemName}: the set-up says “{said}”, and {really}. A live field says that by itself.",
    unplaced: "{itemName}: the script has “{said}”, but {really}. Change the line, or the plan.",
  },
  check(ctx, limits) {
    const { plan } = ctx;
    return saidLines(ctx, (line) => claimsOf(line).length > 0).flatMap((said) =>
      firstOfEach(claimsOf(said.line)).flatMap((claim, n): Found<"otherwise" | "unplaced">[] => {
        const really = isActOfSetup(said.line, claim) ? undefined : contradiction(ctx, said, claim, limits);
        if (really === undefined) return [];
        const values = {
          itemName: short(itemName(plan, said.placed.item)),
          said: short(claim.said),
          really: short(really),
        };
        const found = { items: [said.placed.item.id], about: `${said.index}-${n}`, unsure: isUnsure(claim) };
        return said.cue
          ? [
              {
                ...found,
                message: "otherwise" as const,
                values: { ...values, at: new Moment(said.cue.from), kind: claim.says },
              },
            ]
          : [{ ...found, message: "unplaced" as const, values: { ...values, kind: claim.says } }];
      }),
    );
  },
  inChange: ({ plan, steps }) =>
    steps.flatMap((step) =>
      actsOtherwise(plan, step).map(({ heard, message, really }): Found<"setup" | "unsure"> => {
        const values = {
          itemName: short(itemName(plan, step.item)),
          said: short(heard.said),
          really,
          kind: heard.act.act,
        };
        const about = `${heard.line}-${heard.from}-${heard.act.act}`;
        const found = { message, items: [step.item.id], values, about };
        return message === "unsure" ? { ...found, level: "info" } : found;
      }),
    ),
});

/** Springs and side in a set-up line are read as acts. */
const isActOfSetup = ({ kind }: ScriptLine, claim: Claim): boolean =>
  kind === "setup" && (claim.says === "springs" || (claim.says === "side" && !claim.then));

export const saysOtherwiseExamples = (): RuleExamples => ({ pass: passes(), fail: failures() });

const passes = (): RuleExamples["pass"] => [
  { say: "what the crew is told is not checked", plan: three("Two springs", "crew") },
  { say: "a figure of speech", plan: three("Last but not least, breathe. One more time. Give me a second.") },
  { say: "a live field, which is always right", plan: three("{seconds-left} seconds left, {next-move} is next.") },
  { say: "the next move by a part of its name", plan: three("Press is next.") },
  {
    say: "the other side after the first",
    plan: examplePlan(bothSides("a", {}, saying("Other side now.", "start"))),
  },
];

const failures = (): RuleExamples["fail"] => [
  {
    say: "a time that does not match what is left",
    plan: three("Two minutes fifteen. 90 seconds left."),
    expect: ["otherwise"],
  },
  {
    say: "a last move that is not the last",
    plan: three("This is the last move of the class."),
    expect: ["otherwise"],
  },
  {
    say: "the wrong side",
    plan: examplePlan(bothSides("a", saying("Right side now.", "start"))),
    expect: ["otherwise"],
  },
  { say: "another move named as the next", plan: three("Plank is next."), expect: ["otherwise"] },
  { say: "springs that are not planned", plan: three("Two springs on.", "setup"), expect: ["setup"] },
  { say: "the other way to face", plan: turning("Face the front."), expect: ["setup"] },
  { say: "no turn, where people turn", plan: turning("Stay as you are."), expect: ["setup"] },
  {
    say: "a part of the springs, which may be all that is meant",
    plan: examplePlan([
      exampleMove("a", { springs: { heavy: 1 } }),
      exampleMove("b", { ...saying("One light.", "setup"), springs: { heavy: 1, light: 1 } }),
    ]),
    expect: ["unsure"],
  },
  { say: "rounds that are not planned", plan: three("Three rounds."), expect: ["otherwise"] },
  {
    say: "a line that there is no time for, and that would be wrong",
    plan: examplePlan([
      exampleMove("a"),
      exampleMove("b", { ...saying("This is the first move of the class. ".repeat(12)), seconds: 20 }),
    ]),
    expect: ["unplaced"],
  },
];

/** A bare count of springs is judged only where a spring has that name, which makes it sure. */
const isUnsure = (claim: Claim): boolean => !claim.sure && claim.says !== "springs";

/** The same thing said twice in one line counts as one mistake. */
const firstOfEach = (claims: readonly Claim[]): Claim[] =>
  claims.filter(
    (claim, n) => claims.findIndex((other) => other.says === claim.says && other.said === claim.said) === n,
  );

const LONGEST = 60;
const short = (text: string): string => (text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text);
