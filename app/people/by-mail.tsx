"use client";
/** Whether a link goes by e-mail as well, and what became of it. Nothing of it is shown where the studio sends no e-mail. */
import type { LinkMailed } from "#server/mail/send-link.ts";

export const SendByMail = () => (
  <label className="check">
    <input type="checkbox" name="send" defaultChecked /> Send it by e-mail
  </label>
);

interface HowItWentProps {
  /** Undefined where it was not asked for. */
  readonly mailed: LinkMailed | undefined;
  readonly to: string;
}

export function HowItWent({ mailed, to }: HowItWentProps) {
  if (mailed === undefined) return null;
  return (
    <p role="status" className={mailed.sent ? undefined : "problem"}>
      {mailed.sent
        ? `The mail server took the mail to ${to}.`
        : `The mail to ${to} was not sent. ${mailed.says} Send the link yourself.`}
    </p>
  );
}
