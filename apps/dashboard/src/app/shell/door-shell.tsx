import type { ReactNode } from 'react';
import { Kit } from '../kit/kit.js';
import { texts } from './texts.js';
import classes from './shell.module.css';

/** The frame of the pages before the team: sign-in and joining. */
export function DoorShell({ children }: { children: ReactNode }) {
  return (
    <div className={classes.door}>
      <header className={classes.brand}>{texts.product}</header>
      <main>
        <Kit>{children}</Kit>
      </main>
    </div>
  );
}
