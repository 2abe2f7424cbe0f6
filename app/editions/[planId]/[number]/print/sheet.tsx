/** The sheet itself: times, moves, sides, springs in words and coils, changes, cautions. Black on white, no colour needed. */
import { FloorCoils } from "#app/_parts/coils/floor-coils.tsx";
import type { Card } from "#lib/card/schema.ts";
import { type SheetRow, sheetRows } from "#lib/card/sheet.ts";
import { withdrawnWords } from "#lib/card/withdrawn-words.ts";
import { clockTime, springWords } from "#lib/plan/format.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import type { Withdrawal } from "#lib/protocol/messages.ts";
import { PrintButton } from "./print-button.tsx";
import styles from "./sheet.module.css";

interface Props {
  readonly card: Card;
  /** ms since the epoch. */
  readonly signedAt: number;
  readonly signedBy: string;
  readonly withdrawn: Withdrawal | null;
}

/** Type gets smaller as the class gets fuller, so that one page holds it. */
function densityOf(rows: number): "open" | "plain" | "tight" | "tightest" {
  if (rows <= 16) return "open";
  if (rows <= 22) return "plain";
  return rows <= 29 ? "tight" : "tightest";
}

export function Sheet({ card, signedAt, signedBy, withdrawn }: Props) {
  const rows = sheetRows(card);
  const { edition, plan, clock, cautions, room, studio } = card;
  const signed = new Date(signedAt).toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });
  return (
    <main className={styles.ground}>
      <p className={styles.acts}>
        <a className="button" href="/desk">
          Back to your desk
        </a>
        <PrintButton />
      </p>
      <article className={styles.sheet} data-density={densityOf(rows.length)}>
        <header className={styles.head}>
          <div>
            <h1>{edition.title}</h1>
            <p>
              {studio.name}
              {studio.town && `, ${studio.town}`} · {room.name} · {plan.equipment.name}
            </p>
          </div>
          <div className={styles.edition}>
            <p className={styles.length}>{clockTime(clock.total)}</p>
            <p>
              edition {edition.number} · <strong>{edition.shortName}</strong>
            </p>
            <p>
              signed off by {signedBy}, {signed}
            </p>
            {withdrawn && (
              <p>
                <strong>{withdrawnWords(withdrawn)}</strong>
              </p>
            )}
          </div>
        </header>
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
      </article>
    </main>
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

function MoveCells({ row, equipment }: { row: MoveRow; equipment: Equipment }) {
  const counts = Object.fromEntries(row.springs.map((spring) => [spring.id, spring.count]));
  return (
    <>
      <td>
        <span className={styles.number}>{row.number}</span> <strong>{row.title}</strong>
        {row.side && <span className={styles.side}> · {row.side}</span>}
      </td>
      <td data-new={row.newSprings} className={styles.springs}>
        <FloorCoils springs={row.springs} equipment={equipment} /> {springWords(equipment, counts)}
      </td>
      <td>
        {row.change > 0 && <span className={styles.change}>{clockTime(row.change)}</span>}{" "}
        {row.changes.map((change) => change.words).join(", ")}
      </td>
    </>
  );
}
