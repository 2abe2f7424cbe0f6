/**
 * A signed class on paper for the wall: plates on twin rails in two columns, on the bare rail between them the acts of each
 * change. Black on white, no colour needed. What does not fit one page takes another: smaller type is not read from a wall.
 */
import type { ReactNode } from "react";
import { BodyMap } from "#app/_body-map/body-map.tsx";
import { type PlateFacts, platesOf } from "#app/_parts/plate/plate-facts.ts";
import { Seconds } from "#app/_parts/seconds.tsx";
import { balance, workShares } from "#lib/balance/balance.ts";
import { bodyMapWords } from "#lib/body-map/shade.ts";
import type { Card } from "#lib/card/schema.ts";
import { type SheetRow, sheetRows } from "#lib/card/sheet.ts";
import { layoutOfPrint } from "#lib/card/sheet-room.ts";
import { clockTime } from "#lib/plan/format.ts";
import { headSeconds, isMoveItem } from "#lib/plan/lookup.ts";
import { type DrawnChanges, drawnChanges } from "./drawn-changes.ts";
import { PaperActs, PaperChangePicture } from "./paper-change.tsx";
import { PaperPlate } from "./paper-plate.tsx";
import styles from "./printed-class.module.css";
import { SignedPaper, type SignedProps } from "./signed-paper.tsx";
import { SpringKey } from "./spring-key.tsx";

type MoveRow = Extract<SheetRow, { kind: "move" }>;
/** A row of time with the headings over it. */
interface Stretch {
  readonly headings: readonly string[];
  readonly row: Exclude<SheetRow, { kind: "heading" }> | null;
}

const CHANGE_MM = 29;

export async function PrintedClass(signed: SignedProps) {
  const { card } = signed;
  const { plan, cautions } = card;
  const rows = sheetRows(card);
  const changes = await drawnChanges(plan, CHANGE_MM);
  const { pages, drawn } = layoutOfPrint(rows, changes.heightOf);
  const facts = factsById(card);
  return (
    <SignedPaper {...signed} title={card.edition.title}>
      {pages.map((page, n) => (
        <section key={page[0]?.id ?? "end"} className={styles.page}>
          {n > 0 && <PageHead card={card} number={n + 1} />}
          <ol className={styles.rail} aria-label={n === 0 ? "The class, in order" : "The class goes on"}>
            {n === 0 && <Bare at={0} seconds={headSeconds(plan, "openingSeconds")} title="Opening" />}
            <Stretches {...{ card, facts, drawn, changes }} rows={page} />
            {n === pages.length - 1 && <Closing card={card} />}
          </ol>
        </section>
      ))}
      <SpringKey equipment={plan.equipment} />
      <Trains card={card} />
      <Care cautions={cautions} rows={rows} />
    </SignedPaper>
  );
}

/** Pages come apart, so each says of which edition it is. */
function PageHead({ card: { edition }, number }: { readonly card: Card; readonly number: number }) {
  return (
    <p className={styles.again}>
      <strong>{edition.title}</strong> · edition {edition.number} · {edition.shortName} · page {number}
    </p>
  );
}

function Closing({ card: { plan, clock } }: { readonly card: Card }) {
  return <Bare at={clock.rows.at(-1)?.end ?? 0} seconds={headSeconds(plan, "closingSeconds")} title="Closing" />;
}

interface StretchesProps {
  readonly card: Card;
  readonly rows: readonly SheetRow[];
  readonly facts: ReadonlyMap<string, PlateFacts>;
  readonly drawn: ReadonlySet<string>;
  readonly changes: DrawnChanges;
}

function Stretches({ card, rows, facts, drawn, changes }: StretchesProps) {
  return stretchesOf(rows).map(({ row, headings }) => {
    const over = headings.map((title) => <h2 key={title}>{title}</h2>);
    if (row === null) return <Bare key="end" at={card.clock.rows.at(-1)?.end ?? 0} title={over} />;
    if (row.kind === "pause") {
      const title = (
        <>
          {over}
          {row.title}
        </>
      );
      return <Bare key={row.id} at={row.start} seconds={row.seconds} title={title} />;
    }
    const plate = facts.get(row.id);
    return plate && <Move key={row.id} {...{ row, over, card, plate }} changes={drawn.has(row.id) ? changes : null} />;
  });
}

function factsById(card: Card): ReadonlyMap<string, PlateFacts> {
  const { plan, clock, cues, dropped } = card;
  const factsOf = platesOf(plan, { rows: clock.rows, cues, dropped });
  return new Map(plan.items.filter(isMoveItem).map((item) => [item.id, factsOf(item)]));
}

/** A heading leads the change after it. */
function stretchesOf(rows: readonly SheetRow[]): Stretch[] {
  const stretches: Stretch[] = [];
  let headings: string[] = [];
  for (const row of rows) {
    if (row.kind === "heading") headings.push(row.title);
    else {
      stretches.push({ headings, row });
      headings = [];
    }
  }
  return headings.length > 0 ? [...stretches, { headings, row: null }] : stretches;
}

interface BareProps {
  readonly at: number;
  readonly seconds?: number;
  readonly title: ReactNode;
}

/** Bare rail: an opening, a pause, a closing. */
function Bare({ at, seconds, title }: BareProps) {
  return (
    <li className={styles.stretch}>
      <div className={styles.bare}>
        {seconds !== undefined && <Between seconds={seconds} />}
        <div className={styles.pause}>
          <time>{clockTime(at)}</time> <strong>{title}</strong>
        </div>
      </div>
    </li>
  );
}

const Between = ({ seconds }: { readonly seconds: number }) => (
  <b className={styles.between}>
    <Seconds value={seconds} />
  </b>
);

interface MoveProps {
  readonly row: MoveRow;
  readonly over: ReactNode;
  readonly card: Card;
  readonly plate: PlateFacts;
  /** Null where its change is not drawn. */
  readonly changes: DrawnChanges | null;
}

function Move({ row, over, card: { plan }, plate, changes }: MoveProps) {
  return (
    <li className={styles.stretch}>
      <div className={styles.bare}>
        {row.change > 0 && <Between seconds={row.change} />}
        <div className={styles.told}>
          {over}
          <PaperActs acts={row.changes} equipment={plan.equipment} />
        </div>
        {changes && <PaperChangePicture changes={changes} item={row.id} />}
      </div>
      <div className={styles.clasped}>
        <PaperPlate facts={plate} number={row.number} at={row.start}>
          {row.starts && <p>{row.starts}</p>}
        </PaperPlate>
      </div>
    </li>
  );
}

/** On a person and in words. */
function Trains({ card: { plan } }: { readonly card: Card }) {
  const shares = workShares(balance(plan));
  if (Object.keys(shares).length === 0) return null;
  return (
    <div className={styles.trains}>
      <div className={styles.trained}>
        <BodyMap shares={shares} layout="lying" />
      </div>
      <p>
        <strong>Share of the work:</strong> {bodyMapWords(shares, "share")}
      </p>
    </div>
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
