import { Button, Group, Stack } from '@mantine/core';
import { useState, type ReactNode } from 'react';
import { Failure } from '../../../shared/ui/error-view.js';
import { texts } from '../texts.js';
import { SingleUseLink } from './single-use-link.js';

interface MakeLinkProps {
  /** On the button that begins. */
  readonly label: string;
  readonly link: {
    readonly isPending: boolean;
    readonly error: Error | null;
    readonly data: { readonly path: string; readonly expiresAt: string } | undefined;
  };
  readonly onMake: () => void;
  /** What is said or asked before the link is made. */
  readonly children: ReactNode;
}

/** A link for one member: begins, says or asks what there is to, makes it and shows it. */
export function MakeLink({ label, link, onMake, children }: MakeLinkProps) {
  const [asking, setAsking] = useState(false);
  if (!asking) {
    return (
      <Button variant="default" onClick={() => setAsking(true)}>
        {label}
      </Button>
    );
  }
  return (
    <Stack gap="sm">
      {children}
      <Group gap="sm">
        <Button loading={link.isPending} onClick={onMake}>
          {texts.make}
        </Button>
        <Button variant="default" onClick={() => setAsking(false)}>
          {texts.close}
        </Button>
      </Group>
      <Failure error={link.error} />
      {link.data !== undefined && <SingleUseLink path={link.data.path} expiresAt={link.data.expiresAt} />}
    </Stack>
  );
}
