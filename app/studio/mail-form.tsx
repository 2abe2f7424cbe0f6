"use client";
/** The mail server's settings. Uncontrolled: what was typed stays when the server refuses. */
import { type FormEvent, useId, useState } from "react";
import type { MailSecurity, MailSettingsView } from "#server/mail/mail-settings.ts";
import { Dialog } from "../_parts/dialog.tsx";
import { FormField, textOf } from "../_parts/form-field.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { SendButton } from "../_parts/send-button.tsx";
import { useSend } from "../_parts/use-send.ts";
import { MAIL, otherAddressWords, SECURITY_WORDS } from "./mail-words.ts";
import styles from "./studio.module.css";

interface MailFormProps {
  /** Null for the first time. */
  readonly settings: MailSettingsView | null;
  /** The address that the server is started for. */
  readonly address: string;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

const SECURITIES = ["starttls", "tls", "none"] as const;

export function MailForm({ settings, address, onClose, onDone }: MailFormProps) {
  const { security, setSecurity, links, setLinks, sending, save } = useMailForm({ settings, address, onDone });
  return (
    <Dialog title="E-mail" onClose={onClose}>
      <form className={styles.form} onSubmit={save}>
        <ServerFields settings={settings} security={security} onSecurity={setSecurity} />
        <AccountFields settings={settings} />
        <FormField
          label="Mails come from"
          name="from"
          type="email"
          required
          maxLength={254}
          defaultValue={settings?.from}
          hint={MAIL.fromHint}
        />
        <FormField
          label="Address of the studio"
          type="url"
          required
          value={links}
          onChange={(event) => setLinks(event.target.value)}
          hint={MAIL.addressHint}
        />
        <div role="status">{links === address ? null : <p className="notice">{otherAddressWords(address)}</p>}</div>
        <ProblemLine say={sending.problem} />
        <SendButton busy={sending.busy} doing="Saving…">
          Save
        </SendButton>
      </form>
    </Dialog>
  );
}

function useMailForm({ settings, address, onDone }: Omit<MailFormProps, "onClose">) {
  const sending = useSend();
  const [security, setSecurity] = useState<MailSecurity>(settings?.security ?? "starttls");
  const [links, setLinks] = useState(settings?.address ?? address);
  const save = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const password = textOf(form, "password");
    const drop = form.get("drop") !== null;
    const saved = await sending.run("PUT", "/api/mail", {
      host: textOf(form, "host"),
      port: Number(textOf(form, "port")),
      security,
      user: textOf(form, "user"),
      ...(drop ? { password: "" } : password === "" ? {} : { password }),
      from: textOf(form, "from"),
      address: links,
      seen: settings?.seen ?? 0,
    });
    if (saved !== undefined) onDone();
  };
  return { security, setSecurity, links, setLinks, sending, save };
}

interface ServerProps {
  readonly settings: MailSettingsView | null;
  readonly security: MailSecurity;
  readonly onSecurity: (security: MailSecurity) => void;
}

function ServerFields({ settings, security, onSecurity }: ServerProps) {
  const id = useId();
  return (
    <>
      <div className={styles.pair}>
        <FormField label="Mail server" name="host" required maxLength={253} defaultValue={settings?.host} />
        <FormField label="Port" name="port" inputMode="numeric" required defaultValue={settings?.port ?? 587} />
      </div>
      <div className="field">
        <label htmlFor={id}>Security</label>
        <select id={id} value={security} onChange={(event) => onSecurity(event.target.value as MailSecurity)}>
          {SECURITIES.map((value) => (
            <option key={value} value={value}>
              {SECURITY_WORDS[value]}
            </option>
          ))}
        </select>
      </div>
    </>
  );
}

function AccountFields({ settings }: { readonly settings: MailSettingsView | null }) {
  const kept = settings?.hasPassword === true;
  return (
    <>
      <div className={styles.pair}>
        <FormField label="User" name="user" maxLength={254} autoComplete="off" defaultValue={settings?.user} />
        <FormField
          label="Password"
          name="password"
          type="password"
          maxLength={1000}
          autoComplete="new-password"
          hint={kept ? MAIL.passwordKept : MAIL.passwordHint}
        />
      </div>
      {kept ? (
        <label className="check">
          <input type="checkbox" name="drop" />
          Forget the saved password
        </label>
      ) : null}
    </>
  );
}
