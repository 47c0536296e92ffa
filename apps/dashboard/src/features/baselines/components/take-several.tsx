import { Button, Group, List, Radio, Stack, Text, TextInput } from '@mantine/core';
import { useState } from 'react';
import { formatCount } from '../../../shared/format/numbers.js';
import { ApiProblem } from '../../../shared/http/problem.js';
import type { Baseline } from '../../../shared/http/reads/baselines.js';
import type { Setup } from '../../../shared/http/reads/setups.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useTakeSeveral } from '../api/take-baseline.js';
import { fillText } from '../../../shared/format/fill.js';
import { hasSteps } from '../model/fill-text.js';
import { texts } from '../texts.js';

interface TakeSeveralProps {
  readonly teamId: string;
  /** Those that are chosen. */
  readonly baselines: readonly Baseline[];
  readonly nameOf: (baseline: Pick<Baseline, 'riderId' | 'bikeId'>) => string;
}

/** Takes the chosen baselines together, and says of each bike what is in it then, or why none was taken. */
export function TakeSeveral({ teamId, baselines, nameOf }: TakeSeveralProps) {
  const [asked, setAsked] = useState<readonly Baseline[] | null>(null);
  const [reason, setReason] = useState('');
  const [way, setWay] = useState('first');
  const take = useTakeSeveral(teamId);
  const nameOfBike = (bikeId: string) => {
    const baseline = (asked ?? baselines).find((candidate) => candidate.bikeId === bikeId);
    return baseline === undefined ? '' : nameOf(baseline);
  };
  if (asked === null) {
    return (
      <Group className="ll-screen-only">
        <Button disabled={baselines.length === 0} onClick={() => setAsked(baselines)}>
          {texts.several.take(formatCount(baselines.length, 'baseline'))}
        </Button>
        {baselines.length === 0 && <Text c="dimmed">{texts.several.none}</Text>}
      </Group>
    );
  }
  if (take.isSuccess) {
    return (
      <div role="status">
        <Text fw={600}>{texts.several.taken}</Text>
        <List>
          {take.data.items.map((setup) => (
            <List.Item key={setup.id}>
              {nameOfBike(setup.bikeId)}: {setupText(setup)}
            </List.Item>
          ))}
        </List>
      </div>
    );
  }
  const isLong = asked.some(hasSteps);
  const wholeWay = !isLong || way === 'whole';
  const message = {
    baselines: asked.map(({ id }) => ({ baselineId: id, wholeWay })),
    ...(reason.trim() !== '' && { reason }),
  };
  return (
    <Stack gap="sm" maw="36rem" role="group" aria-label={texts.several.take('baselines')}>
      <Text size="sm">{texts.several.lead}</Text>
      <List size="sm">
        {asked.map((baseline) => (
          <List.Item key={baseline.id}>{nameOf(baseline)}</List.Item>
        ))}
      </List>
      {isLong && (
        <Radio.Group value={way} onChange={setWay} label={texts.several.way}>
          <Stack gap="xs">
            <Radio value="first" label={texts.several.first} />
            <Radio value="whole" label={texts.several.whole} />
          </Stack>
        </Radio.Group>
      )}
      <TextInput
        label={texts.takeReason}
        value={reason}
        onChange={(event) => setReason(event.currentTarget.value)}
      />
      <Failure error={take.error} word={texts.notTaken} />
      <Refusals error={take.error} nameAt={(i) => nameOfBike(asked[i]?.bikeId ?? '')} />
      <Group gap="sm">
        <Button loading={take.isPending} onClick={() => take.mutate(message)}>
          {texts.yesTake}
        </Button>
        <Button variant="default" onClick={() => setAsked(null)}>
          {texts.cancel}
        </Button>
      </Group>
    </Stack>
  );
}

/** Which of the bikes stood in the way. */
function Refusals({ error, nameAt }: { error: unknown; nameAt: (place: number) => string }) {
  if (!(error instanceof ApiProblem) || error.fields.length === 0) return null;
  return (
    <List size="sm">
      {error.fields.map(({ field, allowed }) => (
        <List.Item key={field}>{texts.several.refused(nameAt(placeOf(field)), allowed)}</List.Item>
      ))}
    </List>
  );
}

/** The place in the message: 2 of `baselines.2.baselineId`. */
const placeOf = (field: string): number => Number(/^baselines\.(\d+)/.exec(field)?.[1] ?? -1);

const setupText = ({ fork, shock }: Setup): string =>
  [
    `${texts.fork.toLowerCase()} ${fillText(fork)}`,
    ...(shock === null ? [] : [`${texts.shock.toLowerCase()} ${fillText(shock)}`]),
  ].join('; ');
