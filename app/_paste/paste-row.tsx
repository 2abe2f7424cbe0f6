"use client";
/** One row of the list: what was typed, what it becomes, its doubts to answer, and a way to change any of it. */
import { memo, type ReactNode, useState } from "react";
import { Coils } from "#app/_parts/coils/coil.tsx";
import { useFormats } from "#app/_parts/formats.tsx";
import { Seconds } from "#app/_parts/seconds.tsx";
import { usualPlaceWords } from "#lib/load/load-words.ts";
import type { PasteAnswer, RowAnswer } from "#lib/paste/answers.ts";
import { rowSideWords } from "#lib/paste/judge-side.ts";
import type { JudgedRow } from "#lib/paste/judged.ts";
import { typedParts } from "#lib/paste/typed-parts.ts";
import type { PasteContext } from "#lib/paste/types.ts";
import { sameData } from "#lib/plan/same-data.ts";
import { Doubts } from "./doubts.tsx";
import styles from "./paste.module.css";
import { startingWords } from "./paste-words.ts";
import { RowEditor } from "./row-editor.tsx";
import { RowStateMark } from "./row-state-mark.tsx";

interface RowProps {
  readonly row: JudgedRow;
  readonly context: PasteContext;
  readonly answer: (answer: PasteAnswer) => void;
}

/** Drawn again only when something in it differs: a list may have hundreds of rows. */
export const PasteRow = memo(
  OneRow,
  (before, after) => before.context === after.context && sameData(before.row, after.row),
);

function OneRow(props: RowProps) {
  const { row, context, answer } = props;
  const [open, setOpen] = useState(false);
  return (
    <tbody className={styles.row} data-row={row.reading.key} data-state={row.state}>
      <tr>
        <td className={styles.stateCell}>
          <RowStateMark state={row.state} />
        </td>
        <th scope="row" className={styles.typed}>
          <Typed row={row} />
        </th>
        <td className={styles.becomes}>
          <Becomes {...props} />
        </td>
        <Time row={row} />
        <td className={styles.springs}>
          {row.springs && <Coils springs={row.springs} equipment={context.equipment} words />}
          {row.starting.springs && row.springs && <Starting what="springs" />}
        </td>
        <td className={`light ${styles.rowActs}`}>
          <RowActs row={row} answer={answer} open={open} setOpen={setOpen} />
        </td>
      </tr>
      {row.doubts.length > 0 && (
        <Under>
          <Doubts {...props} />
        </Under>
      )}
      {open && row.state === "ready" && (
        <Under>
          <RowEditor {...props} />
        </Under>
      )}
    </tbody>
  );
}

function Time({ row }: Pick<RowProps, "row">) {
  return (
    <td className={styles.time}>
      {row.seconds !== undefined && <Seconds value={row.seconds} />}
      {isTwo(row) && " each side"}
      {row.times > 1 && ` × ${row.times}`}
      {row.starting.seconds && <Starting what="seconds" />}
    </td>
  );
}

const Under = ({ children }: { readonly children: ReactNode }) => (
  <tr className={styles.under}>
    <td colSpan={6}>{children}</td>
  </tr>
);

interface RowActsProps extends Pick<RowProps, "row" | "answer"> {
  readonly open: boolean;
  readonly setOpen: (open: boolean) => void;
}

function RowActs({ row, answer, open, setOpen }: RowActsProps) {
  const typed = row.reading.typed.replace(/\s+/g, " ").trim();
  const skipped = row.state === "skipped";
  return (
    <>
      {row.state === "ready" && (
        <button
          type="button"
          className="button"
          aria-expanded={open}
          aria-label={`Change ${typed}`}
          onClick={() => setOpen(!open)}
        >
          Change
        </button>
      )}
      <button
        type="button"
        className="button"
        aria-label={skipped ? `Use it: ${typed}` : `Skip ${typed}`}
        onClick={() => answer({ row: skipped ? takenUp(row) : { skip: true } })}
      >
        {skipped ? "Use it" : "Skip"}
      </button>
    </>
  );
}

/** A row that the reading itself passed over is read as a move once somebody wants it. */
const takenUp = (row: JudgedRow): RowAnswer => (row.notes.length > 0 ? { skip: false, kind: "move" } : { skip: false });

const isTwo = (row: JudgedRow): boolean =>
  row.seconds !== undefined && (row.side === "left-right" || row.side === "right-left");

/** The row as it was typed; characters that nothing was read from are underlined. */
function Typed({ row }: { row: JudgedRow }) {
  return (
    <bdi className={styles.typedText}>
      {typedParts(row.reading).map((part) => (
        <span key={part.at} data-of={part.of ?? undefined}>
          {part.text}
        </span>
      ))}
    </bdi>
  );
}

const Starting = ({ what }: { what: "seconds" | "springs" }) => (
  <span className={styles.starting}>{startingWords(what)}</span>
);

function Becomes({ row, context, answer }: RowProps) {
  const { reading } = row;
  const f = useFormats();
  return (
    <>
      <BecomesWhat row={row} context={context} />
      {reading.facing && row.kind === "move" && <span className={styles.note}>facing {reading.facing}</span>}
      {reading.offsetMm !== undefined && row.kind === "move" && (
        <span className={styles.note}>{usualPlaceWords(reading.offsetMm, f)}</span>
      )}
      {row.notes.map((note) => (
        <span key={note} className={styles.note}>
          {note}
        </span>
      ))}
      {row.words !== "" && row.state !== "skipped" && (
        <label className="check">
          <input
            type="checkbox"
            checked={row.keepWords}
            onChange={(event) => answer({ row: { keepWords: event.target.checked } })}
          />
          <span>
            keep what is left over as a form line: <bdi>“{row.words}”</bdi>
          </span>
        </label>
      )}
    </>
  );
}

function BecomesWhat({ row, context }: Pick<RowProps, "row" | "context">) {
  const { reading, kind } = row;
  const [first] = row.drafts;
  if (row.state === "skipped") return <span className="quiet">not added</span>;
  if (kind === "heading") return <b>Heading: {first?.kind === "heading" ? first.title : reading.name}</b>;
  if (kind === "pause") return <b>Pause: {first?.kind === "pause" ? first.text : reading.name}</b>;
  if (row.move === undefined) return <span className="quiet">not known yet</span>;
  return (
    <b className={styles.what}>
      {context.moves[row.move]?.name ?? row.move}
      {row.side !== undefined && row.side !== "both" && (
        <span className={styles.side} data-side={row.side}>
          {rowSideWords(row.side)}
        </span>
      )}
    </b>
  );
}
