/** The frame of a page of help: the workspace's for who is signed in, a bare one for everybody else. */
import Link from "next/link";
import type { ReactNode } from "react";
import { ProgramMark } from "../_parts/program-mark.tsx";
import { presentPerson } from "../_shell/person.ts";
import { Shell } from "../_shell/shell.tsx";
import styles from "./help.module.css";

export async function HelpFrame({ children }: { readonly children: ReactNode }) {
  const visit = await presentPerson();
  if (visit)
    return (
      <Shell visit={visit}>
        <div className={styles.page}>{children}</div>
      </Shell>
    );
  return (
    <>
      <header className={styles.head}>
        <ProgramMark />
        <span className={styles.program}>Springline</span>
        <Link href="/sign-in">Sign in</Link>
      </header>
      <main className={`${styles.page} ${styles.bare}`}>{children}</main>
    </>
  );
}

export const BackToHelp = () => (
  <p>
    <Link className="link-line" href="/help">
      All help
    </Link>
  </p>
);
