"use client";
/** Over the lanes: how wide a minute is, the print, and in words what the pointer or the keyboard is on. */
import type { ReactNode } from "react";
import { CommandButton } from "#app/_parts/commands/command-button.tsx";
import { PLAN_COMMANDS } from "#app/_session/plan-commands.ts";
import type { ZoomRun } from "./use-walk.ts";
import type { ZoomState } from "./use-zoom.ts";
import styles from "./whole-class.module.css";

interface LanesToolsProps {
  readonly zoom: ZoomState;
  readonly run: ZoomRun;
  readonly children: ReactNode;
}

const { narrower, wider, "all-in-view": allInView } = PLAN_COMMANDS.commands;

export function LanesTools({ zoom, run, children }: LanesToolsProps) {
  const whole = zoom.zoom === "fit";
  return (
    <div className={`light ${styles.tools}`}>
      <fieldset className="button-group">
        <legend className="visually-hidden">Width of the class</legend>
        <CommandButton command={narrower} place="lanes" disabled={whole} onRun={run.narrower} />
        <CommandButton command={wider} place="lanes" disabled={zoom.atMost} onRun={run.wider} />
        <CommandButton command={allInView} place="lanes" aria-pressed={whole} onRun={run["all-in-view"]} />
      </fieldset>
      <button type="button" className="button" onClick={() => print()}>
        Print
      </button>
      {children}
    </div>
  );
}
