"use client";
/** A month as it would be signed: what changed, what was found, its classes, and the signature. */
import { AcceptedInMonth, LookAgainList } from "./accept-finding.tsx";
import { ClassesRead } from "./classes-read.tsx";
import type { OpenedMonth } from "./opened-month.ts";
import styles from "./sign.module.css";
import { SignForm, type TypedNote } from "./sign-form.tsx";

interface SignOffProps {
  readonly month: string;
  readonly reading: OpenedMonth;
  /** Reads it again. */
  read(): Promise<void>;
  /** What is typed for the edition; it stays when the month is read again. */
  readonly note: TypedNote;
}

export function SignOff({ month, reading, read, note }: SignOffProps) {
  const { blockers, lookAgain, accepted, findings, signed, sinceSigned } = reading;
  const told = findings.filter(({ level }) => level === "info");
  return (
    <div className={styles.parts}>
      {signed && (
        <section>
          <h2>Changed since edition {signed.number}</h2>
          <Sentences said={sinceSigned} none="Nothing." />
        </section>
      )}
      <section>
        <h2>Findings</h2>
        {blockers.length > 0 && (
          <ul className="problem">
            {blockers.map(({ code, message }) => (
              <li key={code}>{message}</li>
            ))}
          </ul>
        )}
        <LookAgainList month={month} findings={lookAgain} done={read} />
        <AcceptedInMonth month={month} accepted={accepted} done={read} />
        {told.length > 0 && <Sentences said={told.map(({ message }) => message)} none="" />}
        {findings.length === 0 && blockers.length === 0 && <p className="quiet">Nothing was found.</p>}
      </section>
      <ClassesRead file={reading.file} />
      <SignForm month={month} reading={reading} read={read} note={note} />
    </div>
  );
}

function Sentences({ said, none }: { readonly said: readonly string[]; readonly none: string }) {
  if (said.length === 0) return <p className="quiet">{none}</p>;
  return (
    <ul>
      {said.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}
