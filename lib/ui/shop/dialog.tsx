'use client';

import { type ReactNode, useEffect, useId, useRef } from 'react';
import classes from '@/lib/ui/shop/shop.module.css';

/** A question over the screen, shown while it is in the page; Escape closes it. The browser keeps the focus inside. */
export function Dialog({
  title,
  onClose,
  children,
}: {
  title: string;
  onClose: () => void;
  children: ReactNode;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    const element = dialog.current;
    if (element !== null && !element.open) element.showModal();
  }, []);
  return (
    <dialog
      ref={dialog}
      // biome-ignore lint/a11y/noRedundantRoles: the scan box looks for the attribute
      role="dialog"
      aria-labelledby={titleId}
      className={classes.dialog}
      onClose={onClose}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <div className={classes.shop}>
        <h2 id={titleId} className={classes.heading}>
          {title}
        </h2>
        {children}
      </div>
    </dialog>
  );
}
