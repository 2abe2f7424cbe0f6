/** The crew sheet itself: moment, move, facing, springs and set-up changes, who is heard, and the lines for the crew. */
import { type CrewMove, type CrewRow, crewRows, isQuiet, type VoiceStretch } from "#lib/card/crew-sheet.ts";
import { CREW_COLUMNS, crewType } from "#lib/card/crew-type.ts";
import type { Card } from "#lib/card/schema.ts";
import { withdrawnWords } from "#lib/card/withdrawn-words.ts";
import { clockTime, springWords } from "#lib/plan/format.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import type { Withdrawal } from "#lib/protocol/messages.ts";
import { PrintButton } from "../print/print-button.tsx";
import paper from "../print/sheet.module.css";
import styles from "./crew-sheet.module.css";

interface Props {
  readonly card: Card;
  /** ms since the epoch. */
  readonly signedAt: number;
  readonly signedBy: string;
  readonly withdrawn: Withdrawal | null;
}

const { time, ...others } = CREW_COLUMNS;
const WIDTHS = [["from", time], ["start", time], ...Object.entries(others)] as const;
const TIME = `${paper.time} ${styles.time}`;

export function CrewSheet({ card, signedAt, signedBy, withdrawn }: Props) {
  const rows = crewRows(card);
  const { edition, plan, clock, cautions, room, studio } = card;
  const signed = new Date(signedAt).toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });
  return (
    <main className={paper.ground}>
      <p className={paper.acts}>
        <a className="button" href="/desk">
          Back to your desk
        </a>
        <PrintButton />
      </p>
      <article className={`${paper.sheet} ${styles.sheet}`} style={{ "--type": `${crewType(rows)}pt` }}>
        <header className={paper.head}>
          <div>
            <h1>Crew sheet: {edition.title}</h1>
            <p>
              {studio.name}
              {studio.town && `, ${studio.town}`} · {room.name} · {plan.equipment.name}
            </p>
          </div>
          <div className={paper.edition}>
            <p className={paper.length}>{clockTime(clock.total)}</p>
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
          <colgroup>
            {WIDTHS.map(([name, part]) => (
              <col key={name} style={{ width: `${part * 100}%` }} />
            ))}
          </colgroup>
          <thead>
            <tr>
              <th className={TIME}>change</th>
              <th className={TIME}>work</th>
              <th>move, how long</th>
              <th>facing, springs; in bold: new</th>
              <th>set-up change</th>
              <th>coach heard for</th>
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
        <footer className={paper.care}>
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
    <tr className={paper.heading}>
      <td className={TIME} />
      <td className={TIME}>{clockTime(at)}</td>
      <td colSpan={5}>{title}</td>
    </tr>
  );
}

function Row({ row, equipment }: { readonly row: CrewRow; readonly equipment: Equipment }) {
  if (row.kind === "heading") return <Edge at={row.at} title={row.title} />;
  if (row.kind === "pause") {
    return (
      <tr>
        <td className={TIME} />
        <td className={TIME}>{clockTime(row.at)}</td>
        <td colSpan={3}>
          <strong>{row.title}</strong>, {clockTime(row.seconds)}
        </td>
        <td data-label="coach heard for">{voiceWords(row.voice)}</td>
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
      <td className={TIME} data-label="change">
        {row.at < row.start && clockTime(row.at)}
      </td>
      <td className={TIME} data-label="work">
        {clockTime(row.start)}
      </td>
      <td>
        <span className={paper.number}>{row.number}</span> <strong>{row.title}</strong>
        {row.side && ` · ${row.side}`}, {clockTime(row.seconds)}
      </td>
      <td data-label="facing, on">
        <span className={row.turns ? styles.new : undefined}>{row.facing ?? "not known"}</span>
        {", "}
        <span className={row.newSprings ? styles.new : undefined}>{springWords(equipment, counts)}</span>
      </td>
      <td data-label="change">{row.changes.map((change) => change.words).join(", ") || "none"}</td>
      <td data-label="coach heard for">{voiceWords(row.voice)}</td>
      <td data-label="crew" className={styles.lines}>
        {row.lines.join(" ")}
      </td>
    </tr>
  );
}

function voiceWords(voice: VoiceStretch): string {
  if (isQuiet(voice)) return "nobody speaks";
  const seconds = `${Math.round(voice.seconds)} s`;
  return voice.quiet ? `${seconds}, quiet ${clockTime(voice.quiet.from)} to ${clockTime(voice.quiet.to)}` : seconds;
}
