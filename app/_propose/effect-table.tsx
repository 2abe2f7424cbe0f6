"use client";
import { useFormats } from "#app/_parts/formats.tsx";
import type { Effect } from "#lib/proposal/effect.ts";
import { effectChange, effectValue } from "#lib/proposal/part-words.ts";
import type { Finding } from "#lib/rules/define/types.ts";
/** The effect of a proposal: numbers now and with it, with the sign of the change, and findings that go and come. */
import { findingWords } from "#lib/rules/finding-words.ts";
import styles from "./propose.module.css";
import { EFFECT } from "./propose-words.ts";

export function EffectTable({ effect }: { readonly effect: Effect }) {
  const { gone, come, changed } = effect;
  return (
    <div className={styles.effect}>
      <Numbers numbers={effect.numbers} />
      {gone.length + come.length + changed.length === 0 && <p className="quiet small">{EFFECT.sameFindings}</p>}
      <Findings title={EFFECT.come} sign="+" findings={come} />
      <Findings title={EFFECT.gone} sign="−" findings={gone} />
      <Findings title={EFFECT.changed} findings={changed} />
    </div>
  );
}

function Numbers({ numbers }: Pick<Effect, "numbers">) {
  const f = useFormats();
  return (
    <table>
      <caption>{EFFECT.caption}</caption>
      <thead>
        <tr>
          <td />
          {[EFFECT.before, EFFECT.after, EFFECT.change].map((name) => (
            <th key={name} scope="col" className="number">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {numbers.map((one) => (
          <tr key={one.name}>
            <th scope="row">{one.name}</th>
            <td className="number">{effectValue(one.before, one.unit, f)}</td>
            <td className="number">{effectValue(one.after, one.unit, f)}</td>
            <td className="number">{effectChange(one, f)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const LEVELS = { must: "must fix", look: "look again", info: "for information" } as const;

interface FindingsProps {
  readonly title: string;
  readonly sign?: "+" | "−" | "";
  readonly findings: readonly Finding[];
}

function Findings({ title, sign = "", findings }: FindingsProps) {
  const f = useFormats();
  if (findings.length === 0) return null;
  return (
    <div>
      <p className="small">
        {title}: {sign}
        {findings.length}
      </p>
      <ul className={styles.findings}>
        {findings.map((finding) => (
          <li key={`${finding.key ?? finding.rule} ${finding.message}`}>
            <b>{LEVELS[finding.level]}</b> {findingWords(finding, f)}
          </li>
        ))}
      </ul>
    </div>
  );
}
