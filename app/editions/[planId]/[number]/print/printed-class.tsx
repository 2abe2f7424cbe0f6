/** A signed class on one page for the wall: times, moves, sides, springs in words and coils, changes, cautions. Black on white, no colour needed. */
import { FloorCoils } from "#app/_parts/coils/floor-coils.tsx";
import type { Card } from "#lib/card/schema.ts";
import { type SheetRow, sheetRows } from "#lib/card/sheet.ts";
import { clockTime, springWords } from "#lib/plan/format.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import styles from "./printed-class.module.css";
import { SignedPaper, type SignedProps } from "./signed-paper.tsx";

/** Letters of a change beyond which it takes a second line. */
const ONE_LINE = 50;

/** Type gets smaller as the class gets fuller, so that one page holds it. Counted in rows; a second line is half a row. */
function densityOf(shown: readonly SheetRow[]): "open" | "plain" | "tight" | "tightest" | "fullest" {
  const long = shown.filter((row) => row.kind === "move" && changeWords(row).length > ONE_LINE).length;
  const rows = shown.length + long / 2;
  if (rows <= 16) return "open";
  if (rows <= 22) return "plain";
  if (rows <= 29) return "tight";
  return rows <= 44 ? "tightest" : "fullest";
}

export function PrintedClass(signed: SignedProps) {
  const { card } = signed;
  const rows = sheetRows(card);
  const { plan, clock, cautions } = card;
  return (
    <SignedPaper {...signed} title={card.edition.title} density={densityOf(rows)}>
      <table>
        <thead>
          <tr>
            <th className={styles.time}>at</th>
            <th className={styles.time}>for</th>
            <th>move</th>
            <th>springs; in bold: new, carriage home first</th>
            <th>time to change, and what else changes</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <Row key={row.id} row={row} equipment={plan.equipment} />
          ))}
          <tr className={styles.heading}>
            <td className={styles.time}>{clockTime(clock.rows.at(-1)?.end ?? 0)}</td>
            <td />
            <td colSpan={3}>Closing</td>
          </tr>
        </tbody>
      </table>
      <Care cautions={cautions} rows={rows} />
    </SignedPaper>
  );
}

function Care({ cautions, rows }: { readonly cautions: Card["cautions"]; readonly rows: readonly SheetRow[] }) {
  return (
    <footer className={styles.care}>
      {cautions.expected.length > 0 && (
        <p>
          <strong>Expected in the room:</strong> {cautions.expected.join(", ")}.
        </p>
      )}
      {cautions.asked.length > 0 && (
        <p>
          <strong>This class asks for:</strong> {cautions.asked.map((asked) => askedWords(asked, rows)).join("; ")}.
        </p>
      )}
      <p>{cautions.note.join(" ")}</p>
    </footer>
  );
}

/** "weight on the wrists (1, 4, 5)": by the numbers of the moves. */
function askedWords(asked: { words: string; items: readonly string[] }, rows: readonly SheetRow[]): string {
  const numbers = rows.flatMap((row) => (row.kind === "move" && asked.items.includes(row.id) ? [row.number] : []));
  return `${asked.words} (${numbers.join(", ")})`;
}

function Row({ row, equipment }: { row: SheetRow; equipment: Equipment }) {
  if (row.kind === "heading") {
    return (
      <tr className={styles.heading}>
        <td colSpan={2} />
        <td colSpan={3}>{row.title}</td>
      </tr>
    );
  }
  return (
    <tr>
      <td className={styles.time}>{clockTime(row.start)}</td>
      <td className={styles.time}>{clockTime(row.seconds)}</td>
      {row.kind === "pause" ? <td colSpan={3}>{row.title}</td> : <MoveCells row={row} equipment={equipment} />}
    </tr>
  );
}

type MoveRow = Extract<SheetRow, { kind: "move" }>;

const changeWords = ({ changes }: MoveRow): string => changes.map(({ words }) => words).join(", ");

function MoveCells({ row, equipment }: { row: MoveRow; equipment: Equipment }) {
  const counts = Object.fromEntries(row.springs.map((spring) => [spring.id, spring.count]));
  return (
    <>
      <td className={styles.move}>
        <span className={styles.number}>{row.number}</span> <strong>{row.title}</strong>
        {row.side && <span className={styles.side}> · {row.side}</span>}
      </td>
      <td data-new={row.newSprings} className={styles.springs}>
        <FloorCoils springs={row.springs} equipment={equipment} /> {springWords(equipment, counts)}
      </td>
      <td>
        {row.change > 0 && <span className={styles.change}>{clockTime(row.change)}</span>} {changeWords(row)}
      </td>
    </>
  );
}
