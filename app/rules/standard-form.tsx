"use client";
/** Where a manager sets one rule's level and limits for the studio. What that would change in plans is shown before it is saved. */
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { SendButton } from "#app/_parts/send-button.tsx";
import { useSend } from "#app/_parts/use-send.ts";
import type { AnyRule } from "#lib/rules/define/types.ts";
import { limitsOf } from "#lib/rules/limits.ts";
import { ruleById } from "#lib/rules/registry.ts";
import type { StudioStandard } from "#lib/rules/studio-standard.ts";
import type { KeptStandard } from "#server/studio/change-standard.ts";
import { LevelField } from "./level-field.tsx";
import { LimitField } from "./limit-field.tsx";
import styles from "./rules.module.css";
import {
  differing,
  isAsKept,
  NOTHING_CHANGED,
  readStandardDraft,
  type StandardDraft,
  standardDraftOf,
} from "./standard-draft.ts";
import { TrialWords } from "./trial-words.tsx";

interface FormProps {
  readonly ruleId: string;
  readonly standard: StudioStandard | null;
}

export function StandardForm({ ruleId, standard }: FormProps) {
  const rule = ruleById(ruleId);
  return rule ? <Form rule={rule} standard={standard} /> : null;
}

function Form({ rule, standard }: { readonly rule: AnyRule; readonly standard: StudioStandard | null }) {
  const { draft, read, kept, done, say, sending, change, put } = useStandard(rule, standard);
  const save = async (event: FormEvent) => {
    event.preventDefault();
    if (!read.standard) return;
    if (isAsKept(rule, read.standard, kept)) say(NOTHING_CHANGED);
    else await put(read.standard, "Saved. Open plans were checked again.");
  };
  const reset = async () => {
    if (kept !== null) await put(null, "Back to the usual. Open plans were checked again.");
  };
  return (
    <form className={styles.form} onSubmit={save} noValidate>
      <LevelField rule={rule} level={draft.level} onChoose={(level) => change({ level })} />
      {limitsOf(rule).map((limit) => (
        <LimitField
          key={limit.name}
          limit={limit}
          value={draft.values[limit.name]}
          units={draft.units}
          problem={read.problems[limit.name]}
          onChange={(value) => change({ values: { ...draft.values, [limit.name]: value } })}
        />
      ))}
      <TrialWords url={urlOf(rule)} standard={differing(rule, read.standard)} kept={kept} />
      <div className="acts">
        <SendButton busy={sending.busy} doing="Saving…" disabled={read.standard === null}>
          Save for your studio
        </SendButton>
        <button type="button" className="button" aria-disabled={sending.busy || kept === null} onClick={reset}>
          Back to the usual level and limits
        </button>
      </div>
      <ProblemLine say={sending.problem} />
      <p role="status" className={done ? "done" : undefined}>
        {done}
      </p>
    </form>
  );
}

const urlOf = (rule: AnyRule): string => `/api/standards/${rule.id}`;

function useStandard(rule: AnyRule, standard: StudioStandard | null) {
  const router = useRouter();
  const f = useFormats();
  const sending = useSend();
  const [kept, setKept] = useState(standard);
  const [draft, setDraft] = useState<StandardDraft>(() => standardDraftOf(rule, standard, f));
  const [done, setDone] = useState("");
  const change = (part: Partial<StandardDraft>) => {
    setDone("");
    sending.clear();
    setDraft({ ...draft, ...part });
  };
  const put = async (wanted: StudioStandard | null, said: string) => {
    const answer = await sending.run<KeptStandard>("PUT", urlOf(rule), { standard: wanted, seen: kept });
    if (!answer) return;
    setKept(answer.standard);
    setDraft(standardDraftOf(rule, answer.standard, f));
    setDone(said);
    router.refresh();
  };
  return { draft, read: readStandardDraft(rule, draft, kept), kept, done, say: setDone, sending, change, put };
}
