/** The address itself leads to the desk, by way of signing in. */
import { redirect } from "next/navigation";

export default function Home() {
  redirect("/desk");
}
