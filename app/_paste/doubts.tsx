"use client";
/** The open doubts of a row: a sentence each, buttons for the likely answers, and a way to give any other. */
import { type KeyboardEvent, type ReactNode, useEffect, useRef, useState } from "react";
import { MovePicker } from "#app/_parts/move-picker.tsx";
import { NumberField } from "#app/_parts/number-field.tsx";
import type { PasteAnswer } from "#lib/paste/answers.ts";
import { moveAnswer } from "#lib/paste/judge-kind.ts";
import type { JudgedRow, PasteDoubt } from "#lib/paste/judged.ts";
import type { PasteContext } from "#lib/paste/types.ts";
import styles from "./paste.module.css";
import { SpringCounts } from "./spring-counts.tsx";

interface DoubtsProps {
  readonly row: JudgedRow;
  readonly context: PasteContext;
  readonly answer: (answer: PasteAnswer) => void;
}

export function Doubts(props: DoubtsProps) {
  return (
    <div className={styles.doubts}>
      {props.row.doubts.map((doubt) => (
        <fieldset key={doubt.about + doubt.say} className={styles.doubt} data-doubt={doubt.about}>
          <legend>{doubt.say}</legend>
          <div className={`light ${styles.choices}`}>
            {doubt.choices.map((choice) => (
              <button key={choice.label} type="button" className="button" onClick={() => props.answer(choice.answer)}>
                {choice.label}
              </button>
            ))}
            <OtherAnswer {...props} doubt={doubt} />
          </div>
        </fieldset>
      ))}
    </div>
  );
}

function OtherAnswer({ row, context, answer, doubt }: DoubtsProps & { doubt: PasteDoubt }) {
  if (doubt.about === "time") {
    return (
      <div className={styles.short}>
        <NumberField
          label="Other length, seconds"
          value={undefined}
          optional
          min={row.kind === "pause" ? 0 : 1}
          onCommit={(seconds) => seconds !== undefined && answer({ row: { seconds } })}
        />
      </div>
    );
  }
  if (doubt.about === "springs") {
    return (
      <Unfolds words="Set the springs">
        <SpringCounts
          equipment={context.equipment}
          start={row.reading.springs.counts}
          onTake={(springs) => answer({ row: { springs } })}
        />
      </Unfolds>
    );
  }
  if (doubt.about === "side") return null;
  return (
    <Unfolds words={doubt.choices.length > 0 ? "Another move" : "Choose a move"}>
      <MovePicker
        moves={context.moves}
        equipment={context.equipment}
        chosen={null}
        autoFocus
        onTake={(move) => answer(moveAnswer(row.reading, move))}
      />
    </Unfolds>
  );
}

/** A button that unfolds something; Escape folds it up again and does not close the dialog. */
export function Unfolds({ words, children }: { words: string; children: ReactNode }) {
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const unfolded = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (open) unfolded.current?.scrollIntoView({ block: "nearest" });
  }, [open]);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== "Escape") return;
    event.preventDefault();
    event.stopPropagation();
    setOpen(false);
    button.current?.focus();
  };
  return (
    <>
      <button ref={button} type="button" className="button" aria-expanded={open} onClick={() => setOpen(!open)}>
        {words}
      </button>
      {open && (
        // biome-ignore lint/a11y/noStaticElementInteractions: it only hears the Escape of the fields inside
        <div ref={unfolded} className={styles.unfolded} onKeyDown={onKeyDown}>
          {children}
        </div>
      )}
    </>
  );
}
