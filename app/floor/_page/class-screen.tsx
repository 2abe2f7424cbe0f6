/** The screen of a chosen edition, or of a class that another screen leads. */
import { withdrawnOf } from "#lib/floor/keep-cards.ts";
import type { Pairing } from "../_parts/kept.ts";
import type { ClassScreenOf, Floor } from "./use-floor.ts";
import type { Screens } from "./use-screens.ts";

interface Props<Kind extends ClassScreenOf["kind"]> {
  readonly floor: Floor;
  readonly screens: Screens;
  readonly screen: Extract<ClassScreenOf, { kind: Kind }>;
}

interface ClassScreenProps {
  readonly floor: Floor;
  readonly pairing: Pairing;
  readonly screens: Screens;
  readonly screen: ClassScreenOf;
}

export function ClassScreen({ screen, pairing, ...shared }: ClassScreenProps) {
  switch (screen.kind) {
    case "follow":
      return <Follow {...shared} screen={screen} pairing={pairing} />;
    case "ready":
      return <Ready {...shared} screen={screen} />;
    case "live":
      return <Live {...shared} screen={screen} />;
    case "rehearsal":
      return <Rehearsal {...shared} screen={screen} />;
  }
}

function Follow({ floor, screens, pairing }: Props<"follow"> & { readonly pairing: Pairing }) {
  const { line, shelf, settings, show, toShelf } = floor;
  return (
    <screens.FollowScreen
      {...{ line, pairing, shelf, settings }}
      onTakeOn={(card, running) => show({ kind: "live", card, envelope: running.envelope, running })}
      onLeave={toShelf}
    />
  );
}

function Ready({ floor, screens, screen }: Props<"ready">) {
  const { worker, settings, show, toShelf } = floor;
  return (
    <screens.ReadyScreen
      {...{ worker, settings }}
      card={screen.card}
      onBack={toShelf}
      onStart={() => show({ ...screen, kind: "live", running: null })}
      onRehearse={() => show({ ...screen, kind: "rehearsal", running: null })}
    />
  );
}

function Live({ floor, screens, screen }: Props<"live">) {
  const { settings, line, logs, shelf, show, leave } = floor;
  return (
    <screens.LiveClass
      {...{ settings, line, logs }}
      card={screen.card}
      envelope={screen.envelope}
      running={screen.running}
      withdrawn={withdrawnOf(screen.card.edition, shelf.shelf.withdrawn)}
      onFollow={() => show({ kind: "follow" })}
      onLeave={leave}
    />
  );
}

function Rehearsal({ floor, screens, screen }: Props<"rehearsal">) {
  const { card, envelope, running } = screen;
  return <screens.CardRehearsal {...{ card, envelope, running }} settings={floor.settings} onLeave={floor.leave} />;
}
