/** The floor page: pair the device, choose an edition, make ready, run the class. One page, so that it opens with no network. */

import { FormatsProvider } from "#app/_parts/formats.tsx";
import { deviceZone } from "#lib/calendar/zone.ts";
import { withdrawnOf } from "#lib/floor/keep-cards.ts";
import { type Formats, STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { LineOnShelf } from "../_line/line-on-shelf.tsx";
import type { Pairing } from "../_parts/kept.ts";
import { CardShelf } from "./card-shelf.tsx";
import { ClassScreen } from "./class-screen.tsx";
import { NotWhole } from "./not-whole.tsx";
import { OPENING_PAGE, READING_DEVICE } from "./page-words.ts";
import { PairForm } from "./pair-form.tsx";
import { type Floor, useFloor } from "./use-floor.ts";
import { useScreens } from "./use-screens.ts";

export function FloorApp() {
  const floor = useFloor();
  const { pairing, notices, paired } = floor.shelf;
  if (pairing === undefined) return <p className="visually-hidden">{READING_DEVICE}</p>;
  if (pairing === null) return <PairForm notices={notices} onPaired={paired} />;
  return (
    <FormatsProvider formats={floor.shelf.shelf.formats ?? unknownFormats()}>
      <PairedFloor floor={floor} pairing={pairing} />
    </FormatsProvider>
  );
}

/** Until the studio has said: the standard, by the device's own clock. */
const unknownFormats = (): Formats => ({ ...STANDARD_FORMATS, zone: deviceZone() });

function PairedFloor({ floor, pairing }: { readonly floor: Floor; readonly pairing: Pairing }) {
  const screens = useScreens();
  const { screen, shelf, worker, logs, line, settings, show, toShelf } = floor;
  // Withdrawn while somebody was making ready: the shelf says by whom and why.
  const withdrawn = screen.kind === "ready" && withdrawnOf(screen.card.edition, shelf.shelf.withdrawn);
  if (screen.kind === "reading" || screen.kind === "shelf" || withdrawn)
    return (
      <CardShelf
        {...{ pairing, worker, logs }}
        state={shelf}
        onChoose={(card, envelope) => show({ kind: "ready", card, envelope })}
      >
        <LineOnShelf line={line} settings={settings} onFollow={() => show({ kind: "follow" })} />
      </CardShelf>
    );
  if (screens === "coming") return <p className="visually-hidden">{OPENING_PAGE}</p>;
  if (screens === "failed") return <NotWhole onShelf={toShelf} />;
  return <ClassScreen {...{ floor, pairing, screens, screen }} />;
}
