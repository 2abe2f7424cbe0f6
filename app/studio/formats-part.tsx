"use client";
/** The studio's clock and week, and how dates and units are written for everybody who has not chosen. */
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import type { LanguageOption } from "#lib/formats/format-options.ts";
import type { StudioFormats } from "#server/studio/change-studio-formats.ts";
import { changedFields, FormatFields } from "../_parts/format-fields.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useSend } from "../_parts/use-send.ts";
import { ZoneField } from "../_parts/zone-field.tsx";
import styles from "./studio.module.css";

interface PartProps {
  readonly formats: StudioFormats;
  readonly languages: readonly LanguageOption[];
  readonly zones: readonly string[];
}

export function FormatsPart({ formats, languages, zones }: PartProps) {
  const { now, seen, said, change, submit, busy, problem } = useStudioFormats(formats);
  return (
    <form className={styles.form} onSubmit={submit}>
      <h2>Time zone, week, dates and units</h2>
      <p className="quiet small">
        For rooms, devices and everybody who has not chosen otherwise under Settings. Plans, months and their files keep
        newtons, millimetres and ISO weeks.
      </p>
      <div className={styles.formats}>
        <Zone zone={now.zone} was={seen.zone} zones={zones} onChange={(zone) => change({ zone })} />
        <FormatFields
          value={now}
          languages={languages}
          onChange={(chosen) => change(chosen as Partial<StudioFormats>)} // without a studio none is null
        />
      </div>
      <p className="acts">
        <button type="submit" className="button" aria-disabled={busy}>
          Save
        </button>
        <span role="status">{said}</span>
      </p>
      <ProblemLine say={problem} />
    </form>
  );
}

function useStudioFormats(formats: StudioFormats) {
  const router = useRouter();
  const sending = useSend();
  const [seen, setSeen] = useState(formats);
  const [now, setNow] = useState(formats);
  const [said, setSaid] = useState("");
  const change = (part: Partial<StudioFormats>) => {
    setSaid("");
    setNow((was) => ({ ...was, ...part }));
  };
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setSaid("");
    const sent = await sending.run<StudioFormats>("PUT", "/api/studio/formats", {
      formats: changedFields(now, seen),
      seen: changedFields(seen, now),
    });
    if (sent === undefined) return;
    setSeen(sent);
    setNow(sent);
    setSaid("Saved. Open months follow at once, other open pages when they are next loaded.");
    router.refresh();
  };
  return { now, seen, said, change, submit, busy: sending.busy, problem: sending.problem };
}

interface ZoneProps {
  readonly zone: string;
  /** As it is kept. */
  readonly was: string;
  readonly zones: readonly string[];
  readonly onChange: (zone: string) => void;
}

function Zone({ zone, was, zones, onChange }: ZoneProps) {
  return (
    <div>
      <ZoneField label="Time zone of the studio" zone={zone} zones={[was, ...zones]} onChoose={onChange} />
      {zone === was ? null : (
        <p className="notice" role="alert">
          Every class keeps its time on the wall clock, so in everybody's calendar it moves to another moment.
        </p>
      )}
    </div>
  );
}
