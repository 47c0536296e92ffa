import type { ComponentPropsWithRef } from 'react';
import classes from './button.module.css';

export interface ButtonLook {
  /** `filled`: the one act of the place; `default`: the others. */
  readonly variant?: 'filled' | 'default';
  readonly size?: 'lg';
  readonly fullWidth?: boolean;
}

/** The classes of what can be pressed, for links and buttons alike. */
export function buttonClass({ variant = 'filled', size, fullWidth = false }: ButtonLook): string {
  return [classes[variant], size !== undefined && classes[size], fullWidth && classes.fullWidth]
    .filter(Boolean)
    .join(' ');
}

/** A button for the pages that load without the kit. */
export function PlainButton({
  variant,
  size,
  fullWidth,
  ...button
}: ButtonLook & ComponentPropsWithRef<'button'>) {
  const look = { ...(variant && { variant }), ...(size && { size }), ...(fullWidth && { fullWidth }) };
  return <button type="button" {...button} className={buttonClass(look)} />;
}
