/** The programme itself leads to the month it is. */
import { redirect } from "next/navigation";
import { monthOf } from "#lib/calendar/days.ts";
import { springline } from "#server/context/springline.ts";
import { studioDay } from "#server/month-facts/month-settings.ts";

export default function ProgrammePage() {
  redirect(`/programme/${monthOf(studioDay(springline()))}`);
}
