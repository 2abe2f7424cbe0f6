import Link from "next/link";
import { Door } from "./_shell/door.tsx";

export default function NotFound() {
  return (
    <Door
      title="Nothing here"
      lead="There is no such page, or it is not yours to see. If a link brought you here, ask whoever sent it."
    >
      <Link className="button" href="/desk">
        To the desk
      </Link>
    </Door>
  );
}
