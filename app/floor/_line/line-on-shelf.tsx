"use client";
/** On the shelf: who leads a class in this room now, a button to follow it, and what this screen is for. */
import { useFormats } from "#app/_parts/formats.tsx";
import type { Settings } from "../_parts/use-settings.ts";
import styles from "./line.module.css";
import { ScreenChoice } from "./screen-choice.tsx";
import { FOLLOW, shelfLineWords } from "./screens-words.ts";
import type { FloorLine } from "./use-line.ts";

interface Props {
  readonly line: FloorLine;
  readonly settings: Settings;
  onFollow(): void;
}

export function LineOnShelf({ line, settings, onFollow }: Props) {
  return (
    <section className={styles.onShelf} aria-label="Several screens">
      <p role="status">{shelfLineWords(line, useFormats())}</p>
      <button type="button" className="button" onClick={onFollow}>
        {FOLLOW}
      </button>
      <ScreenChoice settings={settings} />
    </section>
  );
}
