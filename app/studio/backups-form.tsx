"use client";
/** When and where backups are made. Uncontrolled: what was typed stays when the server refuses. */
import type { FormEvent } from "react";
import type { BackupSettingsView } from "#server/backup/backup-settings.ts";
import { Dialog } from "../_parts/dialog.tsx";
import { FormField, textOf } from "../_parts/form-field.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { SendButton } from "../_parts/send-button.tsx";
import { useSend } from "../_parts/use-send.ts";
import { BACKUPS, timeHint } from "./backups-words.ts";
import styles from "./studio.module.css";

interface BackupsFormProps {
  readonly settings: BackupSettingsView;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

export function BackupsForm({ settings, onClose, onDone }: BackupsFormProps) {
  const { sending, save } = useBackupsForm(settings, onDone);
  return (
    <Dialog title="Backups" onClose={onClose}>
      <form className={styles.form} onSubmit={save}>
        <PlanFields settings={settings} />
        <KeepFields keep={settings.keep} />
        <ProblemLine say={sending.problem} />
        <SendButton busy={sending.busy} doing="Saving…">
          Save
        </SendButton>
      </form>
    </Dialog>
  );
}

function useBackupsForm(settings: BackupSettingsView, onDone: () => void) {
  const sending = useSend();
  const save = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const number = (name: string) => Number(textOf(form, name));
    const saved = await sending.run("PUT", "/api/studio/backups", {
      on: form.get("on") !== null,
      time: textOf(form, "time"),
      folder: textOf(form, "folder"),
      copyFolder: textOf(form, "copyFolder"),
      keep: { days: number("days"), weeks: number("weeks"), months: number("months") },
      seen: settings.seen,
    });
    if (saved !== undefined) onDone();
  };
  return { sending, save };
}

function PlanFields({ settings }: Pick<BackupsFormProps, "settings">) {
  return (
    <>
      <label className="check">
        <input type="checkbox" name="on" defaultChecked={settings.on} />
        Back up every day
      </label>
      <FormField label="Time of day" name="time" type="time" defaultValue={settings.time} hint={timeHint(settings)} />
      <FormField
        label="Folder"
        name="folder"
        maxLength={1000}
        autoComplete="off"
        spellCheck={false}
        defaultValue={settings.folder}
        placeholder={settings.usualFolder}
        hint={BACKUPS.folderHint}
      />
      <FormField
        label="Copy folder"
        name="copyFolder"
        maxLength={1000}
        autoComplete="off"
        spellCheck={false}
        defaultValue={settings.copyFolder}
        hint={BACKUPS.copyHint}
      />
    </>
  );
}

function KeepFields({ keep }: Pick<BackupSettingsView, "keep">) {
  const field = { type: "number", required: true, inputMode: "numeric" } as const;
  return (
    <fieldset className={styles.form}>
      <legend>How many to keep: the last backup of each</legend>
      <div className={styles.pair}>
        <FormField label="Days" name="days" {...field} min={1} max={60} defaultValue={keep.days} />
        <FormField label="Weeks" name="weeks" {...field} min={0} max={104} defaultValue={keep.weeks} />
        <FormField label="Months" name="months" {...field} min={0} max={120} defaultValue={keep.months} />
      </div>
      <p className="quiet small">{BACKUPS.keepHint}</p>
    </fieldset>
  );
}
