import Link from "next/link";
import { Door } from "./_shell/door.tsx";

export default function NotFound() {
  return (
    <Door
      title="Page not found"
      lead="There is no page at this address, or you may not see it. If a link brought you here, ask the person who sent it."
    >
      <Link className="button" href="/desk">
        Go to the desk
      </Link>
    </Door>
  );
}
