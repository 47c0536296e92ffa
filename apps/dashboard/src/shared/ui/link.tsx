import { createLink } from '@tanstack/react-router';
import type { ComponentPropsWithRef } from 'react';
import classes from './link.module.css';
import { buttonClass, type ButtonLook } from './plain-button.js';

interface TextLinkProps extends ComponentPropsWithRef<'a'> {
  readonly size?: 'sm';
}

/** A link in running text or a table. */
export const TextLink = createLink(({ size, className, ...anchor }: TextLinkProps) => (
  <a
    {...anchor}
    className={[classes.text, size === 'sm' && classes.small, className].filter(Boolean).join(' ')}
  />
));

/** A way on that looks like what can be pressed. */
export const LinkButton = createLink(
  ({ variant, size, fullWidth, ...anchor }: ButtonLook & ComponentPropsWithRef<'a'>) => {
    const look = { ...(variant && { variant }), ...(size && { size }), ...(fullWidth && { fullWidth }) };
    return <a {...anchor} className={buttonClass(look)} />;
  },
);
