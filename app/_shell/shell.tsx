/**
 * The frame of a workspace page: skip link, navigation, who is signed in, and the page's content. The floor, the
 * print sheet and the plan page have frames of their own.
 */

import Link from "next/link";
import type { ReactNode } from "react";
import { newWords } from "#lib/notices/notice-words.ts";
import { can } from "#lib/policy/can.ts";
import { DEVICES_PLACE } from "#lib/protocol/places.ts";
import { FindButton, FindHere } from "../_parts/find/find-here.tsx";
import { FormatsProvider } from "../_parts/formats.tsx";
import { NewerVersion } from "../_parts/newer-version.tsx";
import { ProgramMark } from "../_parts/program-mark.tsx";
import { AccountMenu } from "./account-menu.tsx";
import type { Visit } from "./person.ts";
import styles from "./shell.module.css";

type Section = "desk" | "programme" | "library" | "rules" | "people" | "record" | "studio";

interface Place {
  readonly section: Section;
  readonly href: string;
  readonly name: string;
}

/** The places this person's roles open; none is shown that would refuse them. */
export function placesFor(who: Visit["who"]): Place[] {
  const { actor } = who;
  const places: (Place | false)[] = [
    { section: "desk", href: "/desk", name: "Desk" },
    can(actor, "programme.read") && { section: "programme", href: "/programme", name: "Programme" },
    can(actor, "library.read") && { section: "library", href: "/library", name: "Library" },
    can(actor, "library.read") && { section: "rules", href: "/rules", name: "Rules" },
    (can(actor, "people.manage") || can(actor, "rubric.write")) && {
      section: "people",
      href: "/people",
      name: "People",
    },
    can(actor, "record.read") && { section: "record", href: "/record", name: "Record" },
    can(actor, "rooms.manage") && { section: "studio", href: "/studio", name: DEVICES_PLACE.under },
  ];
  return places.filter((place) => place !== false);
}

interface ShellProps {
  readonly visit: Visit;
  /** Undefined on pages that belong to no section. */
  readonly section?: Section | "notices";
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
          {placesFor(who).map((place) => (
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
