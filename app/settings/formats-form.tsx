"use client";
/** How dates and units are written for this person; what they leave is as the studio has it. */
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import type { LanguageOption } from "#lib/formats/format-options.ts";
import type { OwnFormatsView } from "#server/formats/own-formats.ts";
import { changedFields, FormatFields } from "../_parts/format-fields.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { SendButton } from "../_parts/send-button.tsx";
import { useSend } from "../_parts/use-send.ts";
import styles from "./settings.module.css";

interface FormProps extends OwnFormatsView {
  readonly languages: readonly LanguageOption[];
}

export function FormatsForm({ own, studio, languages }: FormProps) {
  const router = useRouter();
  const sending = useSend();
  const [seen, setSeen] = useState(own);
  const [now, setNow] = useState(own);
  const [said, setSaid] = useState("");
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setSaid("");
    const sent = await sending.run<OwnFormatsView>("PUT", "/api/me/formats", changedFields(now, seen));
    if (sent === undefined) return;
    setSeen(sent.own);
    setNow(sent.own);
    setSaid("Saved. Pages that are open elsewhere follow when they are next loaded.");
    router.refresh();
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      <FormatFields
        value={now}
        studio={studio}
        languages={languages}
        onChange={(change) => {
          setSaid("");
          setNow((was) => ({ ...was, ...change }));
        }}
      />
      <ProblemLine say={sending.problem} />
      <SendButton busy={sending.busy} doing="Saving…">
        Save dates and units
      </SendButton>
      <p role="status">{said}</p>
    </form>
  );
}
