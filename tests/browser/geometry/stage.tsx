/**
 * A test page for the floor's own screens: its components at a moment of a class, with the clock stopped. Nothing is
 * waited for, so every step of every class can be checked on every screen.
 */
import "@fontsource/atkinson-hyperlegible-next/400.css";
import "@fontsource/atkinson-hyperlegible-next/700.css";
import "@fontsource/atkinson-hyperlegible-mono/400.css";
import "@fontsource/atkinson-hyperlegible-mono/700.css";
import "../../../app/look.css";
import "../../../app/controls.css";
import "../../../app/shared.css";
import "../../../app/floor/floor.css";
import type { ReactNode } from "react";
import { flushSync } from "react-dom";
import { createRoot } from "react-dom/client";
import { floorView } from "#lib/floor/now.ts";
import { floorSteps } from "#lib/floor/steps.ts";
import type { FloorView } from "#lib/floor/view.ts";
import { headSeconds } from "#lib/plan/lookup.ts";
import { CARDS, type StagedClass } from "./cards.ts";
import { angleFaults, changeFaults } from "./change-faults.ts";
import { LineProbe } from "./followers.tsx";
import { LeadProbe } from "./leaders.tsx";
import { faultsOf } from "./measure.ts";
import { type Moment, momentsOf } from "./moments.ts";

/**
 * `sheet`: the coach's screen of a class that is late, with the ways to end on time open. `withdrawn`: of a class whose
 * edition was withdrawn meanwhile, which asks what to do.
 */
export type Screen = "lead" | "sheet" | "withdrawn" | "demonstrator" | "crew" | "wall";
/** Of the class, or of the screen that follows it. */
export type State = "held" | "alone";
interface Look {
  readonly screen: Screen;
  /** Which of the demo's classes. */
  readonly card: number;
  readonly moment: Moment;
  readonly state?: State | undefined;
}
interface Swept {
  /** How many screens were checked. */
  readonly looked: number;
  /** One for each moment with faults: where, and the first of them. */
  readonly faults: readonly string[];
  /** Steps, of all classes, in which something is wrong. */
  readonly steps: number;
}

const main = document.querySelector("main");
if (!main) throw new Error("no stage");
const root = createRoot(main);
let shown = 0;
const LATE_S = 75;

/** Draws one screen at one moment before it returns. */
function show({ screen, card, moment, state }: Look): void {
  const set = CARDS[card];
  if (!set) throw new Error(`no class ${card}`);
  shown++;
  const probe: ReactNode =
    screen === "lead" || screen === "sheet" || screen === "withdrawn" ? (
      <LeadProbe
        key={shown}
        {...set}
        at={moment.at}
        lateS={screen === "sheet" ? LATE_S : 0}
        held={state === "held"}
        withdrawn={screen === "withdrawn"}
      />
    ) : (
      <LineProbe
        key={`${screen} ${card}`}
        {...set}
        screen={screen}
        at={moment.at}
        n={shown}
        held={state === "held"}
        alone={state === "alone"}
      />
    );
  flushSync(() => root.render(probe));
  if (screen === "sheet") flushSync(() => endOnTime()?.click());
  // Once more, so that what effects set is drawn and React sees that rendering has settled.
  flushSync(() => root.render(probe));
}

const endOnTime = () => [...document.querySelectorAll("button")].find((button) => button.textContent === "end on time");

/** With a sheet open, the next item and the targets must still be there; the words say where. */
function missing(screen: Screen, view: FloorView): string[] {
  if (screen === "withdrawn") return missingQuestion(view);
  if (screen !== "sheet") return [];
  const parts = [
    '[role="dialog"]',
    '[aria-label="Next"], [aria-label="Change now"]',
    '[aria-label="The class"] button',
  ];
  return parts.filter((part) => !document.querySelector(part)?.checkVisibility()).map((part) => `not there: ${part}`);
}

/** It is asked with both its answers beside work, and never where a change is announced or made. */
function missingQuestion({ phase, headsUp }: FloorView): string[] {
  const question = document.querySelector('[role="alertdialog"]');
  const answers = [...(question?.querySelectorAll("button") ?? [])].filter((button) => button.checkVisibility());
  if (phase === "change" || headsUp) return question ? ["the question lies beside a change"] : [];
  const targets = document.querySelector('[aria-label="The class"] button')?.checkVisibility();
  return [
    ...(answers.length === 2 ? [] : [`not there: ${2 - answers.length} answers`]),
    ...(targets ? [] : ["not there: the targets"]),
  ];
}

interface Sweep {
  readonly screen: Screen;
  /** Only the class of this number. */
  readonly only?: number | undefined;
  readonly state?: State | undefined;
  /** Only changes, which must be read from so many metres. */
  readonly changesFromM?: number | undefined;
  /** Of every step one moment, begun at this number; else all of them. */
  readonly oneEach?: number | undefined;
}

/** What is wrong with the screen that was drawn at this moment. */
function faultsAt({ screen, card, moment, state }: Look, fromM: number | undefined): string[] {
  const root = main as HTMLElement;
  const view = floorView((CARDS[card] as StagedClass).envelope.card, [{ type: "start", at: 0 }], moment.at * 1000);
  return [
    ...missing(screen, view),
    ...faultsOf(root),
    ...(state ? [] : changeFaults(root, view)),
    ...(fromM === undefined ? [] : angleFaults(root, fromM)),
  ];
}

function sweep({ screen, only, state, changesFromM, oneEach }: Sweep): Swept {
  const faults: string[] = [];
  const steps = new Set<string>();
  let looked = 0;
  let first: Look | null = null;
  for (const [card, { envelope }] of CARDS.entries()) {
    if (only !== undefined && card !== only) continue;
    for (const moment of momentsOf(envelope.card, screen === "lead" || screen === "crew", oneEach)) {
      const look: Look = { screen, card, moment, state };
      if (changesFromM !== undefined && moment.phase !== "change") continue;
      looked++;
      show(look);
      const found = faultsAt(look, changesFromM);
      if (found.length === 0) continue;
      first ??= look;
      steps.add(`${card} ${moment.step}`);
      faults.push(`${envelope.card.edition.title}, ${moment.at} s: ${found.slice(0, 3).join("; ")}`);
    }
  }
  if (first) show(first);
  return { looked, faults, steps: steps.size };
}

/** For pictures: work in its middle, the call before a change, the change. The first of each that comes after the first minutes. */
function named(card: number): { readonly name: "work" | "heads-up" | "change"; readonly moment: Moment }[] {
  const { envelope } = CARDS[card] as StagedClass;
  const steps = floorSteps(envelope.card);
  const calls = headSeconds(envelope.card.plan, "headsUpSeconds");
  const change = steps.findIndex(({ phase, from, to }) => phase === "change" && from > 300 && to - from > 8);
  const work = change - 1;
  const { from, to } = steps[work] ?? { from: 0, to: 0 };
  return [
    { name: "work", moment: { step: work, phase: "work", at: (from + to) / 2 } },
    { name: "heads-up", moment: { step: work, phase: "work", at: Math.max(from, to - calls + 2) } },
    { name: "change", moment: { step: change, phase: "change", at: (steps[change]?.from ?? 0) + 2 } },
  ];
}

interface Stage {
  readonly classes: number;
  moments(card: number): ReturnType<typeof named>;
  show(look: Look): void;
  sweep(asked: Sweep): Swept;
}
declare global {
  interface Window {
    stage: Stage;
  }
}
window.stage = { classes: CARDS.length, moments: named, show, sweep };
