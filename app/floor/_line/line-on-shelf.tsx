"use client";
import { hourMinute } from "../_parts/time-words.ts";
/** On the shelf: who leads a class in this room now, following it, and what this screen is for. */
import type { Settings } from "../_parts/use-settings.ts";
import styles from "./line.module.css";
import { ScreenChoice } from "./screen-choice.tsx";
import { leadsElsewhere } from "./use-lead.ts";
import type { FloorLine } from "./use-line.ts";

interface Props {
  readonly line: FloorLine;
  readonly settings: Settings;
  onFollow(): void;
}

export function LineOnShelf({ line, settings, onFollow }: Props) {
  return (
    <section className={styles.onShelf} aria-label="Several screens">
      <p role="status">{ledWords(line)}</p>
      <button type="button" className="button" onClick={onFollow}>
        Follow the class of this room
      </button>
      <ScreenChoice settings={settings} />
    </section>
  );
}

function ledWords({ state }: FloorLine): string {
  if (state.contact === "refused") return state.sentence ?? "";
  if (state.noLive !== null) return state.noLive;
  if (state.contact !== "on" || !state.line) return "Other screens of this room cannot be reached now.";
  if (!leadsElsewhere(state)) return "Nobody leads a class here now.";
  const { leader, told } = state.line;
  return `${leader?.label} leads ${told ? `“${told.title}”` : "a class"} here since ${hourMinute(leader?.sinceWall ?? 0)}.`;
}
