"use client";
/** One item's part of the read-through: its name and times, and under it the lines, each of which opens its script. */
import { memo, type RefObject } from "react";
import { LatePlateFigure, SMALL_PX } from "#app/_parts/plate/late-plate-figure.tsx";
import { Plate } from "#app/_parts/plate/plate.tsx";
import type { PlateFacts } from "#app/_parts/plate/plate-facts.ts";
import { PlateName } from "#app/_parts/plate/plate-words.tsx";
import { lineKindWords, setAsideWords } from "#app/_session/line-words.ts";
import type { ReadLine, ReadPart } from "#lib/cues/read-through.ts";
import { clockTime } from "#lib/plan/format.ts";
import styles from "./read.module.css";
import { goesOnWords, whoWords } from "./read-words.ts";

interface PartProps {
  readonly part: ReadPart;
  /** With its side. */
  readonly name: string;
  /** What its plate says; null for what is no move, and where the item had a part before. */
  readonly plate: PlateFacts | null;
  readonly selected: boolean;
  /** Key of the line that the Tab key reaches, where it is one of this part's. */
  readonly tabbable: string | null;
  readonly go: RefObject<(item: string, line: number | null) => void>;
}

export const Part = memo(function Part({ part, name, plate, selected, tabbable, go }: PartProps) {
  const { item, again, lines } = part;
  return (
    <section className={styles.part} data-kind={item.kind} data-selected={selected || undefined} aria-label={name}>
      {plate ? (
        <div className={styles.plate}>
          <Plate
            facts={plate}
            density="small"
            at={part.from}
            figure={<LatePlateFigure {...plate} px={SMALL_PX} />}
            name={
              <h3>
                <PlateName name={plate.name} side={plate.side} />
              </h3>
            }
          />
        </div>
      ) : (
        <h3 className={styles.name}>
          {again ? goesOnWords(name) : name}
          {!again && <span className={styles.when}> {whenWords(part)}</span>}
        </h3>
      )}
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

/** A heading has a moment, a pause a stretch of time. */
const whenWords = ({ item, from, to }: ReadPart): string =>
  item.kind === "heading" ? clockTime(from) : `${clockTime(from)} to ${clockTime(to)}`;

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
