"use client";
/** Cue devices: add one (its pairing code is shown once), see them, remove one. */
import { useRouter } from "next/navigation";
import { type FormEvent, useId, useRef, useState } from "react";
import { DEVICES_PLACE } from "#lib/protocol/places.ts";
import type { DeviceView, NewCode } from "#server/devices/manage-devices.ts";
import { FormField, textOf } from "../_parts/form-field.tsx";
import { LocalTime } from "../_parts/local-time.tsx";
import { NothingYet } from "../_parts/nothing-yet.tsx";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { QrCode } from "../_parts/qr-code.tsx";
import { useAskedFor } from "../_parts/use-asked-for.ts";
import { useSend } from "../_parts/use-send.ts";
import styles from "./studio.module.css";

interface DevicesProps {
  readonly devices: readonly DeviceView[];
  readonly rooms: readonly { readonly id: string; readonly name: string }[];
}
type MadeCode = NewCode & { readonly name: string };

export function DevicesPart({ devices, rooms }: DevicesProps) {
  const router = useRouter();
  const sending = useSend();
  const [made, setMade] = useState<MadeCode | null>(null);
  const add = async (form: FormData): Promise<boolean> => {
    const name = textOf(form, "name");
    const code = await sending.run<NewCode>("POST", "/api/devices", { name, roomId: textOf(form, "room") });
    if (!code) return false;
    setMade({ ...code, name });
    router.refresh();
    return true;
  };
  const remove = async (id: string) => {
    if ((await sending.run("DELETE", `/api/devices/${id}`)) === undefined) return;
    if (made?.id === id) setMade(null);
    router.refresh();
  };
  return (
    <>
      <h2>{DEVICES_PLACE.name}</h2>
      <p className="quiet">
        A tablet beside the machines. It fetches the editions of its room, keeps them, and runs them without a network.
      </p>
      {made ? <PairingCode made={made} /> : null}
      {devices.length > 0 ? <DeviceList devices={devices} busy={sending.busy} onRemove={remove} /> : <NoDevice />}
      <NewDevice rooms={rooms} busy={sending.busy} onAdd={add} />
      <ProblemLine say={sending.problem} />
    </>
  );
}

const NoDevice = () => (
  <NothingYet>
    <p>
      <b>No device is paired yet.</b> Name one, choose its room and make a code here. Then scan the code with the
      tablet, or type it there.
    </p>
  </NothingYet>
);

function PairingCode({ made }: { readonly made: MadeCode }) {
  return (
    <div className={`done ${styles.made}`}>
      <div className={styles.pairing} role="status">
        <QrCode squares={made.squares} says={`QR code that opens the floor on ${made.name} with the code filled in`} />
        <div>
          <p>
            On {made.name}, point the camera at the square, or open <strong>{made.link.split("#")[0]}</strong> and type
            this code. It is shown only now, works once, and expires <LocalTime at={made.expiresAt} />.
          </p>
          <p className={styles.code}>{made.code}</p>
        </div>
      </div>
      {made.onlyHere ? (
        <p className="quiet small">
          This address opens on this machine only. For a tablet, start the server with HOST and SPRINGLINE_URL set to an
          address that the tablet can reach; the README says how.
        </p>
      ) : null}
    </div>
  );
}

interface DeviceListProps {
  readonly devices: readonly DeviceView[];
  readonly busy: boolean;
  readonly onRemove: (id: string) => void;
}

function DeviceList({ devices, busy, onRemove }: DeviceListProps) {
  return (
    <ul className={styles.devices}>
      {devices.map((device) => (
        <li key={device.id}>
          <span>
            <strong>{device.name}</strong> <span className="quiet">{device.roomName}</span>
            <br />
            <span className="quiet small">
              <DeviceState device={device} />
            </span>
          </span>
          <button type="button" className="act" onClick={() => onRemove(device.id)} aria-disabled={busy}>
            Remove<span className="visually-hidden"> {device.name}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}

function DeviceState({ device }: { readonly device: DeviceView }) {
  if (device.state === "waiting") return <>waiting for its pairing code</>;
  if (device.state === "code-expired") return <>its code has expired: remove it and add it again</>;
  return device.lastSeenAt ? (
    <>
      paired, last in contact <LocalTime at={device.lastSeenAt} />
    </>
  ) : (
    <>paired, no contact since</>
  );
}

interface NewDeviceProps {
  readonly rooms: DevicesProps["rooms"];
  readonly busy: boolean;
  /** Resolves to whether it was added: what was typed stays when it was not. */
  readonly onAdd: (form: FormData) => Promise<boolean>;
}

function NewDevice({ rooms, busy, onAdd }: NewDeviceProps) {
  const roomId = useId();
  const form = useRef<HTMLFormElement>(null);
  useAskedFor("device", () => form.current?.querySelector("input")?.focus());
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const element = event.currentTarget;
    if (await onAdd(new FormData(element))) element.reset();
  };
  return (
    <form ref={form} className={styles.inline} onSubmit={submit}>
      <FormField label="Name of the device" name="name" required maxLength={80} autoComplete="off" />
      <div className="field">
        <label htmlFor={roomId}>Room</label>
        <select id={roomId} name="room">
          {rooms.map((room) => (
            <option key={room.id} value={room.id}>
              {room.name}
            </option>
          ))}
        </select>
      </div>
      <button type="submit" className="button" aria-disabled={busy} disabled={rooms.length === 0}>
        Make a pairing code
      </button>
    </form>
  );
}
