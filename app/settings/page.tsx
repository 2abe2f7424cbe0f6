/** What everybody sets for themselves: name, address, password, dates and units, and the way to what they are told. */

import type { Metadata } from "next";
import Link from "next/link";
import { languageOptions } from "#lib/formats/format-options.ts";
import { can } from "#lib/policy/can.ts";
import { showOwnFormats } from "#server/formats/own-formats.ts";
import { requirePerson } from "../_shell/person.ts";
import { Shell } from "../_shell/shell.tsx";
import { FormatsForm } from "./formats-form.tsx";
import { EmailForm, NameForm } from "./own-account-forms.tsx";
import { PasswordForm } from "./password-form.tsx";
import styles from "./settings.module.css";

export const metadata: Metadata = { title: "Settings" };

/** Long because: one page, from top to bottom. */
export default async function SettingsPage() {
  const visit = await requirePerson("/settings");
  const { app, formats } = visit;
  const { name, email, actor } = visit.who;
  const own = showOwnFormats(app, actor);
  return (
    <Shell visit={visit}>
      <h1>Settings</h1>
      <p className="quiet">Yours alone. What holds for the studio is under Studio, for its managers.</p>
      <section className={styles.part} id="name">
        <h2>Name</h2>
        <NameForm name={name} />
      </section>
      <section className={styles.part} id="email">
        <h2>Email</h2>
        <EmailForm email={email} />
      </section>
      <section className={styles.part} id="password">
        <h2>Password</h2>
        <PasswordForm />
      </section>
      <section className={styles.part} id="formats">
        <h2>Dates and units</h2>
        <p className={`quiet ${styles.lead}`}>
          For you alone, on pages, printed sheets and mails. The other words stay English. Times are those of the time
          zone {formats.zone.replaceAll("_", " ")}.
        </p>
        {own.ok && <FormatsForm {...own.value} languages={languageOptions()} />}
      </section>
      <section className={styles.part} id="told">
        <h2>What you are told, and when</h2>
        <p>
          <Link href="/notices#choices">Choose it under Notices</Link>
          {can(actor, "feed.own") ? (
            <>
              . Your <Link href="/programme/feeds">calendar address</Link> shows your classes elsewhere
            </>
          ) : null}
          .
        </p>
      </section>
    </Shell>
  );
}
