/** The lines of the curve in numbers: what each would be at the start, the middle and the end; and taking one of them. */
import { springWords } from "#lib/plan/format.ts";
import type { Equipment, Move, MoveItem } from "#lib/plan/schema.ts";
import type { LineKind, LoadLine } from "./lines.ts";
import styles from "./load.module.css";
import { LineSample } from "./load-chart.tsx";

interface TableProps {
  readonly lines: readonly LoadLine[];
  readonly move: Move;
  readonly equipment: Equipment;
  /** Takes other springs; undefined for somebody who reads along. */
  readonly onTake: ((springs: MoveItem["springs"]) => void) | undefined;
}

export function LoadTable({ lines, move, equipment, onTake }: TableProps) {
  const helps = move.resistance === "assisted";
  const places = ["start", "middle", "end"] as const;
  return (
    <table className={styles.table}>
      <caption className="visually-hidden">{`${helps ? "Help" : "Load"} in newtons along the travel`}</caption>
      <thead>
        <tr>
          <th scope="col">Springs</th>
          {places.map((place) => (
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
  const words = springWords(equipment, line.springs);
  const places = [
    ["start", line.newtons[0]],
    ["middle", line.newtons[1]],
    ["end", line.newtons[2]],
  ] as const;
  const takes = line.kind === "lighter" || line.kind === "heavier";
  return (
    <tr data-line={line.kind}>
      <th scope="row">
        <span className={styles.name}>
          <LineSample kind={line.kind} />
          <span>
            {words}
            <span className={styles.kind}>{kindWords(line.kind, helps)}</span>
          </span>
        </span>
      </th>
      {places.map(([place, newtons]) => (
        <td key={place} className="number">
          {Math.round(newtons)}
        </td>
      ))}
      {onTake && (
        <td>
          {takes && (
            <button
              type="button"
              className="square-button"
              aria-label={`Take ${words}`}
              onClick={() => onTake(line.springs)}
            >
              Take
            </button>
          )}
        </td>
      )}
    </tr>
  );
}

function AskedRow({ asked: [low, high], acts }: { asked: readonly [number, number]; acts: boolean }) {
  return (
    <tr>
      <td colSpan={acts ? 5 : 4}>
        <span className={styles.name}>
          <LineSample kind="asked" />
          <span className={styles.kind}>
            {`The library asks for ${Math.round(low)} to ${Math.round(high)} N in the middle.`}
          </span>
        </span>
      </td>
    </tr>
  );
}

function kindWords(kind: LineKind, helps: boolean): string {
  switch (kind) {
    case "own":
      return "as it is";
    case "lighter":
      return helps ? "one step less help" : "one step lighter";
    case "heavier":
      return helps ? "one step more help" : "one step heavier";
    case "before":
      return "the spring item before";
  }
}
