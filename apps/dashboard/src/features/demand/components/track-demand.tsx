import { Stack, Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { formatNumber } from '../../../shared/format/numbers.js';
import type { Baseline } from '../../../shared/http/reads/baselines.js';
import type { Fleet } from '../../../shared/http/reads/fleet.js';
import { ChoiceRow } from '../../../shared/ui/choice-row.js';
import { DemandStrip } from '../../../shared/ui/demand-strip/demand-strip.js';
import { Empty } from '../../../shared/ui/empty.js';
import { QueryView } from '../../../shared/ui/query-view.js';
import { demandQuery, FIRST_END, type TrackDemand as Demand } from '../api/demand.js';
import { demandRows } from '../model/demand-rows.js';
import { texts } from '../texts.js';
import { wholeInChosenUnits } from '../../../shared/format/whole-figures.js';
import classes from './track-demand.module.css';

const PER_CENT = 100;

interface TrackDemandProps {
  readonly teamId: string;
  readonly trackId: string;
  readonly fleet: Fleet;
  /** The ground that the forecasts are for. */
  readonly condition: Demand['condition'];
  /** For the hits at which today's set-ups bottom out; empty while they are not known. */
  readonly baselines: readonly Baseline[];
}

/** The track's demand as a picture with every reading in it, for one end of the bikes at a time. */
export function TrackDemand({ teamId, trackId, fleet, condition, baselines }: TrackDemandProps) {
  const [end, setEnd] = useState<Demand['end']>(FIRST_END);
  const demand = useQuery(demandQuery(teamId, trackId, { end, condition }));
  const names = {
    riderName: fleet.riderName,
    bikeName: (id: string) => fleet.bikes.find((bike) => bike.id === id)?.name ?? '',
  };
  return (
    <Stack>
      <div className={`${classes.end} ll-screen-only`}>
        <ChoiceRow
          label={texts.end}
          choices={[
            { value: 'fork', label: texts.fork },
            { value: 'shock', label: texts.shock },
          ]}
          value={end}
          onChange={setEnd}
        />
      </div>
      <QueryView
        query={demand}
        isEmpty={({ readings }) => readings.length === 0}
        empty={<Empty title={texts.none}>{texts.noneLead}</Empty>}
      >
        {(data) => (
          <>
            <DemandStrip
              title={`${texts.title}, ${texts[end].toLowerCase()}`}
              rows={demandRows(data, baselines, names)}
            />
            <Text size="sm" c="dimmed">
              {/* The scatter is of the logarithm: a small one is nearly a share of the height. */}
              {texts.scatter(formatNumber(Math.expm1(data.runSd) * PER_CENT))}{' '}
              {texts.riderOnTrack[data.riderOnTrackSdSource](
                formatNumber(Math.expm1(data.riderOnTrackSd) * PER_CENT),
              )}{' '}
              {wholeInChosenUnits(data.message)} {texts.forGround(data.condition)}
            </Text>
          </>
        )}
      </QueryView>
    </Stack>
  );
}
