/** The labelled talk of `tests/fixtures/told-acts`: its shapes, and a class in which each sentence is said when it should be. */
import { headSeconds } from "#lib/plan/lookup.ts";
import { type Move, type MoveItem, PLAN_FORMAT, type Plan, type PlanItem, type ScriptLine } from "#lib/plan/schema.ts";
import freshTalkFile from "#tests/fixtures/told-acts/fresh-talk.json" with { type: "json" };
import moreTalkFile from "#tests/fixtures/told-acts/more-talk.json" with { type: "json" };
import talkFile from "#tests/fixtures/told-acts/talk.json" with { type: "json" };
import { planOfChange } from "./told-acts.ts";

/** Where in which class a sentence is said. Seconds; `leftSeconds` from the start of the item to the end of the class. */
export interface TalkContext {
  readonly name: string;
  readonly seconds: number;
  readonly tempo: Move["tempo"];
  readonly exhaleOn?: "out" | "back";
  readonly side: MoveItem["side"];
  readonly springs: Readonly<Record<string, number>>;
  /** Name of the next move; null for the last of the class. */
  readonly next: string | null;
  readonly nextSide?: MoveItem["side"];
  readonly before?: { readonly name: string; readonly side: MoveItem["side"] };
  readonly leftSeconds: number;
  readonly first?: boolean;
  readonly round?: { readonly nth: number; readonly of: number; readonly block: readonly string[] };
}
export interface TalkCase {
  readonly id: string;
  readonly context: string;
  /** Seconds after the item's start. */
  readonly at: number;
  readonly kind: ScriptLine["kind"];
  readonly text: string;
  readonly claim: string;
  /** Whether the sentence claims something that the plan contradicts. */
  readonly contradicts: boolean;
}

const FILE = talkFile as unknown as {
  readonly contexts: Readonly<Record<string, TalkContext>>;
  readonly cases: readonly TalkCase[];
};
export const TALK = [...FILE.cases, ...([...moreTalkFile, ...freshTalkFile] as unknown as readonly TalkCase[])];
export const TALK_CONTEXTS = FILE.contexts;

export const SAID_IN = "said-in";
const OTHERS = ["Standing reach", "Side bend", "Calf raise", "Arm circle", "Hip circle", "Toe tap", "Heel slide"];
const CLOSING_SECONDS = 60;
const NEXT_SECONDS = 45;
const USUAL_SECONDS = 60;

interface Wish {
  readonly name: string;
  readonly seconds: number;
  readonly side?: MoveItem["side"];
}

/** Collects items and the moves they need. Everything is done in one set-up, so that no change takes time. */
class ClassBuilder {
  readonly items: PlanItem[] = [];
  readonly moves: Record<string, Move> = {};
  private readonly context: TalkContext;
  private others = 0;

  constructor(context: TalkContext) {
    this.context = context;
  }

  heading(title: string): void {
    this.items.push({ id: `h${this.items.length}`, kind: "heading", title });
  }

  move({ name, seconds, side = "both" }: Wish, own: Partial<MoveItem> = {}): void {
    const { tempo, exhaleOn, springs } = this.context;
    const move = name.toLowerCase().replaceAll(" ", "-");
    this.moves[move] ??= {
      ...{ name, station: "carriage", position: "kneeling", facing: "front", hands: "free", feet: "carriage" },
      ...{
        sides: side === "both" ? "both" : "each",
        pattern: "plank",
        muscles: { abdominals: 0.5 },
        resistance: "springs",
      },
      ...{ tempo, ...(exhaleOn ? { exhaleOn } : {}) },
    } as Move;
    this.items.push({
      ...{
        id: `i${this.items.length}`,
        kind: "move",
        move,
        side,
        seconds,
        springs: { ...springs },
        transitionSeconds: 0,
      },
      ...own,
    });
  }

  /** Moves that no sentence speaks of. */
  fill(seconds: number): void {
    for (let left = seconds; left > 0; left -= USUAL_SECONDS) {
      const name = OTHERS[this.others++ % OTHERS.length] ?? "";
      this.move({ name, seconds: Math.min(left, USUAL_SECONDS) });
    }
  }
}

function addBefore(builder: ClassBuilder, context: TalkContext): void {
  if (!context.first) builder.fill(4 * USUAL_SECONDS);
  if (context.before) builder.move({ ...context.before, seconds: context.seconds });
  if (!context.round) return;
  const { nth, block } = context.round;
  for (let round = 1; round <= nth; round++) {
    builder.heading(`Round ${round}`);
    const names = round < nth ? block : block.slice(0, block.indexOf(context.name));
    for (const name of names) builder.move({ name, seconds: context.seconds });
  }
}

/** Returns the seconds of work that it adds. */
function addAfter(builder: ClassBuilder, context: TalkContext): number {
  if (context.next === null) return 0;
  const seconds =
    context.next === "Plank hold" ? context.leftSeconds - context.seconds - CLOSING_SECONDS : NEXT_SECONDS;
  const rounds = context.round;
  const rest = rounds ? rounds.block.slice(rounds.block.indexOf(context.name) + 1) : [];
  if (rest.length === 0) builder.move({ name: context.next, seconds, side: context.nextSide });
  let added = rest.length === 0 ? seconds : 0;
  const again = (names: readonly string[]) => {
    for (const name of names) builder.move({ name, seconds: context.seconds });
    added += names.length * context.seconds;
  };
  again(rest);
  for (let round = (rounds?.nth ?? 0) + 1; rounds && round <= rounds.of; round++) {
    builder.heading(`Round ${round}`);
    again(rounds.block);
  }
  return added;
}

/** A class of the context's length in which the item has this one line, or none. */
export function planOfTalk(context: TalkContext, said?: Pick<TalkCase, "at" | "kind" | "text">): Plan {
  const builder = new ClassBuilder(context);
  addBefore(builder, context);
  // A format that does not know `at` yet would still place the line by its kind.
  const line = said && ({ kind: said.kind, text: said.text, at: { afterSeconds: said.at } } as ScriptLine);
  const { name, seconds, side } = context;
  builder.move({ name, seconds, side }, { id: SAID_IN, script: line ? [line] : [] });
  const added = addAfter(builder, context);
  builder.heading("Finish");
  builder.fill(context.leftSeconds - seconds - added - CLOSING_SECONDS);
  const { items, moves } = builder;
  const plan: Plan = {
    ...{ format: PLAN_FORMAT, title: context.name, lengthSeconds: 60, headsUpSeconds: 0, countInSeconds: 0 },
    ...{ closingSeconds: CLOSING_SECONDS, equipment: planOfChange("c01").equipment, moves, items },
  };
  const worked = items.reduce((sum, item) => sum + (item.kind === "heading" ? 0 : item.seconds), 0);
  return { ...plan, lengthSeconds: headSeconds(plan, "openingSeconds") + worked + CLOSING_SECONDS };
}
