/** The studio for its manager: rooms and measured springs, cue devices, what months say of it, the sign-off policy, e-mail, backups, the export and the studio standards. */
import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { languageOptions } from "#lib/formats/format-options.ts";
import { can } from "#lib/policy/can.ts";
import { showBackupSettings } from "#server/backup/backup-settings.ts";
import { readBackupState } from "#server/backup/manage-backups.ts";
import { readFirstSteps } from "#server/desk/first-steps.ts";
import { listDevices } from "#server/devices/manage-devices.ts";
import { showMailSettings } from "#server/mail/mail-settings.ts";
import { readMailState } from "#server/mail/manage-mail.ts";
import { monthRooms, readMonthSettings } from "#server/month-facts/month-settings.ts";
import { listRooms } from "#server/rooms/manage-rooms.ts";
import { showStudioFormats } from "#server/studio/change-studio-formats.ts";
import { FirstStepsList } from "../_parts/first-steps.tsx";
import { requirePerson, type Visit } from "../_shell/person.ts";
import { seePlace } from "../_shell/see-place.ts";
import { Shell } from "../_shell/shell.tsx";
import { BackupsPart } from "./backups-part.tsx";
import { DevicesPart } from "./devices-part.tsx";
import { ExportPart } from "./export-part.tsx";
import { FormatsPart } from "./formats-part.tsx";
import { MailPart } from "./mail-part.tsx";
import { MonthPart } from "./month-part.tsx";
import { NamePart } from "./name-part.tsx";
import { RoomsPart } from "./rooms-part.tsx";
import { SignOffPolicy } from "./sign-off-policy.tsx";
import { StandardsPart } from "./standards-part.tsx";
import styles from "./studio.module.css";

export const metadata: Metadata = { title: "Studio" };

/** Long because: one page, from top to bottom. */
export default async function StudioPage() {
  const visit = await requirePerson("/studio");
  const { app, who, studio } = visit;
  const [rooms, devices] = [listRooms(app, who.actor), listDevices(app, who.actor)];
  const mail = showMailSettings(app, who.actor);
  const mails = readMailState(app, who.actor);
  const formats = showStudioFormats(app, who.actor);
  const months = readMonthSettings(app, who.actor);
  if (!can(who.actor, "rooms.manage") || !rooms.ok || !devices.ok || !mail.ok || !mails.ok || !months.ok || !formats.ok)
    notFound();
  await seePlace(app, who.actor, { kinds: ["mail-failed", "backup-failed"] });
  return (
    <Shell visit={visit} section="studio">
      <Head name={studio.name} town={studio.town} />
      <section className={styles.part} id="name">
        <NamePart name={studio.name} town={studio.town} />
      </section>
      <section className={styles.part} id="formats">
        <FormatsPart formats={formats.value} languages={languageOptions()} zones={Intl.supportedValuesOf("timeZone")} />
      </section>
      <section className={styles.part} id="rooms">
        <RoomsPart rooms={rooms.value} />
      </section>
      <section className={styles.part} id="devices">
        <DevicesPart devices={devices.value} rooms={rooms.value.map(({ id, name }) => ({ id, name }))} />
      </section>
      <section className={styles.part} id="month">
        <MonthPart
          settings={months.value}
          rooms={Object.entries(monthRooms(app)).map(([id, room]) => ({ id, ...room }))}
        />
      </section>
      <section className={styles.part} id="policy">
        <SignOffPolicy soleAuthorMaySign={studio.soleAuthorMaySign} />
      </section>
      <section className={styles.part} id="mail">
        <MailPart settings={mail.value} state={mails.value} address={app.env.origin} />
      </section>
      <section className={styles.part} id="backups">
        <Backups app={app} who={who} />
      </section>
      <section className={styles.part} id="export">
        <ExportPart />
      </section>
      <section className={styles.part} id="standards">
        <StandardsPart own={studio.standards} formats={visit.formats} />
      </section>
      <FirstStepsAgain app={app} who={who} />
    </Shell>
  );
}

function Head({ name, town }: Pick<Visit["studio"], "name" | "town">) {
  return (
    <div className="spread">
      <div>
        <h1>{name}</h1>
        <p className="quiet">{town}</p>
      </div>
      <a className="button" href="/studio/health">
        Health
      </a>
    </div>
  );
}

function Backups({ app, who }: Pick<Visit, "app" | "who">) {
  const settings = showBackupSettings(app, who.actor);
  const state = readBackupState(app, who.actor);
  return settings.ok && state.ok ? <BackupsPart settings={settings.value} state={state.value} /> : null;
}

/** The first steps again, for who has put them away or wants to see them done. */
function FirstStepsAgain({ app, who }: Pick<Visit, "app" | "who">) {
  const first = readFirstSteps(app, who.actor);
  if (!first.ok) return null;
  return (
    <section className={styles.part} id="first-steps">
      <FirstStepsList {...first.value} />
    </section>
  );
}
