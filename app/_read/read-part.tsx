"use client";
/** One item's part of the read-through: its name and times, and under it the lines, each of which opens its script. */
import { memo, type RefObject } from "react";
import { lineKindWords, setAsideWords } from "#app/_session/line-words.ts";
import type { ReadLine, ReadPart } from "#lib/cues/read-through.ts";
import { clockTime } from "#lib/plan/format.ts";
import styles from "./read.module.css";
import { goesOnWords, whoWords } from "./read-words.ts";

interface PartProps {
  readonly part: ReadPart;
  /** With its side. */
  readonly name: string;
  /** "one light"; "" for what has none. */
  readonly springs: string;
  readonly selected: boolean;
  /** Key of the line that the Tab key reaches, where it is one of this part's. */
  readonly tabbable: string | null;
  readonly go: RefObject<(item: string, line: number | null) => void>;
}

export const Part = memo(function Part({ part, name, springs, selected, tabbable, go }: PartProps) {
  const { item, again, lines } = part;
  return (
    <section className={styles.part} data-kind={item.kind} data-selected={selected || undefined} aria-label={name}>
      <h3 className={styles.name}>
        {again ? goesOnWords(name) : name}
        {!again && (
          <span className={styles.when}>
            {item.kind === "heading"
              ? ` ${clockTime(part.from)}`
              : ` ${clockTime(part.from)} to ${clockTime(part.to)}${springs && ` · ${springs}`}`}
          </span>
        )}
      </h3>
      {lines.length > 0 && (
        <ol className="bare">
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
        {lineKindWords(kind)}
        <span className={styles.who}>{whoWords(line)}</span>
      </span>
      <span className={styles.words}>
        {text}
        {shortBy !== null && <span className={styles.short}> {setAsideWords(shortBy)}</span>}
      </span>
    </button>
  );
}
