import { Anchor, Button, type AnchorProps, type ButtonProps } from '@mantine/core';
import { createLink } from '@tanstack/react-router';
import type { ComponentPropsWithRef } from 'react';

type PlainAnchor = ComponentPropsWithRef<'a'>;

/** A link in running text or a table. */
export const TextLink = createLink((props: AnchorProps & Omit<PlainAnchor, keyof AnchorProps>) => (
  <Anchor underline="always" {...props} />
));

/** A way on that looks like what can be pressed. */
export const LinkButton = createLink((props: ButtonProps & Omit<PlainAnchor, keyof ButtonProps>) => (
  <Button component="a" {...props} />
));
