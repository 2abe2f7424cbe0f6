/** Notices in a browser: how many are new, where each leads, when it counts as seen; and e-mail, from its setting up to a mail. */

import { WHOLE_BODY } from "#seed/plans/whole-body.ts";
import { expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { type MailServer, startMailServer } from "../support/mail-server.ts";
import { DEMO_PASSWORD, expect, importPlan, test } from "./kit.ts";

let server: MailServer | undefined;
test.afterEach(async () => {
  await server?.stop();
  server = undefined;
});

const post = async (page: import("@playwright/test").Page, path: string, data: object) => {
  const origin = new URL(page.url()).origin;
  const answer = await page.request.post(path, { headers: { origin }, data });
  expect(answer.ok()).toBe(true);
  return answer.json();
};

test("a comment is told to the plan's owner, leads to its thread, and is seen once the plan was opened", async ({
  as,
}) => {
  const jonas = await as("jonas");
  await jonas.goto("/notices");
  const id = await importPlan(jonas, { ...WHOLE_BODY, title: "A class with a thread" });
  const ines = await as("ines");
  await ines.goto("/desk");
  const thread = await post(ines, `/api/plans/${id}/threads`, {
    anchor: { kind: "plan" },
    body: "Slower at the start",
  });
  await jonas.goto("/notices");
  const link = jonas.getByRole("link", { name: /commented on “A class with a thread”/ });
  await expect(link).toBeVisible();
  await expect(jonas.getByRole("banner").getByRole("link", { name: /^Notices \d+ new$/ })).toBeVisible();
  await link.press("Enter");
  await jonas.waitForURL(`**/plans/${id}#thread-${thread.id}`);
  const slip = jonas.locator(`#thread-${thread.id}`);
  await expect(slip).toBeInViewport();
  await expect(slip).toBeFocused();
  await jonas.goto("/notices");
  await expect(jonas.getByRole("listitem").filter({ has: link })).not.toContainText("new");
});

test("a link from a mail leads somebody who is signed out to sign in, then on to the thread", async ({ as }) => {
  const jonas = await as("jonas");
  await jonas.goto("/desk");
  const id = await importPlan(jonas, { ...WHOLE_BODY, title: "Opened from a mail" });
  const { id: thread } = await post(jonas, `/api/plans/${id}/threads`, {
    anchor: { kind: "plan" },
    body: "A question",
  });
  const nobody = await as(null);
  await nobody.goto(`/plans/${id}#thread-${thread}`);
  await nobody.getByRole("textbox", { name: "Email" }).fill("jonas@tholepin.example");
  await nobody.getByLabel("Password").fill(DEMO_PASSWORD);
  await nobody.getByRole("button", { name: "Sign in" }).click();
  await nobody.waitForURL(`**/plans/${id}#thread-${thread}`);
  await expect(nobody.locator(`#thread-${thread}`)).toBeFocused();
  await expect(nobody.locator(`#thread-${thread}`)).toBeInViewport();
});

test("all are marked as seen in one act, by keyboard, and the frame is quiet then", async ({ as }) => {
  const ines = await as("ines");
  const jonas = await as("jonas");
  await jonas.goto("/desk");
  const id = await importPlan(jonas, { ...WHOLE_BODY, title: "Offered once" });
  await post(jonas, `/api/plans/${id}/hand-in`, {});
  await ines.goto("/desk");
  await ines
    .getByRole("banner")
    .getByRole("link", { name: /^Notices \d+ new$/ })
    .press("Enter");
  await expect(ines.getByRole("link", { name: /offered “Offered once” for reading/ })).toBeVisible();
  await ines.getByRole("button", { name: "Mark all as seen" }).press("Enter");
  await expect(ines.getByRole("status").filter({ hasText: "All notices are marked as seen." })).toBeVisible();
  await expect(ines.getByRole("banner").getByRole("link", { name: "Notices", exact: true })).toBeVisible();
  await expect(ines.getByText(/Petra Vale can set it up/)).toBeVisible();
});

test("a manager sets e-mail up and tries it; a trainee chooses and is mailed; what fails is listed and tried again", async ({
  as,
}) => {
  // The server looks for mails every 15 s, and looks twice or more here.
  test.setTimeout(240_000);
  server = await startMailServer({ plain: true });
  const petra = await as("petra");
  await petra.goto("/studio#mail");
  await petra.getByRole("button", { name: "Set up e-mail" }).click();
  await petra.getByRole("textbox", { name: "Mail server" }).fill("localhost");
  await petra.getByRole("textbox", { name: "Port" }).fill(String(server.port));
  await petra.getByRole("textbox", { name: "Mails come from" }).fill("studio@tholepin.example");
  await expectNoBarrierLightOrDark(petra);
  await petra.getByRole("combobox", { name: "Security" }).selectOption({ label: "None, for this machine alone" });
  await petra.locator("#mail").getByRole("button", { name: "Save" }).click();
  await petra.getByRole("button", { name: "Send me a test mail" }).click();
  await expect(
    petra.getByText(/The mail server took the test mail to petra@tholepin.example. It said: 250/),
  ).toBeVisible();
  expect(server.arrived[0]?.mail.subject).toBe("Springline: test mail");

  const jonas = await as("jonas", { timezoneId: "Asia/Kathmandu", viewport: { width: 390, height: 844 } });
  await jonas.goto("/notices");
  await expect(jonas.getByText("Nothing is sent to you until you save your choices.")).toBeVisible();
  await expect(jonas.getByRole("combobox", { name: "Time zone" })).toHaveValue(/^Asia\/(?:Kathmandu|Katmandu)$/);
  await jonas.getByRole("combobox", { name: "A comment on my plan or in my thread" }).selectOption("At once");
  await expectNoBarrierLightOrDark(jonas);
  await jonas.getByRole("button", { name: "Save" }).click();
  await expect(jonas.getByText("Your choices are saved.")).toBeVisible();
  expect(await jonas.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  await jonas.reload();
  await expect(jonas.getByRole("combobox", { name: "A comment on my plan or in my thread" })).toHaveValue("at-once");

  const id = await importPlan(jonas, { ...WHOLE_BODY, title: "Mailed about" });
  const ines = await as("ines");
  await ines.goto("/desk");
  server.next.push({ at: "rcpt", code: 550, says: "5.2.1 Mailbox disabled" });
  await post(ines, `/api/plans/${id}/threads`, { anchor: { kind: "plan" }, body: "A private word" });
  // Bundled for a minute, then sent by a timer of 15 s.
  await expect
    .poll(async () => (await petra.request.get("/notices")).text(), { timeout: 100_000, intervals: [5_000] })
    .toContain("Mailbox disabled");
  await petra.goto("/desk");
  await expect(petra.getByRole("banner").getByRole("link", { name: "Notices 1 new" })).toBeVisible();
  await petra.goto("/notices");
  await petra
    .getByRole("link", { name: /^A mail to Jonas Okafor could not be sent.*5\.2\.1 Mailbox disabled/ })
    .click();
  await petra.waitForURL("**/studio#mail");
  const failed = petra.getByRole("listitem").filter({ hasText: "Failed: to Jonas Okafor" });
  await expect(failed).toContainText("Mailbox disabled");
  await expectNoBarrierLightOrDark(petra);
  await failed.getByRole("button", { name: /^Try again/ }).click();
  await expect(petra.getByRole("listitem").filter({ hasText: "Waiting: to Jonas Okafor" })).toBeVisible();
  await expect.poll(() => server?.arrived.length, { timeout: 30_000 }).toBe(2);
  const { mail, raw } = server.arrived[1] ?? {};
  expect(mail?.subject).toBe("Springline: something new for you");
  expect(mail?.text).toContain(`/plans/${id}#thread-`);
  expect(raw).not.toContain("private word");
  await petra.reload();
  await petra.getByRole("button", { name: "Turn e-mail off" }).press("Enter");
  await petra.getByRole("button", { name: "Turn e-mail off" }).press("Enter");
  await expect(petra.getByText("E-mail is not set up: people are told in the app only.")).toBeVisible();
});
