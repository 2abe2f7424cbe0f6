"use client";
/** Backups: when, where, how many are kept, what became of the last, and one at once. */
import { useRouter } from "next/navigation";
import { useEffect, useRef, useState } from "react";
import { sizeWords } from "#lib/numbers/size-words.ts";
import type { BackupSettingsView } from "#server/backup/backup-settings.ts";
import type { BackupState } from "#server/context/care.ts";
import { LocalTime } from "../_parts/local-time.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useSend } from "../_parts/use-send.ts";
import { BackupsForm } from "./backups-form.tsx";
import { BACKUPS, copyWords, keepWords, planWords } from "./backups-words.ts";
import styles from "./studio.module.css";

interface BackupsPartProps {
  readonly settings: BackupSettingsView;
  readonly state: BackupState;
}

export function BackupsPart({ settings, state }: BackupsPartProps) {
  const router = useRouter();
  const [editing, setEditing] = useState(false);
  const done = () => {
    setEditing(false);
    router.refresh();
  };
  return (
    <>
      <div className="spread">
        <h2>Backups</h2>
        <button type="button" className="button" onClick={() => setEditing(true)}>
          Change backups
        </button>
      </div>
      <p className="quiet">{BACKUPS.intro}</p>
      {settings.on ? (
        <p className={styles.mailServer}>
          {planWords(settings)} {keepWords(settings)}
        </p>
      ) : (
        <p className={`notice ${styles.mailServer}`}>{BACKUPS.off}</p>
      )}
      {settings.on && !settings.apart ? <p className="quiet small">{BACKUPS.sameDisk}</p> : null}
      <Course state={state} />
      <Copy folder={settings.copyFolder} />
      {editing ? <BackupsForm settings={settings} onClose={() => setEditing(false)} onDone={done} /> : null}
    </>
  );
}

function Copy({ folder }: { readonly folder: string }) {
  return (
    <p className={styles.mailServer}>
      {folder === "" ? (
        BACKUPS.noCopy
      ) : (
        <>
          {copyWords(folder)} <a href="/studio/health">Health</a> says how old it is.
        </>
      )}
    </p>
  );
}

/** How often a running backup is looked at, ms. */
const LOOK_MS = 1000;

function Course({ state: shown }: Pick<BackupsPartProps, "state">) {
  const sending = useSend();
  const [newer, setNewer] = useState<BackupState | null>(null);
  const state = newer ?? shown;
  const running = state.runningSince !== null;
  useLook(running, setNewer);
  const now = async () => {
    const begun = await sending.run<BackupState>("POST", "/api/studio/backups/now");
    if (begun) setNewer(begun);
  };
  return (
    <>
      <div role="status" className={styles.mailServer}>
        <Last state={state} />
      </div>
      {state.problem && !running ? <Problem problem={state.problem} /> : null}
      <div className="acts">
        <button
          type="button"
          className="button"
          aria-disabled={running || sending.busy}
          onClick={running ? undefined : now}
        >
          {running ? "Backing up…" : "Back up now"}
        </button>
      </div>
      <ProblemLine say={sending.problem} />
      <Kept state={state} />
    </>
  );
}

function useLook(running: boolean, onState: (state: BackupState) => void): void {
  const { run } = useSend();
  const asking = useRef({ run, onState });
  asking.current = { run, onState };
  useEffect(() => {
    if (!running) return;
    const timer = setInterval(async () => {
      const state = await asking.current.run<BackupState>("GET", "/api/studio/backups");
      if (state) asking.current.onState(state);
    }, LOOK_MS);
    return () => clearInterval(timer);
  }, [running]);
}

function Last({ state: { runningSince, last, nextAt } }: Pick<BackupsPartProps, "state">) {
  if (runningSince !== null) return <p>A backup is being made and restored for a test. People can go on working.</p>;
  return (
    <p>
      {last === null ? (
        BACKUPS.none
      ) : (
        <>
          The last was made <LocalTime at={last.at} />, passed its test and has {sizeWords(last.bytes)}.
        </>
      )}
      {nextAt === null ? null : (
        <>
          {" "}
          The next is due <LocalTime at={nextAt} />.
        </>
      )}
    </p>
  );
}

function Problem({ problem: { at, says, nextAt } }: { readonly problem: NonNullable<BackupState["problem"]> }) {
  return (
    <p className="problem">
      <LocalTime at={at} />: {says}
      {nextAt === null ? null : (
        <>
          {" "}
          It is tried again <LocalTime at={nextAt} />.
        </>
      )}
    </p>
  );
}

function Kept({ state: { kept } }: Pick<BackupsPartProps, "state">) {
  if (kept.length === 0) return null;
  return (
    <details>
      <summary>{kept.length === 1 ? "1 backup is kept" : `${kept.length} backups are kept`}</summary>
      <ul className={styles.devices}>
        {kept.map(({ name, at, bytes }) => (
          <li key={name}>
            <span className={styles.mailFacts}>
              <LocalTime at={at} year />, {sizeWords(bytes)}
            </span>
            <span className={`quiet small ${styles.fileName}`}>{name}</span>
          </li>
        ))}
      </ul>
    </details>
  );
}
