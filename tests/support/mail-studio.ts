/** A studio whose mails go to a real SMTP server on loopback, with a clock that a test moves. */
import { insertNotice } from "#db/repos/notice-repo.ts";
import type { KindChoices, NoticeKind } from "#lib/notices/kinds.ts";
import { mailRun } from "#server/mail/mail-runs.ts";
import { type MailSettings, saveMailSettings } from "#server/mail/mail-settings.ts";
import type { SmtpOptions } from "#server/mail/smtp.ts";
import { chooseNotices } from "#server/notices/notice-choices.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { type MailServer, type MailServerSetup, startMailServer } from "./mail-server.ts";
import { must, openStudio, type PlanStudio, ROOMS, type StudioSetup, type Who } from "./plan-studio.ts";

export const ADDRESS = "https://plans.tholepin.example";
const MINUTE_MS = 60_000;

export interface MailStudio {
  readonly s: PlanStudio;
  readonly server: MailServer;
  /** A plan of Jonas's. */
  readonly planId: string;
  /** Tells `who` of something, now. */
  tell(who: Who, kind?: NoticeKind): void;
  choose(who: Who, kinds: KindChoices, digestAt?: string | null, timeZone?: string): void;
  /** Runs once, after moving the clock by so many minutes. */
  run(minutes?: number, options?: SmtpOptions): Promise<void>;
  stop(): Promise<void>;
}

export const settingsFor = (server: Pick<MailServer, "port">, change: Partial<MailSettings> = {}) => ({
  ...{ host: "localhost", port: server.port, security: "starttls" as const, user: "", from: "studio@tholepin.example" },
  ...{ address: ADDRESS, password: null, passwordLost: false },
  ...change,
});

export async function openMailStudio(setup: MailServerSetup & StudioSetup = {}): Promise<MailStudio> {
  const s = openStudio(setup);
  const server = await startMailServer(setup);
  const { password: _, passwordLost: __, ...plain } = settingsFor(server, { user: setup.user?.name ?? "" });
  const password = setup.user ? { password: setup.user.password } : {};
  must(saveMailSettings(s.app, s.people.petra, { ...plain, ...password, seen: 0 }));
  const made = createPlan(s.app, s.people.jonas, {
    title: "Pull and press",
    lengthSeconds: 600,
    roomId: ROOMS.harbour,
  });
  const planId = must(made).id;
  return {
    s,
    server,
    planId,
    tell(who, kind = "comment") {
      const data = { byId: who === "ines" ? "jonas" : "ines", threadId: "t1" };
      insertNotice(s.db, { userId: who, at: s.app.now(), kind, planId, data });
    },
    choose(who, kinds, digestAt = null, timeZone = "Europe/London") {
      must(chooseNotices(s.app, s.people[who], { digestAt, timeZone, kinds }));
    },
    async run(minutes = 0, options = {}) {
      s.advance(minutes * MINUTE_MS);
      await mailRun(s.app, { ca: server.ca, waitMs: 2000, ...options });
    },
    async stop() {
      await server.stop();
      await s.stop();
    },
  };
}
