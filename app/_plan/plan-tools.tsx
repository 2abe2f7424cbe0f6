"use client";
/** Over every view of the plan: which view, what can be added, the class's own panel, how tall a minute is, legend, keys. */
import { CommandButton } from "#app/_parts/commands/command-button.tsx";
import { COMMON_COMMANDS } from "#app/_parts/commands/common.ts";
import { openKeyHelp } from "#app/_parts/key-help.tsx";
import type { RailScale } from "#app/_rail/use-scale.ts";
import { PlanButton } from "#app/_session/page-acts.tsx";
import { TOOLS } from "#app/_session/plan-commands.ts";
import styles from "./plan-tools.module.css";
import type { PlanView } from "./use-plan-view.ts";

interface PlanToolsProps {
  readonly view: PlanView;
  readonly scale: RailScale;
  /** The panel shows the class as a whole. */
  readonly classOpen: boolean;
}

const PLACES = { rail: "rail", "whole-class": "lanes", "read-through": "read" } as const;
const VIEWS = ["rail", "whole-class", "read-through"] as const;

export function PlanTools({ view, scale, classOpen }: PlanToolsProps) {
  const place = PLACES[view];
  return (
    <div className={styles.tools}>
      <fieldset className="button-group">
        <legend className="visually-hidden">View of the plan</legend>
        {VIEWS.map((one) => (
          <PlanButton key={one} command={one} place={place} pressed={one === view} />
        ))}
      </fieldset>
      {TOOLS.map((command) => (
        <PlanButton key={command} command={command} place={place} />
      ))}
      <PlanButton command="show-class" pressed={classOpen} />
      <span className={styles.right}>
        {view === "rail" && <Height scale={scale} />}
        <PlanButton command="legend" className="button-quiet" />
        <CommandButton
          command={COMMON_COMMANDS.commands["list-keys"]}
          place="page"
          className={`button-quiet ${styles.keys}`}
          onRun={openKeyHelp}
        />
      </span>
    </div>
  );
}

function Height({ scale }: { readonly scale: RailScale }) {
  return (
    <fieldset className="button-group">
      <legend className="visually-hidden">Height of the rail</legend>
      <button type="button" className="button" disabled={scale.isLowest} onClick={() => scale.step(-1)}>
        Shorter
      </button>
      <button type="button" className="button" disabled={scale.isHighest} onClick={() => scale.step(1)}>
        Taller
      </button>
    </fieldset>
  );
}
