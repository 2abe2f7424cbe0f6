"use client";
import { useFormats } from "#app/_parts/formats.tsx";
import { KIND_WORDS } from "#lib/plan/cue-words.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";
/** A rule's example as a small class, and what the rule finds in it. */
import { findingWords } from "#lib/rules/finding-words.ts";
import { LEVEL_WORDS } from "#lib/rules/level-words.ts";
import { type ExcerptItem, excerptOf } from "./excerpt.ts";
import styles from "./rules.module.css";

interface ExampleProps {
  /** What is right or wrong here, as the rule's file says it. */
  readonly say: string;
  readonly plan: Plan;
  /** Show what is said in it. */
  readonly lines: boolean;
  /** What the rule finds with its usual limits. */
  readonly findings: readonly Finding[];
  /** What it finds with this studio's level and limits, where that differs. */
  readonly here: readonly Finding[] | null;
}

export function Example({ say, plan, lines, findings, here }: ExampleProps) {
  const { facts, items } = excerptOf(plan, lines, useFormats());
  const concerned = new Set(findings.flatMap((f) => f.items));
  return (
    <figure className={styles.example}>
      <figcaption>{`${say.charAt(0).toUpperCase()}${say.slice(1)}`}</figcaption>
      {facts.length > 0 && <p className={styles.facts}>{facts.join(" · ")}</p>}
      <ol className={`hung ${styles.excerpt}`}>
        {items.map((item) => (
          <Item key={item.id} item={item} concerned={concerned.has(item.id)} />
        ))}
      </ol>
      {findings.map((finding, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two findings of one rule may say the same
        <Said key={i} finding={finding} />
      ))}
      {here !== null && (
        <div className={styles.here}>
          <p className="small">With your studio’s settings:</p>
          {here.length === 0 ? <p>It finds nothing.</p> : null}
          {here.map((finding, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: as above
            <Said key={i} finding={finding} />
          ))}
        </div>
      )}
    </figure>
  );
}

function Said({ finding }: { readonly finding: Finding }) {
  return (
    <p className={styles.said} data-level={finding.level}>
      <span className={styles.level}>{LEVEL_WORDS[finding.level]}</span>
      {findingWords(finding, useFormats())}
    </p>
  );
}

function Item({ item, concerned }: { readonly item: ExcerptItem; readonly concerned: boolean }) {
  return (
    <li data-kind={item.kind} data-concerned={concerned || undefined}>
      {item.change && <p className={styles.change}>{item.change}</p>}
      <div className={styles.row}>
        <time className={styles.at}>{item.at}</time>
        <div>
          <p className={styles.name}>
            {item.name} {item.lasts && <span className={styles.lasts}>{item.lasts}</span>}
            {concerned && <span className="visually-hidden">, found</span>}
          </p>
          {item.details && <p className={styles.details}>{item.details}</p>}
          {item.lines.map((line) => (
            <p key={`${line.kind}${line.text}`} className={styles.line}>
              <span>{KIND_WORDS[line.kind]}</span> {line.text}
            </p>
          ))}
        </div>
      </div>
    </li>
  );
}
