"use client";
/** Notices by day, the newest first; each is a sentence that opens the place it is about. */
import Link from "next/link";
import { dayInZone, timeInZone } from "#lib/calendar/local-day.ts";
import type { ToldNotice } from "#server/notices/told-notice.ts";
import styles from "./notices.module.css";
import { useZone } from "./use-zone.ts";

interface ListProps {
  /** The newest first. */
  readonly notices: readonly ToldNotice[];
  /** The zone that days are told in until the browser's is known. */
  readonly zone: string;
}

export function NoticeList({ notices, zone: before }: ListProps) {
  const zone = useZone(before);
  return (
    <>
      {byDay(notices, zone).map(({ day, of }) => (
        <section key={day} className={styles.day}>
          <h2>{day}</h2>
          <ul className={`hung ${styles.lines}`}>
            {of.map((notice) => (
              <Line key={notice.id} notice={notice} zone={zone} />
            ))}
          </ul>
        </section>
      ))}
    </>
  );
}

function Line({ notice, zone }: { readonly notice: ToldNotice; readonly zone: string }) {
  const { at, seen, sentence, lines, path } = notice;
  return (
    <li data-new={!seen || undefined}>
      {/* Not fetched before it is opened: opening it marks it as seen. */}
      <Link href={path} prefetch={false}>
        {sentence}
      </Link>
      <span className={styles.when}>
        {seen ? null : <b>new</b>}
        <time className="quiet small" dateTime={new Date(at).toISOString()}>
          {timeInZone(at, zone)}
        </time>
      </span>
      {lines.length > 0 && (
        <details className={styles.each}>
          <summary>Each of them</summary>
          <ul className="hung">
            {lines.map((line) => (
              <li key={line.path}>
                <Link href={line.path} prefetch={false}>
                  {line.sentence}
                </Link>
              </li>
            ))}
          </ul>
        </details>
      )}
    </li>
  );
}

interface Day {
  readonly day: string;
  readonly of: ToldNotice[];
}

function byDay(notices: readonly ToldNotice[], zone: string): Day[] {
  const days: Day[] = [];
  for (const notice of notices) {
    const day = dayInZone(notice.at, zone);
    const last = days.at(-1);
    if (last?.day === day) last.of.push(notice);
    else days.push({ day, of: [notice] });
  }
  return days;
}
