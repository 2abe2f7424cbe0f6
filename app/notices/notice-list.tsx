"use client";
/** Notices by day, the newest first; each is a sentence that opens the place it is about. */
import Link from "next/link";
import { useFormats } from "#app/_parts/formats.tsx";
import { dayOfMoment, timeOfMoment } from "#lib/formats/dates.ts";
import type { Formats } from "#lib/formats/formats.ts";
import type { ToldNotice } from "#server/notices/told-notice.ts";
import styles from "./notices.module.css";

interface ListProps {
  /** The newest first. */
  readonly notices: readonly ToldNotice[];
}

export function NoticeList({ notices }: ListProps) {
  const f = useFormats();
  return (
    <>
      {byDay(notices, f).map(({ day, of }) => (
        <section key={day} className={styles.day}>
          <h2>{day}</h2>
          <ul className={`hung ${styles.lines}`}>
            {of.map((notice) => (
              <Line key={notice.id} notice={notice} />
            ))}
          </ul>
        </section>
      ))}
    </>
  );
}

function Line({ notice }: { readonly notice: ToldNotice }) {
  const f = useFormats();
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
          {timeOfMoment(at, f)}
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

function byDay(notices: readonly ToldNotice[], f: Formats): Day[] {
  const days: Day[] = [];
  for (const notice of notices) {
    const day = dayOfMoment(notice.at, f);
    const last = days.at(-1);
    if (last?.day === day) last.of.push(notice);
    else days.push({ day, of: [notice] });
  }
  return days;
}
