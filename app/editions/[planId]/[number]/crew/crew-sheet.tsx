/** The crew sheet itself: moment, move, facing, springs and set-up changes, who is heard, and the lines for the crew. */
import { Coils } from "#app/floor/_parts/coils.tsx";
import { type CrewMove, type CrewRow, crewRows, isQuiet, type Voice } from "#lib/card/crew-sheet.ts";
import type { Card } from "#lib/card/schema.ts";
import { clockTime, springWords } from "#lib/plan/format.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import { PrintButton } from "../print/print-button.tsx";
import styles from "./crew-sheet.module.css";

interface Props {
  readonly card: Card;
  /** ms since the epoch. */
  readonly signedAt: number;
  readonly signedBy: string;
}

/** Type gets smaller as there is more to read, so that one page holds it: a row is as tall as its longest cell. */
function densityOf(rows: readonly CrewRow[]): "open" | "plain" | "tight" | "tightest" {
  const lines = rows.reduce((sum, row) => sum + (row.kind === "move" ? linesOf(row) : 1), 0);
  if (lines <= 26) return "open";
  if (lines <= 40) return "plain";
  return lines <= 58 ? "tight" : "tightest";
}

/** Letters that fit a line of the two widest cells, at the smallest type; measured, with room to spare. */
const CELL_LETTERS = 44;
function linesOf({ changes, lines }: CrewMove): number {
  const letters = (words: readonly string[]) => words.reduce((sum, text) => sum + text.length + 2, 0);
  return Math.max(1, Math.ceil(Math.max(letters(changes.map(({ words }) => words)), letters(lines)) / CELL_LETTERS));
}

export function CrewSheet({ card, signedAt, signedBy }: Props) {
  const rows = crewRows(card);
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
      <article className={styles.sheet} data-density={densityOf(rows)}>
        <header className={styles.head}>
          <div>
            <h1>Crew sheet: {edition.title}</h1>
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
          </div>
        </header>
        <table>
          <thead>
            <tr>
              <th className={styles.time}>change at</th>
              <th className={styles.time}>work at</th>
              <th>move, how long</th>
              <th>facing</th>
              <th>springs; in bold: new</th>
              <th>set-up change</th>
              <th>who is heard</th>
              <th>for the crew</th>
            </tr>
          </thead>
          <tbody>
            <Edge at={0} title="Opening" />
            {rows.map((row) => (
              <Row key={row.id} row={row} equipment={plan.equipment} />
            ))}
            <Edge at={clock.rows.at(-1)?.end ?? 0} title="Closing" />
          </tbody>
        </table>
        <footer className={styles.care}>
          <p>
            <strong>On the floor:</strong> springs are changed with the carriage home. Keep cables, stands and people
            out of the carriage's way and of anybody's way off the machine; a change of set-up is no moment to step in.
          </p>
          <p>{cautions.note.join(" ")}</p>
        </footer>
      </article>
    </main>
  );
}

function Edge({ at, title }: { readonly at: number; readonly title: string }) {
  return (
    <tr className={styles.heading}>
      <td className={styles.time} />
      <td className={styles.time}>{clockTime(at)}</td>
      <td colSpan={6}>{title}</td>
    </tr>
  );
}

function Row({ row, equipment }: { readonly row: CrewRow; readonly equipment: Equipment }) {
  if (row.kind === "heading") return <Edge at={row.at} title={row.title} />;
  if (row.kind === "pause") {
    return (
      <tr>
        <td className={styles.time} />
        <td className={styles.time}>{clockTime(row.at)}</td>
        <td colSpan={4}>
          <strong>{row.title}</strong>, {clockTime(row.seconds)}
        </td>
        <td data-label="heard">{voiceWords(row.voice)}</td>
        <td />
      </tr>
    );
  }
  return <MoveRow row={row} equipment={equipment} />;
}

function MoveRow({ row, equipment }: { readonly row: CrewMove; readonly equipment: Equipment }) {
  const counts = Object.fromEntries(row.springs.map((spring) => [spring.id, spring.count]));
  return (
    <tr>
      <td className={styles.time}>{row.at < row.start && clockTime(row.at)}</td>
      <td className={styles.time}>{clockTime(row.start)}</td>
      <td>
        <span className={styles.number}>{row.number}</span> <strong>{row.title}</strong>
        {row.side && ` · ${row.side}`}, {clockTime(row.seconds)}
      </td>
      <td data-label="facing" data-new={row.turns} className={styles.facing}>
        {row.facing ?? "not known"}
      </td>
      <td data-label="springs" data-new={row.newSprings} className={styles.springs}>
        <Coils springs={row.springs} equipment={equipment} /> {springWords(equipment, counts)}
      </td>
      <td data-label="change">{row.changes.map((change) => change.words).join(", ") || "nothing changes"}</td>
      <td data-label="heard">{voiceWords(row.voice)}</td>
      <td data-label="crew" className={styles.lines}>
        {row.lines.join(" ")}
      </td>
    </tr>
  );
}

function voiceWords(voice: Voice): string {
  if (isQuiet(voice)) return "nobody";
  const coach = `coach ${Math.round(voice.seconds)} s`;
  return voice.quiet ? `${coach}; quiet ${clockTime(voice.quiet.from)} to ${clockTime(voice.quiet.to)}` : coach;
}
