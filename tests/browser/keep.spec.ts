/** The owner's acts as a manager sees them: an account deleted for good, by keyboard alone, and the whole studio as a file. */
import { expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { expect, test } from "./kit.ts";

const NAME = "Runa Solberg";
const EMAIL = "runa@tholepin.example";

test("an account is deleted by keyboard: told what goes, the name typed, and the pages that were open close", async ({
  as,
  app,
}) => {
  const [petra, runa] = [await as("petra"), await as(null)];
  const invited = await petra.request.post("/api/people/invitations", {
    headers: { origin: app.url },
    data: { email: EMAIL, name: NAME, roles: ["coach"] },
  });
  await runa.goto((await invited.json()).link);
  await runa.getByLabel("Choose a password").fill("a password of Runa's");
  await runa.getByRole("button", { name: "Join" }).click();
  await runa.waitForURL(/\/desk/);
  const { id: room } = (await (await petra.request.get("/api/rooms")).json())[0];
  const plan = await runa.request.post("/api/plans", {
    headers: { origin: app.url },
    data: { title: "Runa's draft", lengthSeconds: 600, roomId: room },
  });
  expect(plan.ok()).toBe(true);
  await runa.goto(`/plans/${(await plan.json()).id}`);

  await petra.goto("/people");
  await petra.getByRole("button", { name: /^Delete\s+Runa Solberg/ }).focus();
  await petra.keyboard.press("Enter");
  const dialog = petra.getByRole("dialog", { name: `Delete ${NAME} for good?` });
  await expect(dialog.getByText("1 plan that only they can see: “Runa's draft”.")).toBeVisible();
  await expect(dialog.getByText(/Backups hold the account until they are deleted/)).toBeVisible();
  await expectNoBarrierLightOrDark(petra);
  const typed = dialog.getByLabel(`Type “${NAME}” to confirm`);
  await typed.focus();
  await petra.keyboard.type("Somebody");
  await petra.keyboard.press("Enter");
  await expect(dialog.getByText("This is not the name of the account.")).toBeVisible();
  await typed.fill("");
  await petra.keyboard.type(NAME);
  await petra.keyboard.press("Tab");
  await petra.keyboard.press("Enter");
  await expect(dialog).toBeHidden();
  await expect(petra.getByText(EMAIL)).toHaveCount(0);
  await runa.goto("/desk");
  await expect(runa).toHaveURL(/sign-in/);
  await petra.goto("/record");
  await expect(petra.getByText(/deleted the account of Former coach \d+ for good, and 1 plan/).first()).toBeVisible();
});

test("everything is exported as a zip by one press", async ({ as }) => {
  const petra = await as("petra");
  await petra.goto("/studio");
  const saved = petra.waitForEvent("download");
  await petra.getByRole("link", { name: "Export everything" }).click();
  const file = await saved;
  expect(file.suggestedFilename()).toMatch(/^tholepin-strength-\d{4}-\d\d-\d\d\.zip$/);
  await file.delete();
});
