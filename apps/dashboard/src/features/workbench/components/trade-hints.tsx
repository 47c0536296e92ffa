import { Button, Text } from '@mantine/core';
import {
  formatCount,
  formatNumber,
  pressureChangeText,
  pressureText,
} from '../../../shared/format/numbers.js';
import { storedText } from '../../../shared/format/entry.js';
import { rounded } from '../../../shared/format/units.js';
import { isAllowedPressure, type Limits } from '../model/limits.js';
import type { Proposal } from '../model/proposal.js';
import type { Kept, Trade } from '../model/spacer-trade.js';
import { texts } from '../texts.js';
import classes from './workbench.module.css';

interface TradeHintsProps {
  readonly trade: Trade | null;
  readonly limits: Limits;
  readonly onPropose: (proposal: Proposal) => void;
}

const KEEPS = ['peakTravel', 'midStroke', 'sag'] as const;

/** The three pressures of a spacer trade side by side, each a press away, and why they differ. */
export function TradeHints({ trade, limits, onPropose }: TradeHintsProps) {
  if (trade === null) return <Text size="sm">{texts.onlyOneCount}</Text>;
  const { spacersFrom, spacersTo } = trade;
  const several = Math.abs(spacersTo - spacersFrom) > 1;
  return (
    <>
      <Text>{texts.tradeLead(formatCount(spacersTo, 'spacer'), formatNumber(spacersFrom))}</Text>
      <ul className={classes.trade}>
        {KEEPS.map((keep) => {
          const kept = trade[keep];
          return (
            <li key={keep}>
              <span>
                … {texts.keeps[keep]}: {keptText(kept)}
                {several && kept.status === 'found' && (
                  <span className={classes.unit}>
                    {' '}
                    {texts.perSpacer(pressureChangeText(kept.changePsi / Math.abs(spacersTo - spacersFrom)))}
                  </span>
                )}
              </span>
              {kept.status === 'found' &&
                (isAllowedPressure(limits, kept.pressurePsi) ? (
                  <Button
                    variant="default"
                    className="ll-screen-only"
                    onClick={() =>
                      onPropose({
                        pressurePsi: storedText(rounded('psi', kept.pressurePsi, 'decimals')),
                        spacers: String(spacersTo),
                      })
                    }
                  >
                    {texts.tryIt(pressureText(kept.pressurePsi))}
                  </Button>
                ) : (
                  <span className={classes.unit}>{texts.outsideLimits}</span>
                ))}
            </li>
          );
        })}
      </ul>
      <Text size="sm" c="dimmed">
        {texts.whyTrade}
      </Text>
    </>
  );
}

const keptText = (kept: Kept) =>
  kept.status === 'found'
    ? `${pressureText(kept.pressurePsi)} (${pressureChangeText(kept.changePsi)})`
    : kept.message;
