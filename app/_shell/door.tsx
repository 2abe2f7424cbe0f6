/** The frame of pages for people who are not signed in: sign-in, first run, joining. */
import type { ReactNode } from "react";
import { ProgramMark } from "../_parts/program-mark.tsx";
import styles from "./door.module.css";

interface DoorProps {
  readonly title: string;
  readonly lead: ReactNode;
  readonly children: ReactNode;
}

export function Door({ title, lead, children }: DoorProps) {
  return (
    <main className={styles.door}>
      <div className={styles.rail} aria-hidden="true" />
      <div className={styles.inside}>
        <p className={styles.program}>
          <ProgramMark /> Springline
        </p>
        <h1>{title}</h1>
        <p className={styles.lead}>{lead}</p>
        {children}
        <p className={styles.help}>
          <a href="/help">Help</a>
        </p>
      </div>
    </main>
  );
}
