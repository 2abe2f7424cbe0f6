/**
 * The crew sheet: when, the change into each move as ordered acts, its plate with which way people face, how long the coach
 * speaks, and the lines for the crew.
 */
import { type PlateFacts, platesOf } from "#app/_parts/plate/plate-facts.ts";
import { type CrewMove, type CrewRow, crewRows, isQuiet, type VoiceStretch } from "#lib/card/crew-sheet.ts";
import type { Card } from "#lib/card/schema.ts";
import { layoutOfCrew } from "#lib/card/sheet-room.ts";
import { clockTime } from "#lib/plan/format.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";
import { type DrawnChanges, drawnChanges } from "../print/drawn-changes.ts";
import { PaperActs, PaperChangePicture } from "../print/paper-change.tsx";
import { PaperPlate } from "../print/paper-plate.tsx";
import paper from "../print/printed-class.module.css";
import { SignedPaper, type SignedProps } from "../print/signed-paper.tsx";
import styles from "./crew-sheet.module.css";

const CHANGE_MM = 26;

export async function PrintedCrewSheet(signed: SignedProps) {
  const { card } = signed;
  const rows = crewRows(card);
  const { plan, clock, cautions, cues, dropped } = card;
  const factsOf = platesOf(plan, { rows: clock.rows, cues, dropped });
  const facts = new Map(plan.items.filter(isMoveItem).map((item) => [item.id, factsOf(item)]));
  const changes = await drawnChanges(plan, CHANGE_MM);
  const { drawn } = layoutOfCrew(rows, changes.heightOf);
  return (
    <SignedPaper {...signed} title={`Crew sheet: ${card.edition.title}`} className={styles.sheet}>
      <table>
        <TableEnds card={card} />
        <tbody>
          <Edge at={0} title="Opening" />
          {rows.map((row) => (
            <Row
              key={row.id}
              row={row}
              card={card}
              plate={facts.get(row.id)}
              changes={drawn.has(row.id) ? changes : null}
            />
          ))}
          <Edge at={clock.rows.at(-1)?.end ?? 0} title="Closing" />
        </tbody>
      </table>
      <Care note={cautions.note} />
    </SignedPaper>
  );
}

/** The names of the columns, and at the foot of each page the edition: pages come apart. */
function TableEnds({ card: { edition } }: { readonly card: Card }) {
  return (
    <>
      <thead>
        <tr>
          <th className={styles.change}>change</th>
          <th className={styles.plate}>move</th>
          <th className={styles.voice}>coach speaks</th>
          <th>for the crew</th>
        </tr>
      </thead>
      <tfoot>
        <tr>
          <td colSpan={4}>
            {edition.title} · edition {edition.number} · {edition.shortName}
          </td>
        </tr>
      </tfoot>
    </>
  );
}

function Care({ note }: { readonly note: readonly string[] }) {
  return (
    <footer className={paper.care}>
      <p>
        <strong>On the floor:</strong> springs are changed with the carriage home. Keep cables, stands and people out of
        the carriage’s way, and keep the way off every machine clear. Do not step in during a change.
      </p>
      <p>{note.join(" ")}</p>
    </footer>
  );
}

function Edge({ at, title }: { readonly at: number; readonly title: string }) {
  return (
    <tr className={styles.heading}>
      <td colSpan={4}>
        <time>{clockTime(at)}</time> {title}
      </td>
    </tr>
  );
}

interface RowProps {
  readonly row: CrewRow;
  readonly card: Card;
  readonly plate: PlateFacts | undefined;
  /** Null where its change is not drawn. */
  readonly changes: DrawnChanges | null;
}

function Row({ row, card, plate, changes }: RowProps) {
  if (row.kind === "heading") return <Edge at={row.at} title={row.title} />;
  if (row.kind === "pause") {
    return (
      <tr>
        <td colSpan={2}>
          <time>{clockTime(row.at)}</time> <strong>{row.title}</strong>, {clockTime(row.seconds)}
        </td>
        <td data-label="coach speaks for">{voiceWords(row.voice)}</td>
        <td />
      </tr>
    );
  }
  return plate ? <MoveRow row={row} card={card} plate={plate} changes={changes} /> : null;
}

type MoveRowProps = Omit<RowProps, "row" | "plate"> & { readonly row: CrewMove; readonly plate: PlateFacts };

function MoveRow({ row, card: { plan }, plate, changes }: MoveRowProps) {
  return (
    <tr>
      <td className={styles.change}>
        <div className={styles.told}>
          <div className={styles.acts}>
            {row.at < row.start && <time>{clockTime(row.at)}</time>}
            <PaperActs acts={row.changes} equipment={plan.equipment} />
          </div>
          {changes && <PaperChangePicture changes={changes} item={row.id} />}
        </div>
      </td>
      <td className={styles.plate}>
        <PaperPlate facts={plate} number={row.number} at={row.start}>
          <p className={row.turns ? styles.new : undefined}>{facingWords(row)}</p>
        </PaperPlate>
      </td>
      <td className={styles.voice} data-label="coach speaks for">
        {voiceWords(row.voice)}
      </td>
      <td data-label="crew" className={styles.lines}>
        {row.lines.join(" ")}
      </td>
    </tr>
  );
}

const facingWords = ({ facing, turns }: CrewMove): string =>
  facing === null ? "facing not known" : `${turns ? "now " : ""}facing ${facing}`;

function voiceWords(voice: VoiceStretch): string {
  if (isQuiet(voice)) return "nobody speaks";
  const seconds = `${Math.round(voice.seconds)} s`;
  return voice.quiet ? `${seconds}, quiet ${clockTime(voice.quiet.from)} to ${clockTime(voice.quiet.to)}` : seconds;
}
