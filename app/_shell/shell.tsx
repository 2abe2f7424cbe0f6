/**
 * The frame of a workspace page: skip link, navigation, who is signed in, and the page's content. The floor, the
 * print sheet and the plan page have frames of their own.
 */

import Link from "next/link";
import type { ReactNode } from "react";
import { type MenuSection, menuPlaces } from "#lib/find/program-pages.ts";
import { newWords } from "#lib/notices/notice-words.ts";
import { FindButton, FindHere } from "../_parts/find/find-here.tsx";
import { FormatsProvider } from "../_parts/formats.tsx";
import { NewerVersion } from "../_parts/newer-version.tsx";
import { ProgramMark } from "../_parts/program-mark.tsx";
import { AccountMenu } from "./account-menu.tsx";
import type { Visit } from "./person.ts";
import styles from "./shell.module.css";

interface ShellProps {
  readonly visit: Visit;
  /** Undefined on pages that belong to no section. */
  readonly section?: MenuSection | "notices";
  /** The content has the whole width of the window. */
  readonly wide?: boolean;
  readonly children: ReactNode;
}

export function Shell({ visit, section, wide = false, children }: ShellProps) {
  const { who, studio, unseen, formats } = visit;
  return (
    <div className={styles.page}>
      <a className="skip" href="#content">
        Skip to the content
      </a>
      <header className={styles.head}>
        <Link className={styles.home} href="/desk">
          <ProgramMark />
          <span className={styles.studio}>{studio.name}</span>
        </Link>
        <nav className={styles.way} aria-label="Main">
          {menuPlaces(who.actor).map((place) => (
            <Link key={place.section} href={place.href} aria-current={place.section === section ? "page" : undefined}>
              {place.name}
            </Link>
          ))}
        </nav>
        <FindButton className={styles.find} />
        <Link className={styles.notices} href="/notices" aria-current={section === "notices" ? "page" : undefined}>
          Notices{unseen > 0 ? <span className={styles.unseen}> {newWords(unseen)}</span> : null}
        </Link>
        <AccountMenu id={who.actor.id} name={who.name} email={who.email} roles={who.actor.roles} />
      </header>
      <main id="content" className={`${styles.content} ${wide ? styles.wide : ""}`} tabIndex={-1}>
        <FindHere />
        <NewerVersion />
        <FormatsProvider formats={formats}>{children}</FormatsProvider>
      </main>
    </div>
  );
}
