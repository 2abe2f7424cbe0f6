"use client";
/** Where the month stands: signed off or not, and class by class what is different from the signed edition. */
import type { MonthDesk } from "./month-desk.ts";
import styles from "./panel.module.css";
import { SignMonth } from "./sign-month.tsx";
import { differentWords } from "./signed-words.ts";

export function ChangesPanel({ desk }: { readonly desk: MonthDesk }) {
  const { month, props, since } = desk;
  return (
    <div className={styles.form}>
      <SignMonth
        month={props.month}
        signed={month.signed}
        different={differentWords(since)}
        maySign={props.may.sign}
        mayLookBack={props.may.lookBack}
      />
      {month.signed?.note && <p className="quiet">“{month.signed.note}”</p>}
      <Changes desk={desk} />
    </div>
  );
}

function Changes({ desk: { month, since, slot, choose } }: { readonly desk: MonthDesk }) {
  if (!month.signed) return null;
  if (!since.known)
    return <p className="quiet">What has changed since is shown as soon as the signed edition is here.</p>;
  if (since.changes.length + since.renamed.length === 0)
    return <p className="quiet">Every class is as it was signed in edition {month.signed.number}.</p>;
  return (
    <ul className={styles.rows}>
      {since.renamed.map(({ id, sentence }) => (
        <li key={id}>
          <p>{sentence}</p>
        </li>
      ))}
      {since.changes.map(({ id, sentence }) => {
        const there = slot(id);
        return (
          <li key={id}>
            <p>{sentence}</p>
            {there && (
              <button
                type="button"
                className="act"
                onClick={() =>
                  choose({ panel: { kind: "class", slot: id }, at: { date: there.date, slot: id }, lit: id })
                }
              >
                Open the class<span className="visually-hidden">: {sentence}</span>
              </button>
            )}
          </li>
        );
      })}
    </ul>
  );
}
