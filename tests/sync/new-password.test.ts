/** A new password ends what was open elsewhere: over the real route and real sockets. */

import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { afterEach, beforeEach, expect, test } from "vitest";
import * as authRoute from "#app/api/auth/[...all]/route.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { setSpringline } from "#server/context/springline.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { attachSync } from "#server/sync/attach.ts";
import { must, openStudio, type PlanStudio, ROOMS } from "../support/plan-studio.ts";
import { RawClient } from "../support/raw-client.ts";
import { PASSWORD, signInAll } from "../support/sign-in.ts";

let s: PlanStudio;
let http: Server;
let url: string;
beforeEach(async () => {
  s = openStudio({ clock: Date.now() });
  setSpringline(s.app);
  http = createServer();
  attachSync({ rooms: s.rooms, server: http });
  await new Promise<void>((resolve) => http.listen(0, "127.0.0.1", resolve));
  url = `ws://127.0.0.1:${(http.address() as AddressInfo).port}`;
});
afterEach(async () => {
  http.closeAllConnections();
  await new Promise((resolve) => http.close(resolve));
  setSpringline(undefined);
  await s.stop();
});

test("[INV-09] sockets of a person's other sessions end with a new password; nobody else's does", async () => {
  const here = await signInAll(s, ["jonas", "ines"]);
  const there = await signInAll(s, ["jonas"]);
  const made = { title: "Pull", lengthSeconds: 600, roomId: ROOMS.harbour };
  const { id } = must(createPlan(s.app, s.people.jonas, made));
  const open = (cookies: string | undefined) => new RawClient(url, planDoc(id), { cookies }).synced();
  const elsewhere = await open(there.get("jonas"));
  const lead = await open(here.get("ines"));

  const answer = await authRoute.POST(
    new Request(`${s.app.env.origin}/api/auth/change-password`, {
      method: "POST",
      headers: { cookie: here.get("jonas") ?? "", origin: s.app.env.origin, "content-type": "application/json" },
      body: JSON.stringify({ currentPassword: PASSWORD, newPassword: "quite another password" }),
    }),
  );
  expect(answer.status).toBe(200);
  expect(await elsewhere.closed()).toBe(CLOSE.notSignedIn.code);
  expect(lead.closeCode).toBeUndefined();
  // The browser that changed it goes on with the cookie it was given.
  const cookies = answer.headers.getSetCookie().map((cookie) => cookie.split(";")[0]);
  const again = await open(cookies.join("; "));
  for (const client of [elsewhere, lead, again]) client.end();
});
