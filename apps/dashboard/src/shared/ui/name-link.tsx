import { createLink } from '@tanstack/react-router';
import type { ComponentPropsWithRef } from 'react';
import classes from './link.module.css';

interface NameLinkProps extends ComponentPropsWithRef<'a'> {
  /** Whether who is here may change the record. */
  readonly canChange: boolean;
}

/** What a record is called: a link to where it is changed for who may, else its name alone. */
export const NameLink = createLink(({ canChange, ...anchor }: NameLinkProps) =>
  canChange ? <a {...anchor} className={classes.text} /> : anchor.children,
);
