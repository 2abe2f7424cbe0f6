/** The lines of the curve in numbers, at the start, the middle and the end of the travel; a neighbour can be taken. */

import { useFormats } from "#app/_parts/formats.tsx";
import { FORCE_NAMES, forceNumber } from "#lib/formats/units.ts";
import { springWords } from "#lib/plan/format.ts";
import type { Equipment, Move, MoveItem } from "#lib/plan/schema.ts";
import styles from "./load.module.css";
import { LineSample } from "./load-chart.tsx";
import type { LoadLine } from "./load-lines.ts";
import { askedWords, lineWords } from "./load-words.ts";

const PLACES = ["start", "middle", "end"] as const;

interface TableProps {
  readonly lines: readonly LoadLine[];
  readonly move: Move;
  readonly equipment: Equipment;
  /** Takes other springs; undefined for somebody who may only read. */
  readonly onTake: ((springs: MoveItem["springs"]) => void) | undefined;
}

export function LoadTable({ lines, move, equipment, onTake }: TableProps) {
  const f = useFormats();
  const helps = move.resistance === "assisted";
  return (
    <table className={styles.table}>
      <caption className="visually-hidden">{`${helps ? "Help" : "Load"} in ${FORCE_NAMES[f.force]} along the travel`}</caption>
      <thead>
        <tr>
          <th scope="col">Springs</th>
          {PLACES.map((place) => (
            <th key={place} scope="col" className="number">
              {place}
            </th>
          ))}
          {onTake && (
            <td>
              <span className="visually-hidden">Take</span>
            </td>
          )}
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <Row key={line.kind} {...{ line, equipment, helps, onTake }} />
        ))}
        {move.loadN && <AskedRow asked={move.loadN} acts={onTake !== undefined} />}
      </tbody>
    </table>
  );
}

interface RowProps {
  readonly line: LoadLine;
  readonly equipment: Equipment;
  readonly helps: boolean;
  readonly onTake: TableProps["onTake"];
}

function Row({ line, equipment, helps, onTake }: RowProps) {
  const f = useFormats();
  const words = springWords(equipment, line.springs);
  const isChoice = line.kind === "lighter" || line.kind === "heavier";
  return (
    <tr data-line={line.kind}>
      <th scope="row">
        <span className={styles.name}>
          <LineSample kind={line.kind} />
          <span>
            {words}
            <span className={styles.kind}>{lineWords(line.kind, helps)}</span>
          </span>
        </span>
      </th>
      {PLACES.map((place, i) => (
        <td key={place} className="number">
          {forceNumber(line.newtons[i] ?? 0, f)}
        </td>
      ))}
      {onTake && <td>{isChoice && <Take words={words} onTake={() => onTake(line.springs)} />}</td>}
    </tr>
  );
}

function Take({ words, onTake }: { readonly words: string; readonly onTake: () => void }) {
  return (
    <button type="button" className={`square-button ${styles.take}`} aria-label={`Take ${words}`} onClick={onTake}>
      Take
    </button>
  );
}

function AskedRow({ asked, acts }: { asked: readonly [number, number]; acts: boolean }) {
  return (
    <tr>
      <td colSpan={acts ? 5 : 4}>
        <span className={styles.name}>
          <LineSample kind="asked" />
          <span className={styles.kind}>{askedWords(asked, useFormats())}</span>
        </span>
      </td>
    </tr>
  );
}
