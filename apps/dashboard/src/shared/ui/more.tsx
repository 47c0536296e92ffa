import { Button, Group } from '@mantine/core';

interface MoreProps {
  /** A list that is read a page at a time. */
  readonly query: {
    readonly hasNextPage: boolean;
    readonly isFetchingNextPage: boolean;
    readonly fetchNextPage: () => Promise<unknown>;
  };
  readonly label: string;
  /** On paper there is nothing to press. */
  readonly screenOnly?: boolean;
}

/** Reads the next page of a list, where there is one. */
export function More({ query, label, screenOnly = false }: MoreProps) {
  if (!query.hasNextPage) return null;
  return (
    <Group {...(screenOnly && { className: 'll-screen-only' })}>
      <Button variant="default" loading={query.isFetchingNextPage} onClick={() => void query.fetchNextPage()}>
        {label}
      </Button>
    </Group>
  );
}
