import { expect, test } from "vitest";
import { loggedPath } from "#server/http/logged-path.ts";

test.each([
  ["/api/calendar/s3cret.ics?x=1", "/api/calendar/..."],
  ["http://localhost:4310/api/reset/s3cret", "/api/reset/..."],
  ["/reset/s3cret", "/reset/..."],
  ["/api/join/s3cret/more", "/api/join/.../more"],
  ["/api/plans/p1?token=s3cret", "/api/plans/p1"],
  ["/calendar-notes/p1", "/calendar-notes/p1"],
  ["", "/"],
])("%s is logged as %s", (address, path) => expect(loggedPath(address)).toBe(path));
