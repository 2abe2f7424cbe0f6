"use client";
/** Cue devices: make one (its code is shown once), see them, take one back. */
import { useRouter } from "next/navigation";
import { type FormEvent, useId, useState } from "react";
import { DEVICES_PLACE } from "#lib/protocol/places.ts";
import type { DeviceView, NewCode } from "#server/devices/manage-devices.ts";
import { Field, textOf } from "../_parts/field.tsx";
import { Moment } from "../_parts/moment.tsx";
import { Problem } from "../_parts/problem.tsx";
import { useSend } from "../_parts/use-send.ts";
import styles from "./studio.module.css";

interface DevicesProps {
  readonly devices: readonly DeviceView[];
  readonly rooms: readonly { readonly id: string; readonly name: string }[];
}

export function Devices({ devices, rooms }: DevicesProps) {
  const router = useRouter();
  const sending = useSend();
  const [made, setMade] = useState<(NewCode & { name: string }) | null>(null);
  const roomId = useId();
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const element = event.currentTarget;
    const form = new FormData(element);
    const name = textOf(form, "name");
    const code = await sending.run<NewCode>("POST", "/api/devices", { name, roomId: textOf(form, "room") });
    if (!code) return;
    setMade({ ...code, name });
    element.reset();
    router.refresh();
  };
  const takeBack = async (id: string) => {
    if ((await sending.run("DELETE", `/api/devices/${id}`)) === undefined) return;
    if (made?.id === id) setMade(null);
    router.refresh();
  };
  return (
    <>
      <h2>{DEVICES_PLACE.name}</h2>
      <p className="quiet">
        A tablet beside the machines. It fetches the signed classes of its room, keeps them, and runs them with no
        network.
      </p>
      {made ? (
        <div className={`done ${styles.made}`} role="status">
          <p>
            On {made.name}, open <strong>/floor</strong> of this address and type this code. It is shown only now, works
            once, and runs out <Moment at={made.expiresAt} />.
          </p>
          <p className={styles.code}>{made.code}</p>
        </div>
      ) : null}
      {devices.length > 0 ? (
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
              <button type="button" className="act" onClick={() => takeBack(device.id)} aria-disabled={sending.busy}>
                Take back<span className="visually-hidden"> {device.name}</span>
              </button>
            </li>
          ))}
        </ul>
      ) : null}
      <form className={styles.inline} onSubmit={submit}>
        <Field label="Name of the device" name="name" required maxLength={80} autoComplete="off" />
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
        <button type="submit" className="button" aria-disabled={sending.busy} disabled={rooms.length === 0}>
          Make a code
        </button>
      </form>
      <Problem say={sending.problem} />
    </>
  );
}

function DeviceState({ device }: { readonly device: DeviceView }) {
  if (device.state === "waiting") return <>waits for its code</>;
  if (device.state === "code-expired") return <>its code has run out: take it back and make another</>;
  return device.lastSeenAt ? (
    <>
      paired, last heard of <Moment at={device.lastSeenAt} />
    </>
  ) : (
    <>paired, not heard of since</>
  );
}
