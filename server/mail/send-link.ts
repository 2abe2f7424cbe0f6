/**
 * Sends a link that opens a door, at once and once: such a link is kept nowhere, so it does not wait in the queue. Who made it
 * still has it, and hears why it did not go.
 */
import { readStudio } from "#db/repos/studio-repo.ts";
import type { Springline } from "#server/context/springline.ts";
import { mailProblem } from "./mail-problem.ts";
import { readMailSettings } from "./mail-settings.ts";
import { type SmtpOptions, sendMail } from "./smtp.ts";
import { type LinkLetter, writeLinkMail } from "./write-link-mail.ts";

/** Whether the mail server took it; why not, as a sentence. */
export type LinkMailed = { readonly sent: true } | { readonly sent: false; readonly says: string };

export async function sendLink(
  app: Pick<Springline, "db" | "env" | "now" | "newId" | "log">,
  asked: Pick<LinkLetter, "to" | "why" | "byName" | "path">,
  options: SmtpOptions = {},
): Promise<LinkMailed> {
  const settings = readMailSettings(app);
  if (!settings) return { sent: false, says: "E-mail is not set up." };
  const studioName = readStudio(app.db)?.name ?? "Springline";
  const mail = writeLinkMail(settings, { ...asked, id: app.newId(), studioName, now: app.now() });
  try {
    await sendMail(settings, mail, options);
    return { sent: true };
  } catch (error) {
    const { says } = mailProblem(error, settings.password);
    app.log.warn({ problem: says }, "a link could not be mailed");
    return { sent: false, says };
  }
}
