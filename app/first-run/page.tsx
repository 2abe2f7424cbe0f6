/** The first page of a new installation: makes the studio and its manager, once. */
import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { springline } from "#server/context/springline.ts";
import { presentStudio } from "#server/people/first-run.ts";
import { Door } from "../_shell/door.tsx";
import { FirstRunForm } from "./first-run-form.tsx";

export const metadata: Metadata = { title: "Set up the studio" };

export default function FirstRunPage() {
  const app = springline();
  if (presentStudio(app)) redirect("/sign-in");
  return (
    <Door
      title="Set up the studio"
      lead="This installation is new. Name your studio and create your account as its manager. Everyone else joins with a link that you send them."
    >
      <FirstRunForm asksCode={app.setUpCode !== undefined} />
    </Door>
  );
}
