/** The logs of a month that the reader may see one by one. */
import Link from "next/link";
import { dateWords } from "#lib/month/define/words.ts";
import { ScrollingTable } from "../scrolling-table.tsx";
import { LogActs } from "./log-acts.tsx";
import { howEnded, LOOK_BACK, startWordsOf } from "./look-back-words.ts";
import styles from "./looking-back.module.css";

interface Log {
  readonly key: string;
  readonly planId: string;
  readonly edition: number;
  readonly title: string;
  readonly roomName: string;
  readonly at: string;
  readonly end: "whole" | "early" | "abandoned";
  readonly minutesLate: number | null;
  readonly minutesOver: number;
  readonly coachId: string | null;
  readonly coachName: string | null;
  readonly struck: { readonly byName: string; readonly reason: string } | null;
}
interface LogTableProps {
  readonly logs: readonly Log[];
  readonly remarks: boolean;
  readonly people: readonly { readonly id: string; readonly name: string }[];
  readonly me: string;
}

const HEADS = ["When", "Class", "Room", "Led by", "Began", "How it went"];

export function LogTable({ logs, remarks, people, me }: LogTableProps) {
  return (
    <section>
      <h2>{LOOK_BACK.logs}</h2>
      {logs.length === 0 ? (
        <p className="quiet">{LOOK_BACK.noLogs}</p>
      ) : (
        <ScrollingTable title={LOOK_BACK.logs}>
          <table aria-label={LOOK_BACK.logs}>
            <thead>
              <tr>
                {HEADS.map((head) => (
                  <th key={head} scope="col">
                    {head}
                  </th>
                ))}
                <th scope="col" className={styles.screen}>
                  What to say of it
                </th>
              </tr>
            </thead>
            <tbody>
              {logs.map((log) => (
                <tr key={log.key}>
                  <Cells log={log} />
                  <td className={styles.screen}>
                    <LogActs log={log} remarks={remarks} people={people} me={me} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollingTable>
      )}
    </section>
  );
}

function Cells({ log }: { readonly log: Log }) {
  const { at, planId, edition, title, roomName, coachName, minutesLate, minutesOver, end, struck } = log;
  const over = minutesOver === 0 ? "" : `, ${Math.abs(minutesOver)} min ${minutesOver > 0 ? "over" : "under"}`;
  return (
    <>
      <th scope="row">
        {dateWords(at.slice(0, 10))} {at.slice(11)}
      </th>
      <td>
        <Link href={`/editions/${planId}/${edition}/classes`}>{title}</Link>, edition {edition}
      </td>
      <td>{roomName}</td>
      <td>{coachName ?? "nobody named"}</td>
      <td>{startWordsOf(minutesLate)}</td>
      <td>{struck ? `Struck by ${struck.byName}: “${struck.reason}”` : `${howEnded(end)}${over}`}</td>
    </>
  );
}
