/** The programme itself leads to the month it is. */
import { redirect } from "next/navigation";
import { dateOfDay, monthOf } from "#lib/calendar/days.ts";
import { springline } from "#server/context/springline.ts";

const DAY_MS = 86_400_000;

export default function ProgrammePage() {
  redirect(`/programme/${monthOf(dateOfDay(Math.floor(springline().now() / DAY_MS)))}`);
}
