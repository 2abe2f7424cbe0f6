/**
 * A stage for the floor's own screens: the components themselves, at a moment of a class, with the clock stopped. Nothing is
 * waited for, so that every step of every class can be looked at on every screen.
 */
import "@fontsource/atkinson-hyperlegible-next/400.css";
import "@fontsource/atkinson-hyperlegible-next/700.css";
import "@fontsource/atkinson-hyperlegible-mono/400.css";
import "@fontsource/atkinson-hyperlegible-mono/700.css";
import "../../../app/look.css";
import "../../../app/floor/floor.css";
import type { ReactNode } from "react";
import { flushSync } from "react-dom";
import { createRoot } from "react-dom/client";
import { CARDS } from "./cards.ts";
import { LineProbe } from "./followers.tsx";
import { LeadProbe } from "./leaders.tsx";
import { faultsOf } from "./measure.ts";
import { type Moment, momentsOf } from "./moments.ts";

export type Screen = "lead" | "demonstrator" | "crew" | "wall";
export interface Look {
  readonly screen: Screen;
  /** Which of the demo's classes. */
  readonly card: number;
  readonly moment: Moment;
}
export interface Swept {
  /** How many screens were looked at. */
  readonly looked: number;
  /** One for each moment that has any: where, and its first faults. */
  readonly faults: readonly string[];
  /** Steps, of all classes, in which something is wrong. */
  readonly steps: number;
}

const main = document.querySelector("main");
if (!main) throw new Error("no stage");
const root = createRoot(main);
let shown = 0;

/** One screen at one moment, drawn before this returns. */
function show({ screen, card, moment }: Look): void {
  const set = CARDS[card];
  if (!set) throw new Error(`no class ${card}`);
  shown++;
  const probe: ReactNode =
    screen === "lead" ? (
      <LeadProbe key={shown} {...set} at={moment.at} />
    ) : (
      <LineProbe key={`${screen} ${card}`} {...set} screen={screen} at={moment.at} n={shown} />
    );
  flushSync(() => root.render(probe));
  // Once more: what effects set is drawn, and React sees that the drawing came to rest.
  flushSync(() => root.render(probe));
}

function sweep(screen: Screen): Swept {
  const faults: string[] = [];
  const steps = new Set<string>();
  let looked = 0;
  for (const [card, { envelope }] of CARDS.entries()) {
    for (const moment of momentsOf(envelope.card, screen === "lead" || screen === "crew")) {
      looked++;
      show({ screen, card, moment });
      const found = faultsOf(main as HTMLElement);
      if (found.length === 0) continue;
      steps.add(`${card} ${moment.step}`);
      faults.push(`${envelope.card.edition.title}, ${moment.at} s: ${found.slice(0, 3).join("; ")}`);
    }
  }
  return { looked, faults, steps: steps.size };
}

export interface Stage {
  readonly classes: number;
  show(look: Look): void;
  sweep(screen: Screen): Swept;
}
declare global {
  interface Window {
    stage: Stage;
  }
}
window.stage = { classes: CARDS.length, show, sweep };
