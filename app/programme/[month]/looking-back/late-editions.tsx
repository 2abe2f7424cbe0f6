/** Which changes of which editions keep coming late. */
import Link from "next/link";
import type { LateChange, LateFitting } from "#lib/look-back/late-changes.ts";
import { plural } from "#lib/plan/format.ts";
import { fittingName, LOOK_BACK, lateChangeWords } from "./look-back-words.ts";

interface Late {
  readonly planId: string;
  readonly edition: number;
  readonly title: string;
  readonly classes: number;
  readonly changes: readonly LateChange[];
  readonly fittings: readonly LateFitting[];
}

export function LateEditions({ late }: { readonly late: readonly Late[] }) {
  return (
    <section>
      <h2>{LOOK_BACK.late}</h2>
      <p className="quiet">{late.length === 0 ? LOOK_BACK.noneLate : LOOK_BACK.lateWhat}</p>
      {late.map(({ planId, edition, title, classes, changes, fittings }) => (
        <section key={`${planId} ${edition}`}>
          <h3>
            <Link href={`/editions/${planId}/${edition}/classes`}>{title}</Link>, edition {edition},{" "}
            {plural(classes, "class", "classes")}
          </h3>
          <ul>
            {changes.map((change) => (
              <li key={change.item}>{lateChangeWords(change)}</li>
            ))}
          </ul>
          <p className="small">
            {fittings.map((one) => `${fittingName(one)}: ${one.late} of ${one.of} late`).join(" · ")}
          </p>
        </section>
      ))}
    </section>
  );
}
