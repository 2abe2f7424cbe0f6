/** A studio's own time of its backup: the same always, within the hour, and few of many studios in one minute. */
import { expect, test } from "vitest";
import { ownBackupTime } from "#lib/backups/own-time.ts";
import { installationId } from "#server/http/installation-id.ts";

test("from 03:30 to 04:29, by the first eight digits", () => {
  const of = (digits: string) => ownBackupTime(`${digits}${"f".repeat(24)}`);
  expect([of("00000000"), of("0000001d"), of("0000001e"), of("0000003b"), of("0000003c")]).toEqual([
    ...["03:30", "03:59", "04:00", "04:29", "03:30"],
  ]);
  // 4294967295 = 60 x 71582788 + 15.
  expect(of("ffffffff")).toBe("03:45");
});

test("of 600 studios no minute has more than 25, and none is empty", () => {
  // Poisson with a mean of 10: more than 25 in one of 60 minutes has a chance of 0.1 %, none at all of 0.3 %.
  const minutes = new Map<string, number>();
  for (let n = 0; n < 600; n++) {
    const time = ownBackupTime(installationId(`the secret of the studio number ${n}`));
    expect(time >= "03:30" && time <= "04:29").toBe(true);
    minutes.set(time, (minutes.get(time) ?? 0) + 1);
  }
  expect([minutes.size, Math.max(...minutes.values()) <= 25]).toEqual([60, true]);
});
