import { Text } from '@mantine/core';
import { formatNumber } from '../../../shared/format/numbers.js';
import { numberText } from '../../../shared/format/parse.js';
import { wholeInChosenUnits } from '../../../shared/format/whole-figures.js';
import type { EndBaseline } from '../../../shared/http/reads/baselines.js';
import { texts } from '../texts.js';

const sag = (pct: number) => numberText(pct, 1);

/** What goes with a baseline in plain lines: clicks, whose wish it meets, what is known on time, what to ride next. */
export function Advice({ end }: { readonly end: EndBaseline }) {
  const { clicks, wanted, time, sharpen } = end;
  return (
    <>
      {clicks !== null && (
        <Text size="sm">
          {texts.clicks}: {texts.clickCounts(clicks.reboundClicks, clicks.compressionClicks)},{' '}
          {texts.clicksFrom[clicks.from]}. {texts.rebound[end.rebound]}.
        </Text>
      )}
      {clicks === null && end.rebound !== 'leave' && <Text size="sm">{texts.rebound[end.rebound]}.</Text>}
      {wanted !== null && (
        <Text size="sm">
          {texts.wantedSag(sag(wanted.sagLowPct), sag(wanted.sagHighPct))}{' '}
          {wholeInChosenUnits(wanted.sagMessage)}
        </Text>
      )}
      {wanted !== null && (
        <Text size="sm">
          {texts.wanted(formatNumber(wanted.reserveMm))} {wholeInChosenUnits(wanted.reserveMessage)}
        </Text>
      )}
      {time.map((line) => (
        <Text size="sm" key={line.planId}>
          <strong>{texts.time}</strong> {wholeInChosenUnits(line.sentence)} {texts.timeFrom(line.planName)}
        </Text>
      ))}
      {sharpen !== null && sharpen.sentence !== '' && (
        <Text size="sm">
          <strong>{texts.next}</strong> {wholeInChosenUnits(sharpen.sentence)}
        </Text>
      )}
    </>
  );
}
