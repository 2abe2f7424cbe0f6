"use client";
/** Groups of regulars: the same people, coming to several classes. */
import { addRegulars, nameTextOf, setRegularsPeople, takeOutEntry } from "#lib/programme/write-lists.ts";
import { newId } from "../_parts/new-id.ts";
import { SharedText } from "../_parts/shared-text.tsx";
import { Labelled, NumberOrNone } from "./labelled.tsx";
import type { MonthDesk } from "./month-desk.ts";
import styles from "./panel.module.css";
import { useGoToAdded } from "./use-go-to-added.ts";

/** Long because: the list and the button that adds to it are one. */
export function RegularsPanel({ desk }: { readonly desk: MonthDesk }) {
  const { month, acts } = desk;
  const [list, goTo] = useGoToAdded<HTMLUListElement>();
  const add = () => {
    const id = newId();
    if (acts.run((w) => addRegulars(w, id, { name: "New regulars" }), "Added a group of regulars.")) goTo(id);
  };
  return (
    <>
      <p className="quiet small">Work, rest and likeness are worked out for those who come to several classes.</p>
      <ul ref={list} className={styles.rows}>
        {Object.entries(month.state.regulars).map(([id, { name, people }]) => (
          <li key={id} data-row={id}>
            <div className={styles.two}>
              <NameField desk={desk} of="regulars" id={id} label="Name" />
              <NumberOrNone
                label="People"
                value={people}
                range={{ min: 1, max: 500 }}
                onChange={(count) => acts.run((w) => setRegularsPeople(w, id, count))}
              />
            </div>
            {month.writes && (
              <button
                type="button"
                className="act"
                onClick={() => acts.run((w) => takeOutEntry(w, "regulars", id, Date.now()), `Taken out: ${name}.`)}
              >
                Take out<span className="visually-hidden"> {name}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
      {month.writes && (
        <button type="button" className="button" onClick={add}>
          Add a group of regulars
        </button>
      )}
    </>
  );
}

interface NameFieldProps {
  readonly desk: MonthDesk;
  readonly of: "themes" | "regulars";
  readonly id: string;
  readonly label: string;
}

/** A name that several people can type in at once. */
export function NameField({ desk: { session, month }, of, id, label }: NameFieldProps) {
  const text = nameTextOf(session.doc, of, id);
  return (
    <Labelled label={label}>
      {(field) => text && <SharedText host={session} text={text} id={field} maxLength={120} readOnly={!month.writes} />}
    </Labelled>
  );
}
