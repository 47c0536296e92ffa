import { Stack, Text, Title } from '@mantine/core';
import type { ReactNode } from 'react';

interface EmptyProps {
  readonly title: string;
  readonly children: ReactNode;
  /** The way on: a link or a button. */
  readonly action?: ReactNode;
}

/** Nothing here yet, and what to do next. */
export function Empty({ title, children, action }: EmptyProps) {
  return (
    <Stack align="start" gap="sm" py="lg">
      <Title order={2}>{title}</Title>
      <Text maw="60ch">{children}</Text>
      {action}
    </Stack>
  );
}
