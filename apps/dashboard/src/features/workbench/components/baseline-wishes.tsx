import { Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { formatNumber } from '../../../shared/format/numbers.js';
import { numberText } from '../../../shared/format/parse.js';
import { wholeInChosenUnits } from '../../../shared/format/whole-figures.js';
import { withUnit } from '../../../shared/format/with-unit.js';
import { baselinesQuery } from '../../../shared/http/reads/baselines.js';
import { TextLink } from '../../../shared/ui/link.js';
import { texts } from '../texts.js';
import classes from './workbench.module.css';

interface BaselineWishesProps {
  readonly teamId: string;
  readonly bikeId: string;
  readonly trackId: string;
  readonly end: 'fork' | 'shock';
}

/**
 * What the baseline of the track wants of this end, and whose wish it is: the figures here are held against the wish as
 * it was entered, and baselines may go by what was learned from kept decisions. Its room is kept while it is looked up.
 */
export function BaselineWishes({ teamId, bikeId, trackId, end }: BaselineWishesProps) {
  // It may have to be worked out first: the bench does not wait for it.
  const baselines = useQuery(baselinesQuery(teamId, { trackId, bikeId }));
  const wanted = baselines.data?.[0]?.[end]?.wanted ?? null;
  const learned = [wanted?.reserveSource, wanted?.sagSource].some(isLearned);
  return (
    <Text size="sm" className={classes.wishes} component="div">
      <strong>{texts.baselineTitle}</strong>{' '}
      {wanted === null ? (
        baselines.isPending ? (
          texts.baselineLater
        ) : (
          texts.baselineUnknown
        )
      ) : (
        <>
          {texts.baselineReserve(withUnit(formatNumber(wanted.reserveMm), 'mm'))}{' '}
          {wholeInChosenUnits(wanted.reserveMessage)}{' '}
          {texts.baselineSag(
            withUnit(`${numberText(wanted.sagLowPct, 1)}–${numberText(wanted.sagHighPct, 1)}`, '%'),
          )}{' '}
          {wholeInChosenUnits(wanted.sagMessage)}{' '}
          {learned && (
            <TextLink size="sm" to="/teams/$teamId/decisions" params={{ teamId }} search={{ bikeId }}>
              {texts.kept}
            </TextLink>
          )}
        </>
      )}
    </Text>
  );
}

const isLearned = (source: string | undefined): boolean => source === 'this rider' || source === 'the team';
