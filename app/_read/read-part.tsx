"use client";
/** One item's part of the read-through: its name on the line of time, and under it the lines, each a way to its script. */
import { memo, type RefObject } from "react";
import type { ReadLine, ReadPart } from "#lib/cues/read-through.ts";
import { isCueKind, KIND_WORDS } from "#lib/plan/cue-words.ts";
import { clockTime, plainNumber } from "#lib/plan/format.ts";
import styles from "./read.module.css";

interface PartProps {
  readonly part: ReadPart;
  /** With its side. */
  readonly name: string;
  /** "one light"; "" for what has none. */
  readonly springs: string;
  readonly selected: boolean;
  /** Key of the line that takes the keyboard, where it is one of this part's. */
  readonly tabbable: string | null;
  readonly go: RefObject<(item: string, line: number | null) => void>;
}

export const Part = memo(function Part({ part, name, springs, selected, tabbable, go }: PartProps) {
  const { item, again, lines } = part;
  return (
    <section className={styles.part} data-kind={item.kind} data-selected={selected || undefined} aria-label={name}>
      <h3 className={styles.name}>
        {again ? `${name}, still going on` : name}
        {!again && (
          <span className={styles.when}>
            {item.kind === "heading"
              ? ` ${clockTime(part.from)}`
              : ` ${clockTime(part.from)} to ${clockTime(part.to)}${springs && ` · ${springs}`}`}
          </span>
        )}
      </h3>
      {lines.length > 0 && (
        <ol className={styles.lines}>
          {lines.map((line) => (
            <li key={line.key}>
              <Line line={line} tabbable={line.key === tabbable} onGo={() => go.current(item.id, line.line)} />
            </li>
          ))}
        </ol>
      )}
    </section>
  );
});

function Line({ line, tabbable, onGo }: { line: ReadLine; tabbable: boolean; onGo: () => void }) {
  const { kind, text, at, shortBy } = line;
  return (
    <button
      type="button"
      className={styles.line}
      data-line={line.key}
      data-kind={kind}
      data-aside={shortBy !== null || undefined}
      tabIndex={tabbable ? 0 : -1}
      onClick={onGo}
    >
      <span className={styles.at}>{at === null ? "–" : clockTime(Math.floor(at))}</span>
      <span className={styles.kind}>
        {isCueKind(kind) ? KIND_WORDS[kind] : kind}
        <span className={styles.who}>{whoWords(line)}</span>
      </span>
      <span className={styles.words}>
        {text}
        {shortBy !== null && <span className={styles.short}> set aside: {plainNumber(shortBy)} s short</span>}
      </span>
    </button>
  );
}

function whoWords({ kind, at }: ReadLine): string {
  if (kind === "crew") return "crew, not said";
  if (at === null) return "no time for it";
  return kind === "heads-up" || kind === "count-in" ? "coach, from the plan" : "coach";
}
