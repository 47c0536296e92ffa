import { Button } from '@mantine/core';

/** Prints the page as it stands. */
export function PrintButton({ label }: { label: string }) {
  return (
    <Button variant="default" onClick={() => window.print()}>
      {label}
    </Button>
  );
}
