"use client";
/** Who is signed in, their settings, light or dark, keys, and signing out. */
import { can, type Role } from "#lib/policy/can.ts";
import { openKeyHelp } from "../_parts/key-help.tsx";
import { ROLE_WORDS } from "../_parts/role-words.ts";
import { useFold } from "../_parts/use-fold.ts";
import styles from "./account-menu.module.css";
import { SchemeChoice } from "./scheme-choice.tsx";
import { SignOut } from "./sign-out.tsx";

interface AccountProps {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly roles: readonly Role[];
}

export function AccountMenu({ id, name, email, roles }: AccountProps) {
  const { open, toggle, box, button } = useFold();
  return (
    <div className={styles.account} ref={box}>
      <button
        ref={button}
        type="button"
        className={styles.name}
        aria-expanded={open}
        aria-controls="account"
        onClick={toggle}
      >
        {name.split(" ")[0]}
        <span className="visually-hidden">: your account</span>
      </button>
      <div id="account" className={styles.sheet} hidden={!open}>
        <p>
          <strong>{name}</strong>
          <br />
          <span className="quiet small">
            {email}
            <br />
            {roles.map((role) => ROLE_WORDS[role].name).join(", ")}
          </span>
        </p>
        <OwnPlaces id={id} roles={roles} />
        <SchemeChoice />
        <button type="button" className="button" onClick={openKeyHelp}>
          Help and keys (?)
        </button>
        <SignOut userId={id} />
      </div>
    </div>
  );
}

function OwnPlaces({ id, roles }: Pick<AccountProps, "id" | "roles">) {
  const me = { kind: "person", id, roles } as const;
  return (
    <>
      <a className="link-line" href="/settings">
        Settings
      </a>
      <a className="link-line" href={`/people/${id}`}>
        Your marks and classes
      </a>
      {can(me, "feed.own") || can(me, "feeds.manage") ? (
        <a className="link-line" href="/programme/feeds">
          Calendar addresses
        </a>
      ) : null}
    </>
  );
}
