/** The timer that fills the queue and sends what is due. Started by `server/main` alone. */
import { deleteSentMails } from "#db/repos/mail-repo.ts";
import type { Springline } from "#server/context/springline.ts";
import { deliverDue } from "./deliver.ts";
import { fillQueue } from "./fill-queue.ts";
import type { SmtpOptions } from "./smtp.ts";

const EVERY_MS = 15_000;
/** How long a mail on its way may delay the end of the process. */
const STOP_MS = 2_000;
const KEPT_MS = 90 * 86_400_000;

export interface MailRuns {
  /** Stops the timer and gives up what is on its way, which is tried again after the next start. Nothing is written after it. */
  stop(): Promise<void>;
}

export interface MailRunsSetup {
  readonly app: Pick<Springline, "db" | "env" | "now" | "newId" | "log">;
  readonly everyMs?: number;
  readonly smtp?: Omit<SmtpOptions, "signal">;
}

export function startMailRuns({ app, everyMs = EVERY_MS, smtp = {} }: MailRunsSetup): MailRuns {
  const stopping = new AbortController();
  let running: Promise<void> | null = null;
  const timer = setInterval(() => {
    running ??= mailRun(app, { ...smtp, signal: stopping.signal }).finally(() => {
      running = null;
    });
  }, everyMs);
  timer.unref();
  return {
    async stop() {
      clearInterval(timer);
      stopping.abort();
      let late: NodeJS.Timeout | undefined;
      const tooLate = new Promise<void>((resolve) => {
        late = setTimeout(resolve, STOP_MS);
      });
      await Promise.race([running, tooLate]);
      clearTimeout(late);
    },
  };
}

/** One run. Never rejects: a fault is written to the log, and the next run begins afresh. */
export async function mailRun(app: MailRunsSetup["app"], options: SmtpOptions = {}): Promise<void> {
  // In a damaged file nothing is written, so nothing can be sent either: it would be sent again.
  if (app.db.damage.known !== null) return;
  try {
    fillQueue(app);
    await deliverDue(app, options);
    if (!options.signal?.aborted) deleteSentMails(app.db, app.now() - KEPT_MS);
  } catch (err) {
    app.log.error({ err }, "mails could not be sent");
  }
}
