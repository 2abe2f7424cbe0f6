"use client";
/** Where notices lie over the page until they are closed: one below the other, so that none lies on another's buttons. */
import type { ReactNode } from "react";
import styles from "./corner.module.css";

export const Corner = ({ children }: { readonly children: ReactNode }) => (
  <div className={styles.corner}>{children}</div>
);
