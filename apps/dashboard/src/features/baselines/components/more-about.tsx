import { List, Table, Text } from '@mantine/core';
import { figureName } from '../../../shared/format/figure-names.js';
import { formatNumber, formatShare } from '../../../shared/format/numbers.js';
import { numberText } from '../../../shared/format/parse.js';
import type { EndBaseline } from '../../../shared/http/reads/baselines.js';
import { AssumedLink } from '../../../shared/ui/assumed-link.js';
import { fillText } from '../model/fill-text.js';
import { texts } from '../texts.js';
import classes from './baselines.module.css';

interface MoreAboutProps {
  readonly teamId: string;
  readonly end: EndBaseline;
  readonly canChange: boolean;
}

const PER_CENT = 100;

/** One level down: what else would do, why this one, on the way there, and what is only assumed. */
export function MoreAbout({ teamId, end, canChange }: MoreAboutProps) {
  return (
    <details>
      <summary>{texts.more}</summary>
      <div className={classes.detail}>
        {end.alternatives.length > 0 && <Alternatives alternatives={end.alternatives} />}
        {end.reasons.length > 0 && (
          <div>
            <Text fw={600}>{texts.why}</Text>
            <List>
              {end.reasons.map((reason) => (
                <List.Item key={reason}>{reason}</List.Item>
              ))}
              <List.Item>{texts.rebound[end.rebound]}</List.Item>
            </List>
          </div>
        )}
        {end.steps.length > 1 && (
          <div>
            <Text fw={600}>{texts.steps}</Text>
            <List type="ordered">
              {end.steps.map((step, index) => (
                <List.Item key={index}>{fillText(step)}</List.Item>
              ))}
            </List>
          </div>
        )}
        <div>
          <Text fw={600}>{texts.assumed}</Text>
          {end.assumed.length === 0 ? (
            <Text>{texts.nothingAssumed}</Text>
          ) : (
            <List>
              {end.assumed.map((input) => (
                <List.Item key={`${input.of} ${input.field}`}>
                  {figureName(input.field).label} {numberText(input.value)} {figureName(input.field).unit}
                  {canChange && <AssumedLink teamId={teamId} input={input} />}
                </List.Item>
              ))}
            </List>
          )}
        </div>
      </div>
    </details>
  );
}

function Alternatives({ alternatives }: Pick<EndBaseline, 'alternatives'>) {
  return (
    <Table.ScrollContainer minWidth={420}>
      <Table captionSide="top">
        <Table.Caption ta="start">{texts.alternatives}</Table.Caption>
        <Table.Thead>
          <Table.Tr>
            <Table.Th>{texts.alternative}</Table.Th>
            <Table.Th>{texts.fill}</Table.Th>
            <Table.Th ta="end">{texts.sag}</Table.Th>
            <Table.Th ta="end">{texts.risk}</Table.Th>
            <Table.Th>{texts.breaks}</Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {alternatives.map(({ kind, fill, breaks }) => (
            <Table.Tr key={kind}>
              <Table.Th scope="row">{kind}</Table.Th>
              <Table.Td>{fillText(fill)}</Table.Td>
              <Table.Td ta="end">{formatNumber(fill.sagPct, 1)} %</Table.Td>
              <Table.Td ta="end">{formatShare(fill.riskPct / PER_CENT)}</Table.Td>
              <Table.Td>{breaks.length === 0 ? texts.meetsAll : breaks.join(', ')}</Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </Table.ScrollContainer>
  );
}
