"use client";
/** The plan's talk as it is counted now and at another rate. */
import { useMemo } from "react";
import { talkPercent } from "#lib/cues/class-talk.ts";
import { clockTime, plainNumber } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { speechOf } from "#lib/talk/talk.ts";
import { atRate, talkSums } from "./effect.ts";
import styles from "./rate.module.css";

export function WhatChanges({ plan, rate }: { plan: Plan; rate: number }) {
  const now = useMemo(() => talkSums(plan), [plan]);
  const then = useMemo(() => talkSums(atRate(plan, rate)), [plan, rate]);
  const rows = [
    ["Syllables a second", plainNumber(speechOf(plan).syllablesPerSecond), plainNumber(rate)],
    ["Talk", clockTime(now.talk.seconds), clockTime(then.talk.seconds)],
    ["Of the class", talkPercent(now.talk), talkPercent(then.talk)],
    ["Lines set aside", String(now.talk.aside), String(then.talk.aside)],
    ["Findings", String(now.findings), String(then.findings)],
  ] as const;
  return (
    <table className={styles.changes}>
      <caption>What it changes in this plan</caption>
      <thead>
        <tr>
          <td />
          <th scope="col">now</th>
          <th scope="col">at your rate</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([what, before, after]) => (
          <tr key={what} data-same={before === after || undefined}>
            <th scope="row">{what}</th>
            <td>{before}</td>
            <td>{after}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
