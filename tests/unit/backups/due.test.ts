/** When a backup is due, and what its file is called. */
import { describe, expect, test } from "vitest";
import { nameStamp, scheduledAt, scheduledName } from "#lib/backups/backup-name.ts";
import { isBackupDue, nextBackupAt } from "#lib/backups/due.ts";

const at = (text: string) => Date.parse(text);
const asked = (lastAt: string, now: string) => ({
  time: "03:30",
  zone: "Europe/Lisbon",
  lastAt: at(lastAt),
  now: at(now),
});

describe("a backup", () => {
  test.each([
    ["before its time", "2026-11-29T03:31Z", "2026-11-30T03:29Z", false],
    ["at its time", "2026-11-29T03:31Z", "2026-11-30T03:30Z", true],
    ["made for today", "2026-11-30T03:30Z", "2026-11-30T23:00Z", false],
    ["missed while the server was down for a week", "2026-11-22T03:30Z", "2026-11-30T12:00Z", true],
    ["made by a person after the time", "2026-11-30T09:00Z", "2026-11-30T12:00Z", false],
    ["made by a person before the time", "2026-11-30T02:00Z", "2026-11-30T04:00Z", true],
    ["dated after now, by a clock that was wrong", "2040-01-01T00:00Z", "2026-11-30T04:00Z", true],
  ])("%s", (_, lastAt, now, due) => {
    expect(isBackupDue(asked(lastAt, now))).toBe(due);
  });

  test("is due by the studio's wall clock, in summer and in winter", () => {
    expect(nextBackupAt(asked("2026-07-01T09:00Z", "2026-07-01T10:00Z"))).toBe(at("2026-07-02T02:30Z"));
    expect(nextBackupAt(asked("2026-11-30T09:00Z", "2026-11-30T10:00Z"))).toBe(at("2026-12-01T03:30Z"));
    // A missed one is due now.
    expect(nextBackupAt(asked("2026-11-20T09:00Z", "2026-11-30T10:00Z"))).toBe(at("2026-11-30T10:00Z"));
  });

  test("at a time that the clock skips in spring is still made that day", () => {
    const skipped = {
      time: "01:30",
      zone: "Europe/Lisbon",
      lastAt: at("2026-03-28T01:30Z"),
      now: at("2026-03-29T01:29Z"),
    };
    expect(nextBackupAt(skipped)).toBe(at("2026-03-29T01:30Z"));
  });
});

describe("the name of a file", () => {
  test("says when it was made, and by which installation", () => {
    const name = scheduledName(at("2026-11-30T03:30:05.700Z"), "1a2b3c4d");
    expect(name).toBe("springline-2026-11-30T033005Z-s1a2b3c4d.tar");
    expect(scheduledAt(name, "1a2b3c4d")).toBe(at("2026-11-30T03:30:05Z"));
  });

  test.each([
    "springline-2026-11-30T033005Z-s99999999.tar",
    "springline-2026-11-30T033005Z-v0.1.0.tar",
    "springline-2026-11-31T033005Z-s1a2b3c4d.tar",
    "springline-2026-11-30T033005Z-s1a2b3c4d.tar.failed",
    "springline-2026-11-30T033005Z-s1a2b3c4d (copy).tar",
    "my springline-2026-11-30T033005Z-s1a2b3c4d.tar",
  ])("%s is not the schedule's", (name) => {
    expect(scheduledAt(name, "1a2b3c4d")).toBeUndefined();
  });

  test("two moments of different seconds have different stamps, in the same order", () => {
    expect(nameStamp(at("2026-11-30T03:30:05Z")) < nameStamp(at("2026-11-30T03:30:06Z"))).toBe(true);
  });
});
