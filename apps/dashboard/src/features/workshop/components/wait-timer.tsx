import { Button, Group, Text } from '@mantine/core';
import { useEffect, useState } from 'react';
import { texts } from '../measure-texts.js';

/** Until the air has the temperature of the metal again, s. */
const WAIT_S = 30;
const TICK_MS = 1000;

/** Counts the wait before a reading, so that nobody needs a watch with a pump in hand. */
export function WaitTimer() {
  const [left, setLeft] = useState<number | null>(null);
  useEffect(() => {
    if (left === null || left === 0) return undefined;
    const tick = setTimeout(() => setLeft(left - 1), TICK_MS);
    return () => clearTimeout(tick);
  }, [left]);
  return (
    <Group gap="md" className="ll-screen-only">
      <Button variant="default" onClick={() => setLeft(WAIT_S)}>
        {texts.wait}
      </Button>
      <Text role="timer">{left !== null && left > 0 && texts.waiting(left)}</Text>
      <Text role="status" fw={650}>
        {left === 0 && texts.readNow}
      </Text>
    </Group>
  );
}
